// What is said of two procedures: whole sentences in every language, and a difference that says how far it may be trusted.
import { describe, expect, test } from 'vitest';
import { compareChecked } from '../../src/compare/compare.ts';
import { costOfProcedure } from '../../src/costing/cost.ts';
import { PRICE_KEYS } from '../../src/costing/prices.ts';
import { COMPARED_FIELDS } from '../../src/compare/steps.ts';
import { PRODUCT_IDS } from '../../src/domain/products.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { pointsIn } from '../../src/words/numbers.ts';
import { wordsFor } from '../../src/words/index.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { VERDICT, whole } from './whole.ts';

const LANGUAGES = ['en', 'fr', 'es', 'pt'] as const;
const { compare } = wordsFor('en');

const PAIRS = [
  ['larkmoor-suit-doffing.yaml', 'larkmoor-suit-doffing-v2.yaml'],
  ['national-n95-coverall-doffing.yaml', 'national-papr-gown-doffing.yaml'],
  ['everyday-example-1-doffing.yaml', 'larkmoor-suit-donning.yaml'],
] as const;

const compared = PAIRS.map(([a, b]) => {
  const [one, other] = [a, b].map((file) =>
    verifyProcedure(procedureOf(file), { agents: ['enveloped'], mends: false, variants: false }),
  );
  return { a: one!.procedure, b: other!.procedure, comparison: compareChecked(one!, other!) };
});

describe.each(LANGUAGES)('%s', (language) => {
  const words = wordsFor(language).compare;

  test('every row, gap, difference, supply and quantity is whole and gives no verdict', () => {
    expect(wordsFor(language).language).toBe(language);
    for (const { a, b, comparison } of compared) {
      const said = [
        ...comparison.steps.map((row) => words.step(a, b, row)),
        ...comparison.gaps.map((gap) => words.gap(a, b, gap)),
        ...comparison.surfaces.flatMap(({ difference }) =>
          difference ? [words.chance({ ...difference, value: difference.chance, status: 'judgement' })] : [],
        ),
        words.time({ ...comparison.costs.time, value: comparison.costs.time.seconds, status: 'judgement' }),
        ...comparison.costs.supplies.flatMap(({ supply, a: before, b: after }) => [
          words.supply(supply),
          words.quantity(before),
          words.quantity(after),
        ]),
      ];
      expect(said.length).toBeGreaterThan(50);
      for (const sentence of said) {
        expect(whole(sentence), sentence).toBe(true);
        expect(sentence).not.toMatch(VERDICT);
      }
    }
  });

  test('every field and every kind of supply has its own name', () => {
    const fields = COMPARED_FIELDS.map(words.field);
    expect(new Set(fields).size).toBe(fields.length);
    const supplies = PRODUCT_IDS.flatMap((product) => [
      words.supply({ kind: 'product', product }),
      words.supply({ kind: 'mat', product }),
      ...(product === 'disinfectant-wipe' ? [] : [words.supply({ kind: 'wipe', product })]),
    ]);
    expect(new Set(supplies).size).toBe(supplies.length);
  });
});

describe('English', () => {
  const difference = (value: number, low: number, high: number, excludesZero: boolean) =>
    compare.chance({ value, interval: { low, high }, excludesZero, status: 'judgement' });

  test('a difference has its direction only where the interval leaves nought out', () => {
    expect(difference(-0.006, -0.015, -0.002, true)).toBe(
      'lower: −0.6 percentage points (90 % interval −1.5 to −0.2; judgement)',
    );
    expect(difference(0.006, -0.002, 0.015, false)).toBe(
      'cannot be told apart: +0.6 percentage points (90 % interval −0.2 to +1.5; judgement)',
    );
    expect(difference(0, 0, 0, false)).toBe('no difference');
  });

  test('a time says longer or shorter', () => {
    expect(
      compare.time({ value: 110, interval: { low: 49, high: 226 }, excludesZero: true, status: 'judgement' }),
    ).toBe('longer: +1 min 50 s (90 % interval +49 s to +3 min 46 s; judgement)');
  });

  test('pairs and singles', () => {
    const piece = (count: number, pairs: number) =>
      compare.quantity({ unit: 'piece', count, pairs, singles: count - 2 * pairs });
    expect([piece(4, 2), piece(3, 1), piece(1, 0), piece(0, 0)]).toEqual([
      '2 pairs',
      '1 pair and 1 single',
      '1 single piece',
      '0',
    ]);
    expect(compare.quantity({ unit: 'wipe', count: 1 })).toBe('1 wipe');
    expect(compare.quantity({ unit: 'piece', count: 2 })).toBe('2');
  });

  test('points too small to write are said by their bound, on the right side of nought', () => {
    const points = pointsIn('en');
    expect([0, 1e-9, -1e-9, 0.5, -0.000_012].map(points)).toEqual([
      '0',
      '< +0.0001',
      '> −0.0001',
      '+50',
      '−0.0012',
    ]);
  });
});

test('what a run takes can be found in a price list by its key', () => {
  const { items } = costOfProcedure(procedureOf('larkmoor-suit-doffing.yaml'));
  for (const { item } of items) expect(PRICE_KEYS).toContain(item);
});
