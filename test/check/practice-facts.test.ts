// Facts of common practice, one by one: each broken in a doffing that has no departure at all gives a finding that names
// it, where it is broken, an error until accepted, with the standing of its source. Facts as published in the
// training modules, the everyday sequence and the posters (evidence/practice.json); three are taught widely
// and no published sentence was found, and say so.
import { describe, expect, test } from 'vitest';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { PracticeRuleId } from '../../src/evidence/index.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { wordsFor } from '../../src/words/index.ts';
import { goodDoffing, goodReading } from '../support/good.ts';
import { changed, inserted, moved, step, without } from '../support/procedure.ts';

const GOOD = goodDoffing();
const words = wordsFor('en');
const check = (procedure: Procedure) => verifyProcedure(procedure, { mends: false, variants: false });

const departures = (procedure: Procedure) =>
  check(procedure)
    .findings.filter(({ kind }) => kind === 'practice')
    .map(({ code, steps, severity, evidence }) => ({
      code,
      at: procedure.steps[steps[0]!]?.id,
      severity,
      evidence,
    }));

describe('the good doffing', () => {
  test('reads, can be done, and departs from nothing', () => {
    expect(goodReading.diagnostics).toEqual([]);
    const errors = check(GOOD).findings.filter(({ severity }) => severity === 'error');
    expect(errors).toEqual([]);
    expect(departures(GOOD)).toEqual([]);
  });
});

interface Fact {
  readonly fact: string;
  readonly broken: Procedure;
  readonly code: PracticeRuleId;
  readonly at: string;
  readonly status?: 'published' | 'common practice';
  /** A second rule that the same break departs from. */
  readonly also?: PracticeRuleId;
}

const wet = { technique: 'rub-not-dried' } as const;
const touchFront = (item: 'gown' | 'face-shield' | 'goggles' | 'n95-respirator') =>
  step('front', 'touch', { items: [item], part: 'front' });

const FACTS: readonly Fact[] = [
  {
    fact: 'hand rub after the outer gloves',
    broken: without(GOOD, 'rub-inner'),
    code: 'practice.hygiene-after-each-glove-removal',
    at: 'outer-gloves-off',
  },
  {
    fact: 'hand rub after the inner gloves, before the fresh ones',
    broken: without(GOOD, 'rub-bare'),
    code: 'practice.hygiene-before-fresh-glove',
    at: 'fresh-gloves-on',
  },
  {
    fact: 'hand rub after the last gloves',
    broken: without(GOOD, 'rub-last'),
    code: 'practice.final-hand-hygiene',
    at: 'fresh-gloves-off',
  },
  {
    fact: 'shield by the rear strap',
    broken: changed(GOOD, 'shield-off', { technique: 'front-grip' }),
    code: 'practice.shield-by-rear-strap',
    also: 'practice.face-item-front-untouched',
    at: 'shield-off',
  },
  {
    fact: 'goggles by the rear strap',
    broken: changed(GOOD, 'goggles-off', { technique: 'front-grip' }),
    code: 'practice.goggles-by-rear-strap',
    also: 'practice.face-item-front-untouched',
    at: 'goggles-off',
  },
  {
    fact: 'lower strap of a respirator before the upper',
    broken: changed(GOOD, 'respirator-off', { technique: 'upper-then-lower' }),
    code: 'practice.respirator-lower-strap-first',
    at: 'respirator-off',
  },
  {
    fact: 'upper fastening of a gown before the waist, untied in a step of its own',
    broken: changed(GOOD, 'gown-open', { technique: 'waist-tie-first' }),
    code: 'practice.gown-upper-fastening-first',
    at: 'gown-open',
  },
  {
    fact: 'upper fastening of a gown before the waist, untied as it comes off',
    broken: changed(without(GOOD, 'gown-open'), 'gown-off', { technique: 'waist-first' }),
    code: 'practice.gown-upper-fastening-first',
    at: 'gown-off',
  },
  {
    fact: 'boot cover over the heel before the toe',
    broken: changed(GOOD, 'boot-covers-off', { technique: 'toe-first' }),
    code: 'practice.boot-cover-heel-before-toe',
    at: 'boot-covers-off',
    status: 'common practice',
  },
  {
    fact: 'a wipe for each shoe',
    broken: changed(GOOD, 'shoes-wiped', { technique: 'same-wipe-for-both' }),
    code: 'practice.one-wipe-per-shoe',
    at: 'shoes-wiped',
    status: 'common practice',
  },
  {
    fact: 'a fresh glove only on a dry hand',
    broken: changed(GOOD, 'rub-bare', wet),
    code: 'practice.glove-on-dry-hand',
    at: 'fresh-gloves-on',
    status: 'common practice',
  },
  {
    fact: 'front of the respirator untouched as it comes off',
    broken: changed(GOOD, 'respirator-off', { technique: 'front-grip-mask' }),
    code: 'practice.face-item-front-untouched',
    at: 'respirator-off',
  },
  {
    fact: 'front of the hood untouched as it comes off',
    broken: changed(GOOD, 'hood-off', { technique: 'front-grip-cover' }),
    code: 'practice.face-item-front-untouched',
    at: 'hood-off',
  },
  {
    fact: 'front of the gown untouched as it comes off',
    broken: changed(GOOD, 'gown-off', { technique: 'front-pull' }),
    code: 'practice.garment-front-untouched',
    at: 'gown-off',
  },
  ...(['face-shield', 'goggles', 'n95-respirator'] as const).map(
    (item): Fact => ({
      fact: `front of the ${item} untouched on the way`,
      broken: inserted(GOOD, 'rub-arrival', touchFront(item)),
      code: 'practice.face-item-front-untouched',
      at: 'front',
    }),
  ),
  {
    fact: 'front of the gown untouched on the way',
    broken: inserted(GOOD, 'rub-arrival', touchFront('gown')),
    code: 'practice.garment-front-untouched',
    at: 'front',
  },
  {
    fact: 'hand hygiene between shield and hood',
    broken: without(GOOD, 'rub-shield'),
    code: 'practice.hygiene-between-items',
    at: 'shield-off',
  },
  {
    fact: 'respirator last of all on the face',
    broken: moved(GOOD, 'goggles-off', 'respirator-off', 'rub-respirator'),
    code: 'practice.respirator-last-of-face',
    also: 'practice.glove-change-before-respirator',
    at: 'respirator-off',
  },
  {
    fact: 'the helper’s hands cleaned after helping',
    broken: without(GOOD, 'assistant-rub'),
    code: 'practice.helper-hygiene-after-each-assist',
    at: 'apron-off',
  },
  {
    fact: 'shoes wiped with their soles',
    broken: changed(GOOD, 'shoes-wiped', { technique: 'without-soles' }),
    code: 'practice.shoes-wiped-with-soles',
    at: 'shoes-wiped',
  },
];

describe.each(FACTS)('$fact', ({ broken, code, at, also, status = 'published' }) => {
  const found = departures(broken);

  test('broken, is named where it is broken, as an error that rests on its rule', () => {
    expect(found).toContainEqual({ code, at, severity: 'error', evidence: [code] });
    const others = found.map((one) => one.code).filter((one) => one !== code && one !== also);
    expect(others).toEqual([]);
  });

  test('is told with its rule, its source and how far to trust it', () => {
    const finding = check(broken).findings.find((one) => one.code === code)!;
    const said = words.evidence(code);
    expect(words.finding(broken, finding).text).toContain(said.says);
    expect(said.status).toBe(status);
    if (status === 'common practice') expect(said.source).toContain('No sentence found');
    else expect(said.source.length).toBeGreaterThan(20);
  });
});
