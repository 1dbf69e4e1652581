// A named pipe, read without being held up by it: opened so that neither opening nor reading waits, asked now and then, and
// given up after a silence. Nobody may ever write into it, and a blocked read would keep the whole program from ending.
import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';

/** Milliseconds of silence after which nobody is taken to write, and between two looks. */
const PATIENCE = 20_000;
const LOOK = 25;

const isNotYet = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EAGAIN';

/** Bytes read; 0 at the end, which is also what a pipe says that nobody has opened yet; -1 for not yet. */
async function look(pipe: FileHandle, into: Uint8Array): Promise<number> {
  try {
    return (await pipe.read(into, 0, into.length, null)).bytesRead;
  } catch (error) {
    if (isNotYet(error)) return -1;
    throw error;
  }
}

/** What is written into the pipe, until its writers are gone. Throws code `ESILENT` after a silence. */
export async function* pipeChunks(path: string, patience = PATIENCE): AsyncGenerator<Uint8Array> {
  const pipe = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    let begun = false;
    for (let silence = 0; silence < patience; silence += LOOK) {
      const chunk = new Uint8Array(1 << 16);
      const read = await look(pipe, chunk);
      if (read === 0 && begun) return;
      if (read > 0) {
        begun = true;
        silence = 0;
        yield chunk.subarray(0, read);
      } else await pause(LOOK);
    }
    throw Object.assign(new Error('silent'), { code: 'ESILENT' });
  } finally {
    await pipe.close();
  }
}
