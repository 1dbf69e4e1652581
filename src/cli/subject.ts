// What a command works on: a procedure file with what is wrong about it, and the donning that it names beside it. All
// commands read their file here, so that all say the same about a bad one.
import { stat } from 'node:fs/promises';
import { dirname, isAbsolute, resolve } from 'node:path';
import type { Procedure } from '../domain/procedure.ts';
import { describeDiagnostic, type Diagnostic, readProcedure, type ReadResult } from '../language/index.ts';
import { type FileFault, readInput } from './input.ts';
import { type Io, printable } from './io.ts';

/** One line of what is wrong with a file. Lines and columns count from 1. */
export interface Complaint {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly severity: 'error' | 'note';
  readonly code: string;
  readonly wrong: string;
  readonly mend: string;
}

export interface Subject {
  readonly file: string;
  readonly complaints: readonly Complaint[];
  /** Absent when the file could not be read at all. */
  readonly read?: ReadResult;
  /** The donning that it names, when that could be read. */
  readonly donning?: Procedure;
}

const FIRST = { line: 1, column: 1, endLine: 1, endColumn: 1 } as const;

const ofFault = (file: string, { code, severity, wrong, mend }: FileFault): Complaint => ({
  file,
  ...FIRST,
  severity,
  code,
  wrong,
  mend,
});

function ofDiagnostic(diagnostic: Diagnostic): Complaint {
  const { file, line, column, endLine, endColumn, severity, code } = diagnostic;
  return { file, line, column, endLine, endColumn, severity, code, ...describeDiagnostic(diagnostic) };
}

/**
 * Why a donning of this name is not even looked for: a procedure file comes from anywhere, and what it names must be
 * another one that came with it, not a device, a pipe or a file of the system.
 */
function unfit(donning: string): string | undefined {
  if (isAbsolute(donning)) return 'is not named relative to this file.';
  return /\.ya?ml$/i.test(donning) ? undefined : 'is not the name of a procedure file (.yaml).';
}

async function plainFile(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isFile();
  } catch {
    // Whatever keeps it from being looked at is told by reading it.
    return true;
  }
}

/** The donning, or what is wrong with it. */
async function donningAt(io: Io, path: string, donning: string): Promise<Procedure | string> {
  const reason = unfit(donning);
  if (reason !== undefined) return reason;
  if (!(await plainFile(path))) return 'is no plain file.';
  const input = await readInput(io, path);
  if ('fault' in input) return `cannot be read. ${input.fault.wrong}`;
  const { procedure, diagnostics } = readProcedure(input.text, printable(donning));
  const first = diagnostics.find(({ severity }) => severity === 'error');
  if (!procedure) return `has errors${first ? `, the first in line ${first.line}` : ''}.`;
  return procedure.kind === 'donning' ? procedure : 'is a doffing itself.';
}

/** The donning stands beside the doffing: its name is relative to the file that names it. */
async function readDonning(io: Io, file: string, { donning }: Procedure): Promise<Partial<Subject>> {
  if (donning === undefined) return {};
  const found = await donningAt(io, resolve(file === '-' ? '.' : dirname(file), donning), donning);
  if (typeof found !== 'string') return { donning: found };
  const wrong = `The donning "${printable(donning)}" that this procedure names ${found}`;
  return {
    complaints: [
      {
        ...ofFault(printable(file), { code: 'donning-unreadable', severity: 'error', wrong, mend: '' }),
        mend: 'Until it is mended, nothing is said of how donning and doffing fit together.',
      },
    ],
  };
}

/** Reads a procedure file and what belongs to it. */
export async function loadSubject(io: Io, path: string): Promise<Subject> {
  const file = path === '-' ? 'standard input' : printable(path);
  const input = await readInput(io, path);
  if ('fault' in input) return { file, complaints: [ofFault(file, input.fault)] };
  const read = readProcedure(input.text, file);
  const own = read.diagnostics.map(ofDiagnostic);
  const beside = read.procedure ? await readDonning(io, path, read.procedure) : {};
  return { file, read, ...beside, complaints: [...own, ...(beside.complaints ?? [])] };
}

export const isUnreadable = ({ complaints }: Subject): boolean =>
  complaints.some(({ severity }) => severity === 'error');

/** `file:line:column: error code: what is wrong. How to mend it.` */
export function printComplaint({ file, line, column, severity, code, wrong, mend }: Complaint): string {
  return `${printable(`${file}:${line}:${column}: ${severity} ${code}: ${wrong}${mend ? ` ${mend}` : ''}`)}\n`;
}
