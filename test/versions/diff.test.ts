// The diff that a reviewer reads: every difference between the invented unit's two versions is in it exactly once, in whole
// sentences, in every language; the same version against itself says nothing.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { happenedTo } from '../../src/compare/align.ts';
import { compareChecked } from '../../src/compare/compare.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { readProcedure } from '../../src/language/index.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { type DiffGroup, diffParts } from '../../src/versions/diff.ts';
import { LANGUAGES, wordsFor } from '../../src/words/index.ts';

function read(name: string): Procedure {
  const { procedure } = readProcedure(readFileSync(`procedures/${name}`, 'utf8'), name);
  if (!procedure) throw new Error(`${name} has errors`);
  return procedure;
}

const checked = (procedure: Procedure) =>
  verifyProcedure(procedure, { agents: ['enveloped'], mends: false, variants: false });

const first = read('larkmoor-suit-doffing.yaml');
const second = read('larkmoor-suit-doffing-v2.yaml');
const comparison = compareChecked(checked(first), checked(second));

describe('two versions of the invented unit', () => {
  const parts = diffParts(wordsFor('en'), first, second, comparison);
  const of = (group: DiffGroup): readonly string[] =>
    parts.find((part) => part.group === group)?.sentences ?? [];

  test('every changed step is one sentence', () => {
    const rows = comparison.steps.filter((row) => happenedTo(row) !== 'same');
    const said = ['new-steps', 'gone-steps', 'moved-steps', 'changed-steps'] as const;
    expect(said.flatMap(of)).toHaveLength(rows.length);
    expect(of('new-steps').every((sentence) => sentence.startsWith('New: step '))).toBe(true);
    expect(of('gone-steps').every((sentence) => sentence.startsWith('Left out: step '))).toBe(true);
  });

  test('findings gained and lost are told apart, new errors on top', () => {
    expect(of('new-errors')).toHaveLength(
      new Set(comparison.findings.newErrors.map(({ code, steps }) => `${code} ${steps[0]}`)).size,
    );
    expect(of('gone-findings').length).toBeGreaterThan(0);
  });

  test('the same in every language, whole sentences each', () => {
    const shape = (language: string) =>
      diffParts(wordsFor(language), first, second, comparison).map(({ group }) => group);
    for (const language of LANGUAGES) {
      expect(shape(language)).toEqual(parts.map(({ group }) => group));
      for (const { sentences } of diffParts(wordsFor(language), first, second, comparison))
        for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|null|NaN|\[object/);
    }
  });
});

test('a version against itself has no difference', () => {
  const same = compareChecked(checked(first), checked(first));
  expect(diffParts(wordsFor('en'), first, first, same)).toEqual([]);
});

test('what stands around the steps is in its own group', () => {
  const other: Procedure = {
    ...first,
    products: first.products.slice(1),
    accepted: first.accepted.slice(1),
    people: first.people.map((one) => (one.role === 'wearer' ? { ...one, hand: 'left' } : one)),
    policy: { creditSpraying: true },
  };
  const parts = diffParts(wordsFor('en'), first, other, compareChecked(checked(first), checked(other)));
  const groups = parts.map(({ group }) => group);
  expect(groups).toEqual(expect.arrayContaining(['people', 'room', 'rules', 'accepted']));
});
