// `doffline print`: one paper of one procedure as a PDF file. What is on it is made in print/, how it is set in typst/.
import { rename, writeFile } from 'node:fs/promises';
import { basename, extname } from 'node:path';
import { type DocumentKind, needsAll, printModel } from '../print/index.ts';
import { verifyProcedure } from '../verify.ts';
import type { Status } from './check.ts';
import type { Io } from './io.ts';
import { printable } from './io.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';
import { type PaperSize, pdfOf } from './typst/compile.ts';
import { type Speech, tellUnused } from './wording.ts';

export interface PrintRequest {
  readonly kind: DocumentKind;
  readonly paper: PaperSize;
  /** Printed as it is given; without it a print is the same bytes every time. */
  readonly date?: string;
  /** Beside the current folder's other files, named after procedure and paper, where it is not given. */
  readonly out?: string;
}

const nameFor = (file: string, kind: DocumentKind): string =>
  `${file === '-' ? 'procedure' : basename(file, extname(file))}.${kind}.pdf`;

/** Written beside and renamed: nobody pins half a file. */
async function save(file: string, bytes: Uint8Array): Promise<void> {
  const temporary = `${file}.${process.pid}.part`;
  await writeFile(temporary, bytes);
  await rename(temporary, file);
}

function modelOf({ read, donning }: Subject, { words }: Speech, { kind, date }: PrintRequest) {
  if (!read?.procedure) return undefined;
  const all = needsAll(kind);
  const verdict = verifyProcedure(read.procedure, { mends: all, variants: all }, donning);
  return printModel(verdict, { kind, words, ...(date === undefined ? {} : { date }) });
}

/** Prints one paper. Status 0 where the file was written, 2 where something could not be read or written. */
export async function print(io: Io, speech: Speech, path: string, request: PrintRequest): Promise<Status> {
  const subject = await loadSubject(io, path);
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  tellUnused(io, speech, subject.read?.procedure);
  const model = modelOf(subject, speech, request);
  if (!model || isUnreadable(subject)) return 2;
  const out = request.out ?? nameFor(path, request.kind);
  try {
    await save(out, await pdfOf(model, request.paper));
  } catch (error) {
    io.err(`error: ${error instanceof Error ? printable(error.message) : 'it could not be printed'}\n`);
    return 2;
  }
  io.out(`${out}: ${model.document}, ${model.stamp.join(', ')}\n`);
  return 0;
}
