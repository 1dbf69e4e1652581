// Reads what a command is given: a file, or standard input for `-`. What can go wrong with a file is a fault with a code
// and plain words, in the shape of a diagnostic, and never an exception that the user sees.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { Io } from './io.ts';
import { pipeChunks } from './pipe.ts';

export interface FileFault {
  readonly code: string;
  readonly severity: 'error';
  readonly wrong: string;
  readonly mend: string;
}

export type Input = { readonly text: string } | { readonly fault: FileFault };

/** Far beyond what the language takes, so that it is the one to say how long a procedure may be. */
const MOST_BYTES = 8 * 1024 * 1024;

const fault = (code: string, wrong: string, mend: string): { readonly fault: FileFault } => ({
  fault: { code, severity: 'error', wrong, mend },
});

const FAULTS: Readonly<Record<string, () => { readonly fault: FileFault }>> = {
  ENOENT: () => fault('file-missing', 'There is no such file.', 'Check the name and the folder.'),
  ENOTDIR: () => fault('file-missing', 'There is no such file.', 'Check the name and the folder.'),
  EISDIR: () => fault('file-is-folder', 'This is a folder.', 'Name a procedure file in it.'),
  EACCES: () => fault('file-not-permitted', 'This file may not be read.', 'Ask for permission to read it.'),
  EPERM: () => fault('file-not-permitted', 'This file may not be read.', 'Ask for permission to read it.'),
  ESILENT: () =>
    fault('file-silent', 'Nothing came out of this pipe.', 'Check that something writes into it.'),
  ELOOP: () => fault('file-missing', 'This link leads back to itself.', 'Name the file itself.'),
  ENAMETOOLONG: () => fault('file-missing', 'This name is too long for a file.', 'Check the name.'),
};

const codeOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';

/** What an error of the file system means to the one who named the file. */
export function faultOf(error: unknown): { readonly fault: FileFault } {
  const code = codeOf(error);
  return FAULTS[code]?.() ?? fault('file-unreadable', `This file cannot be read (${code || 'unknown'}).`, '');
}

async function readAll(stream: AsyncIterable<Uint8Array>): Promise<Input> {
  const chunks: Uint8Array[] = [];
  let total = 0;
  for await (const chunk of stream) {
    total += chunk.length;
    if (total > MOST_BYTES)
      return fault(
        'file-too-large',
        'This file is larger than any procedure.',
        'Check that it is the right file.',
      );
    chunks.push(chunk);
  }
  return { text: new TextDecoder().decode(Buffer.concat(chunks)) };
}

async function chunksOf(io: Io, path: string): Promise<AsyncIterable<Uint8Array>> {
  if (path === '-') return io.stdin();
  const isPipe = (await stat(path)).isFIFO();
  return isPipe ? pipeChunks(path) : (createReadStream(path) as AsyncIterable<Uint8Array>);
}

/** The text of a file, or of standard input for `-`. */
export async function readInput(io: Io, path: string): Promise<Input> {
  try {
    return await readAll(await chunksOf(io, path));
  } catch (error) {
    return faultOf(error);
  }
}
