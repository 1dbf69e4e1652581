// The names of surfaces that a start may state are those of the plan: none of the plan's is unknown here.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import { readProcedure } from '../../src/language/index.ts';
import { FULL } from './samples.ts';

const folder = new URL('../../procedures/', import.meta.url);
const FILES = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

function surfacesOfPlan(text: string): readonly string[] {
  const { procedure } = readProcedure(text);
  if (!procedure) throw new Error('no procedure');
  return compile(procedure, 'enveloped').plan.surfaces.map(({ id }) => id);
}

/** The file with a start that states all these surfaces. */
const stating = (text: string, surfaces: readonly string[]): string =>
  `${text.replace(/^start:\n(?: .*\n)*/m, '')}start:\n${surfaces.map((surface) => `  - {surface: ${surface}, state: maybe}\n`).join('')}`;

test.each(FILES)('every surface of the plan of %s may be stated', (name) => {
  const text = readFileSync(new URL(name, folder), 'utf8');
  const surfaces = surfacesOfPlan(text);
  expect(surfaces.length).toBeGreaterThan(20);
  expect(readProcedure(stating(text, surfaces)).diagnostics).toEqual([]);
});

test('an item that is never worn has no surfaces', () => {
  const [unknown] = readProcedure(stating(FULL, ['anna.goggles.front'])).diagnostics;
  expect(unknown).toMatchObject({ code: 'unknown-surface', params: { name: 'anna.goggles.front' } });
});
