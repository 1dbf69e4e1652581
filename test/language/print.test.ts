// The canonical form: reading what was printed gives the same procedure, and printing that the same text.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { printDiagnostic, printProcedure, readProcedure } from '../../src/language/index.ts';
import { procedure } from './arbitrary.ts';
import { FULL, SMALL } from './samples.ts';

function reread(text: string) {
  const { procedure: read, diagnostics } = readProcedure(text);
  if (!read) throw new Error(diagnostics.map(printDiagnostic).join('\n'));
  return read;
}

test('what is printed reads back as the same procedure, whatever the procedure', () => {
  fc.assert(
    fc.property(procedure, (made) => {
      const text = printProcedure(made);
      expect(reread(text)).toEqual(made);
      expect(printProcedure(reread(text))).toBe(text);
    }),
    { numRuns: 150 },
  );
});

test('a full file in canonical form prints as it stands', () => {
  expect(printProcedure(reread(FULL))).toBe(FULL);
});

test('defaults and comments of a file are not printed', () => {
  const wordy = SMALL.replace('hand: left', 'hand: left, role: assistant, underneath: [scrubs, shoes]')
    .replace('{do: remove', '{who: wearer, id: s1, do: remove')
    .replace('zone: doffing-area}', 'zone: doffing-area, worked: pedal, clean: false}')
    .replace('steps:', '# a remark\nsteps:');
  expect(printProcedure(reread(wordy))).toBe(printProcedure(reread(SMALL)));
});

test('a step that carries its number as its name keeps it when another is put before it', () => {
  const made = reread(SMALL);
  const [first, ...rest] = made.steps;
  if (!first) throw new Error('no step');
  const longer = { ...made, steps: [{ ...first, id: 'new', items: ['gloves' as const] }, first, ...rest] };
  expect(reread(printProcedure(longer)).steps.map(({ id }) => id)).toEqual(['new', 's1', 'rub', 's3']);
});
