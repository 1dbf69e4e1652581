// A folder per phenomenon in test/cases/language: input.yaml, and in expected.txt what the reader says of it and, where
// it is a procedure, its canonical form. `UPDATE=1 npx vitest run test/language/cases` writes the expected files.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/language/catalogue.ts';
import { printDiagnostic, printProcedure, readProcedure } from '../../src/language/index.ts';

const FOLDER = new URL('../cases/language/', import.meta.url);
const NAMES = readdirSync(FOLDER).sort();

/** What one case comes to: diagnostics with the text they point at, then the canonical form. */
function outcome(name: string): string {
  const { procedure, diagnostics } = readProcedure(
    readFileSync(new URL(`${name}/input.yaml`, FOLDER), 'utf8'),
    'input.yaml',
  );
  const said = diagnostics.map((one) => `${printDiagnostic(one)}\n  > ${one.text}`.trimEnd());
  return [...said, procedure ? `procedure\n${printProcedure(procedure)}` : 'no procedure\n'].join('\n');
}

test.each(NAMES)('%s', (name) => {
  const file = new URL(`${name}/expected.txt`, FOLDER);
  if (process.env.UPDATE === '1') writeFileSync(file, outcome(name));
  expect(outcome(name)).toBe(existsSync(file) ? readFileSync(file, 'utf8') : '');
});

/** Files that cannot be shown as a readable case; hardening.test.ts makes them. */
const ELSEWHERE = ['not-text', 'control-character', 'too-large', 'too-deep', 'more-problems'];

test('every diagnostic of the catalogue has a case', () => {
  const all = NAMES.map(outcome).join('\n');
  const shown = Object.keys(CATALOGUE).filter((code) => new RegExp(`(error|note) ${code}: `).test(all));
  expect([...shown, ...ELSEWHERE].sort()).toEqual(Object.keys(CATALOGUE).sort());
});
