// `doffline print`: one paper of one procedure as a PDF file. What is on it is made in print/, how it is set in typeset/.
import { basename, extname } from 'node:path';
import { type DocumentKind, needsAll, type PaperStage, printModel } from '../print/index.ts';
import { verifyProcedure } from '../verify.ts';
import type { Status } from './check.ts';
import type { Io } from './io.ts';
import { printable } from './io.ts';
import { save } from './save.ts';
import { isUnreadable, loadSubject, printComplaint, type Subject } from './subject.ts';
import { type PaperSize, pdfOf } from '../typeset/compile.ts';
import { type Speech, tellUnused } from './wording.ts';

export interface PrintRequest {
  readonly kind: DocumentKind;
  readonly paper: PaperSize;
  /** Printed as it is given; without it a print is the same bytes every time. */
  readonly date?: string;
  /** What the unit's journal says of this version, where somebody says it: on every page. */
  readonly stage?: PaperStage['is'];
  /** Beside the current folder's other files, named after procedure and paper, where it is not given. */
  readonly out?: string;
  /** Over a file that is there. */
  readonly force?: boolean;
}

const nameFor = (file: string, kind: DocumentKind): string =>
  `${file === '-' ? 'procedure' : basename(file, extname(file))}.${kind}.pdf`;

/** What is wrong, in a sentence, where it could not be set or saved. */
async function written(
  out: string,
  force: boolean,
  make: () => Promise<Uint8Array>,
): Promise<string | undefined> {
  try {
    return await save(out, force, make);
  } catch (error) {
    return error instanceof Error ? printable(error.message) : 'it could not be printed';
  }
}

function modelOf({ read, donning }: Subject, { words }: Speech, { kind, date, stage }: PrintRequest) {
  if (!read?.procedure) return undefined;
  const all = needsAll(kind);
  const verdict = verifyProcedure(read.procedure, { mends: all, variants: all }, donning);
  return printModel(verdict, {
    kind,
    words,
    ...(date === undefined ? {} : { date }),
    ...(stage === undefined ? {} : { stage: { is: stage } }),
  });
}

/** Prints one paper. Status 0 where the file was written, 2 where something could not be read or written. */
export async function print(io: Io, speech: Speech, path: string, request: PrintRequest): Promise<Status> {
  const subject = await loadSubject(io, path);
  for (const complaint of subject.complaints) io.err(printComplaint(complaint));
  tellUnused(io, speech, subject.read?.procedure);
  const model = modelOf(subject, speech, request);
  if (!model || isUnreadable(subject)) return 2;
  const out = request.out ?? nameFor(path, request.kind);
  const wrong = await written(out, request.force === true, () => pdfOf(model, request.paper));
  if (wrong !== undefined) {
    io.err(`error: ${wrong}\n`);
    return 2;
  }
  io.out(`${out}: ${model.document}, ${model.stamp.join(', ')}\n`);
  return 0;
}
