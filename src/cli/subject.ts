// What a command works on: a procedure file with what is wrong about it, and the donning that it names beside it. All
// commands read their file here, so that all say the same about a bad one.
import { dirname, resolve } from 'node:path';
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

/** The donning stands beside the doffing: its name is relative to the file that names it. */
async function readDonning(io: Io, file: string, { donning }: Procedure): Promise<Partial<Subject>> {
  if (donning === undefined) return {};
  const path = resolve(file === '-' ? '.' : dirname(file), donning);
  const input = await readInput(io, path);
  const name = printable(donning);
  const bad = (wrong: string): Partial<Subject> => ({
    complaints: [
      {
        ...ofFault(printable(file), { code: 'donning-unreadable', severity: 'error', wrong, mend: '' }),
        mend: 'Until it is mended, nothing is said of how donning and doffing fit together.',
      },
    ],
  });
  if ('fault' in input) return bad(`The donning "${name}" that this procedure names: ${input.fault.wrong}`);
  const { procedure, diagnostics } = readProcedure(input.text, name);
  if (procedure) return { donning: procedure };
  const first = diagnostics.find(({ severity }) => severity === 'error');
  return bad(
    `The donning "${name}" that this procedure names has errors${first ? `, the first in line ${first.line}` : ''}.`,
  );
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
  return `${file}:${line}:${column}: ${severity} ${code}: ${wrong}${mend ? ` ${mend}` : ''}\n`;
}
