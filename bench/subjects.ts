// The procedures that the benches run on: the longest published one, and the invented exit of 100 steps.
import { readdirSync, readFileSync } from 'node:fs';
import type { Procedure } from '../src/domain/procedure.ts';
import { readProcedure } from '../src/language/index.ts';
import { hundred } from './hundred.ts';

export interface Subject {
  readonly name: string;
  readonly procedure: Procedure;
}

/** A procedure of procedures/, by file name; the benches run in the repository's own folder. */
export function published(file: string): Procedure {
  const { procedure, diagnostics } = readProcedure(readFileSync(`procedures/${file}`, 'utf8'), file);
  if (!procedure) throw new Error(`${file}: ${diagnostics.map(({ code }) => code).join(', ')}`);
  return procedure;
}

/** The published procedure with most steps; invented ones do not count. */
export function longest(): Subject {
  const all = readdirSync('procedures')
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => ({ name: file.replace('.yaml', ''), procedure: published(file) }))
    .filter(({ procedure }) => !procedure.invented)
    .sort((a, b) => b.procedure.steps.length - a.procedure.steps.length);
  const [first] = all;
  if (!first) throw new Error('no published procedure');
  return first;
}

export const SUBJECTS = (): readonly Subject[] => [
  longest(),
  { name: '100 steps, three people', procedure: hundred() },
];
