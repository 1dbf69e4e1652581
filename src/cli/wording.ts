// The language a command speaks, and the unit's own wording in it, read from a file. A file with faults is refused whole:
// half a wording would be read aloud as if it were all of it.
import { describeDiagnostic, readPlain } from '../language/index.ts';
import {
  checkOverrides,
  describeOverrideFault,
  languageOf,
  type Overrides,
  unusedWording,
  type Words,
  wordsFor,
} from '../words/index.ts';
import type { Procedure } from '../domain/procedure.ts';
import { readInput } from './input.ts';
import { type Io, printable } from './io.ts';
import { printComplaint } from './subject.ts';

export interface Speech {
  readonly words: Words;
  /** What the words are when the unit's own are left aside. */
  readonly plain: Words;
  readonly overrides: Overrides;
}

export interface SpeechRequest {
  readonly language: string;
  readonly wording?: string;
}

const speechIn = (language: string, overrides: Overrides): Speech => ({
  words: wordsFor(language, overrides),
  plain: wordsFor(language),
  overrides,
});

const AT_START = { line: 1, column: 1, endLine: 1, endColumn: 1 } as const;

/** The words asked for; undefined, with complaints on the error stream, where the wording cannot be used. */
export async function speechFor(io: Io, { language, wording }: SpeechRequest): Promise<Speech | undefined> {
  if (wording === undefined) return speechIn(language, {});
  const file = printable(wording);
  const input = await readInput(io, wording);
  if ('fault' in input) {
    io.err(printComplaint({ file, ...AT_START, ...input.fault }));
    return undefined;
  }
  const read = readPlain(input.text, file);
  for (const diagnostic of read.diagnostics)
    io.err(printComplaint({ ...diagnostic, ...describeDiagnostic(diagnostic) }));
  if (read.diagnostics.length > 0) return undefined;
  const { overrides, faults } = checkOverrides(read.value);
  for (const fault of faults) {
    const code = `wording-${fault.code}`;
    io.err(
      printComplaint({
        file,
        ...read.spanOf(fault.path),
        severity: 'error',
        code,
        ...describeOverrideFault(fault),
      }),
    );
  }
  return faults.length > 0 ? undefined : speechIn(language, overrides);
}

const WHY = {
  unused: 'this procedure has no such step.',
  stale: 'the step says something else now, so the program speaks for it. Review the sentence.',
} as const;

/** Tells which sentences of the unit do not apply to a procedure. */
export function tellUnused(io: Io, { plain, overrides }: Speech, procedure: Procedure | undefined): void {
  const wording = overrides[languageOf(plain.language) ?? 'en'];
  if (!procedure) return;
  for (const { why, step } of unusedWording(plain, wording, procedure))
    io.err(`note wording-${why}: the sentence for step "${printable(step)}" is not used: ${WHY[why]}\n`);
}
