// Faults seeded by mutation into every published procedure: found by the check, or proved harmless by the reference.
import { describe, expect, test } from 'vitest';
import { AGENTS } from '../../src/domain/products.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { HARMLESS } from './harmless.ts';
import { checkup, type Judged, judge } from './judge.ts';
import { mutantsPage } from './page.ts';
import { mutantsOf, SUBJECTS } from './subjects.ts';

const ALL: Judged[] = [];
const CONTAMINATION = ['barriers', 'combination', 'chance'] as const;
const named = ({ mutant }: Judged): string => `${mutant.operator} at ${mutant.at}`;

describe('a seeded fault', () => {
  for (const subject of SUBJECTS) {
    test(`in ${subject.name} is found, or proved harmless by the reference`, () => {
      const judged = judge(mutantsOf(subject));
      ALL.push(...judged);
      expect(judged.length).toBeGreaterThan(5);
      expect(judged.filter(({ ways, worse }) => ways.size === 0 && worse).map(named)).toEqual([]);
      // Whatever practice says of it: more that the reference reaches is more that the diagram reaches.
      const unseen = judged.filter(({ ways, worse }) => worse && !CONTAMINATION.some((way) => ways.has(way)));
      expect(unseen.map(named)).toEqual([]);
    });
  }
});

describe('the count', () => {
  test('is of many faults, most of them found and many by the reference worse', () => {
    expect(ALL.length).toBeGreaterThan(1000);
    expect(ALL.filter(({ ways }) => ways.size > 0).length / ALL.length).toBeGreaterThan(0.8);
    expect(ALL.filter(({ worse }) => worse).length).toBeGreaterThan(400);
  });

  test('and its page are the same', async () => {
    await expect(mutantsPage(ALL)).toMatchFileSnapshot('../../docs/mutants.md');
  });

  test('names a reason for each kind of fault that can be harmless, and for no other', () => {
    const harmless = ALL.filter(({ ways }) => ways.size === 0).map(({ mutant }) => mutant.operator);
    expect(Object.keys(HARMLESS).toSorted()).toEqual([...new Set(harmless)].toSorted());
  });
});

describe('the parts of the check that are asked here', () => {
  // One mutant in 97 of all procedures, so that the sample is spread and always the same.
  const sample = SUBJECTS.flatMap(mutantsOf).filter((_, at) => at % 97 === 0);

  test.each(
    sample.map((mutant) => [`${mutant.subject.name}, ${mutant.operator} at ${mutant.at}`, mutant] as const),
  )('say what verify() says: %s', (_, { procedure, subject }) => {
    const donning = procedure.kind === 'doffing' ? subject.counterpart : undefined;
    const verdict = verifyProcedure(procedure, { agents: AGENTS, mends: false, variants: false }, donning);
    const asked = checkup(procedure, donning);
    const conduct = verdict.findings.filter(({ kind }) =>
      ['impossible', 'practice', 'coverage'].includes(kind),
    );
    expect(conduct).toEqual(asked.conduct);
    for (const { surface, agent, barriers, chance, combinations } of verdict.surfaces) {
      const told = asked.byAgent.get(agent)?.get(surface);
      expect(told?.barriers).toBe(barriers ?? Infinity);
      expect(told?.chance).toBe(chance);
      expect(told?.combinations).toEqual(combinations.map(({ events }) => events));
    }
  });
});
