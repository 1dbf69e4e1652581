// From a procedure's text to a paper: what the server's own program does with what it was sent. Pure but for the compiler; what is
// wrong with a text is an answer, with its place, and never an exception.
import type { Procedure } from '../domain/procedure.ts';
import { describeDiagnostic, type Diagnostic, readProcedure } from '../language/index.ts';
import { type DocumentKind, needsAll, type PaperStage, type PrintModel, printModel } from '../print/index.ts';
import { verifyProcedure } from '../verify.ts';
import { checkOverrides, describeOverrideFault, type Overrides, wordsFor } from '../words/index.ts';
import { NoShape, type PaperSize, pdfOf } from './compile.ts';

/** What is to be set. Texts are files as people write them. */
export interface PaperJob {
  readonly text: string;
  /** The donning that a doffing names. */
  readonly donning?: string | undefined;
  readonly kind: DocumentKind;
  readonly size: PaperSize;
  /** BCP 47. */
  readonly language: string;
  /** Printed as it is given: 2026-03-31. */
  readonly date?: string | undefined;
  readonly stage?: PaperStage | undefined;
  /** A file of wording (docs/languages.md), read into plain values. */
  readonly wording?: unknown;
}

export const JOB_FILES = ['procedure', 'donning', 'wording'] as const;

/** What is wrong with a text, and where. Lines and columns count from 1. */
export interface JobFault {
  readonly file: (typeof JOB_FILES)[number];
  readonly line: number;
  readonly column: number;
  readonly code: string;
  readonly wrong: string;
  readonly mend: string;
}

export type PaperOutcome =
  | { readonly is: 'paper'; readonly pdf: Uint8Array; readonly title: string }
  | { readonly is: 'unreadable'; readonly faults: readonly JobFault[] }
  | { readonly is: 'not-set' };

/** So many faults are told; the rest shows when these are mended. */
const MOST_FAULTS = 20;

const faultIn = (file: JobFault['file'], diagnostic: Diagnostic): JobFault => {
  const { line, column, code } = diagnostic;
  return { file, line, column, code, ...describeDiagnostic(diagnostic) };
};

interface Read {
  readonly procedure?: Procedure;
  readonly faults: readonly JobFault[];
}

function readText(file: 'procedure' | 'donning', text: string): Read {
  const { procedure, diagnostics } = readProcedure(text, file);
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  const faults = errors.map((one) => faultIn(file, one));
  return procedure && faults.length === 0 ? { procedure, faults } : { faults };
}

function readDonning(text: string | undefined): Read {
  if (text === undefined) return { faults: [] };
  const read = readText('donning', text);
  if (!read.procedure || read.procedure.kind === 'donning') return read;
  const wrong = 'What was sent as the donning is a doffing itself.';
  return { faults: [{ file: 'donning', line: 1, column: 1, code: 'donning-unreadable', wrong, mend: '' }] };
}

function readWording(value: unknown): {
  readonly overrides: Overrides;
  readonly faults: readonly JobFault[];
} {
  if (value === undefined) return { overrides: {}, faults: [] };
  const { overrides, faults } = checkOverrides(value);
  const told = faults.map((fault): JobFault => {
    const code = `wording-${fault.code}`;
    return { file: 'wording', line: 1, column: 1, code, ...describeOverrideFault(fault) };
  });
  return { overrides, faults: told };
}

/** Where a character stands in a text; undefined where it does not. */
function placeOf(text: string, character: string): Pick<JobFault, 'line' | 'column'> | undefined {
  const at = text.indexOf(character);
  if (at === -1) return undefined;
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

/** A character without a shape may also come from the unit's own wording. */
function withoutShape({ text }: PaperJob, character: string): JobFault {
  const place = placeOf(text, character);
  const wrong = `The fonts of the papers have no shape for “${character}”.`;
  const mend = 'Write it in Latin, Greek or Cyrillic letters.';
  return {
    file: place ? 'procedure' : 'wording',
    ...(place ?? { line: 1, column: 1 }),
    code: 'no-shape',
    wrong,
    mend,
  };
}

async function setIn(job: PaperJob, model: PrintModel, title: string): Promise<PaperOutcome> {
  try {
    return { is: 'paper', pdf: await pdfOf(model, job.size), title };
  } catch (error) {
    if (!(error instanceof NoShape)) throw error;
    const faults = error.characters.map((one) => withoutShape(job, one));
    return { is: 'unreadable', faults: faults.slice(0, MOST_FAULTS) };
  }
}

/** The paper, or why there is none. */
export async function paperFor(job: PaperJob): Promise<PaperOutcome> {
  const { kind, date, stage } = job;
  const read = readText('procedure', job.text);
  const beside = readDonning(job.donning);
  const wording = readWording(job.wording);
  const faults = [...read.faults, ...beside.faults, ...wording.faults];
  const { procedure } = read;
  if (!procedure || faults.length > 0) return { is: 'unreadable', faults: faults.slice(0, MOST_FAULTS) };
  const all = needsAll(kind);
  const verdict = verifyProcedure(procedure, { mends: all, variants: all }, beside.procedure);
  const words = wordsFor(job.language, wording.overrides);
  const model = printModel(verdict, {
    kind,
    words,
    ...(date === undefined ? {} : { date }),
    ...(stage === undefined ? {} : { stage }),
  });
  return setIn(job, model, procedure.title);
}
