// Price lists are the user's own: what is wrong with one is told by its line, and what has no price is left out and said.
import { describe, expect, test } from 'vitest';
import { costOfProcedure } from '../../src/costing/cost.ts';
import { PRICE_KEYS, priced, readPrices } from '../../src/costing/prices.ts';
import { supplyKey } from '../../src/costing/supply.ts';
import { files, procedureOf } from '../procedures/shelf.ts';

const listed = (text: string) => {
  const list = readPrices(text);
  if ('faults' in list) throw new Error(JSON.stringify(list.faults));
  return list.prices;
};

describe('reading', () => {
  test('names, numbers, currency', () => {
    const { currency, prices } = listed('currency: EUR\nprices:\n  outer-gloves: 0.2\n  mat: 3\n');
    expect([currency, ...prices]).toEqual(['EUR', ['outer-gloves', 0.2], ['mat', 3]]);
  });

  test.each([
    ['prices: [1', 'not-yaml', 1],
    ['', 'not-a-list', 1],
    ['currency: EUR', 'not-a-list', 1],
    ['prices: 3', 'not-a-list', 1],
    ['a: &x {mat: 1}\nprices: *x', 'not-a-list', 1],
    ['prices:\n  mat: 1\n  outer-glove: 2', 'unknown-supply', 3],
    ['prices:\n  mat: -1', 'not-a-price', 2],
    ['prices:\n  mat: 1\n  gown: free', 'not-a-price', 3],
    ['prices:\n  mat: .inf', 'not-a-price', 2],
  ] as const)('%j is refused: %s in line %d', (text, code, line) => {
    const list = readPrices(text);
    expect('faults' in list ? list.faults.map((fault) => [fault.code, fault.line]) : []).toEqual([
      [code, line],
    ]);
  });
});

describe('pricing', () => {
  test('pieces, litres and reprocessing', () => {
    const cost = costOfProcedure(procedureOf('larkmoor-suit-doffing.yaml'));
    const { lines, total, unpriced, currency } = priced(
      cost,
      listed('currency: EUR\nprices: {outer-gloves: 0.5, alcohol-hand-rub: 10}'),
    );
    // Three people with a pair each; 11 rubs of 3 mL.
    const rub = cost.uses.find(({ supply }) => supplyKey(supply) === 'alcohol-hand-rub')?.millilitres ?? 0;
    expect(total).toBeCloseTo(6 * 0.5 + (rub / 1000) * 10, 9);
    expect(lines.filter(({ sum }) => sum !== null)).toHaveLength(2);
    expect(unpriced).toHaveLength(lines.length - 2);
    expect(currency).toBe('EUR');
  });

  test.each(files)('%s: everything used up can be priced', (file) => {
    const { lines } = priced(costOfProcedure(procedureOf(file)), { currency: '', prices: new Map() });
    expect(lines.map(({ supply }) => supplyKey(supply)).filter((key) => !PRICE_KEYS.includes(key))).toEqual(
      [],
    );
    expect(new Set(lines.map(({ supply }) => supplyKey(supply))).size).toBe(lines.length);
  });

  test('there is no default price', () => {
    const { total, lines } = priced(costOfProcedure(procedureOf('larkmoor-suit-doffing.yaml')), {
      currency: '',
      prices: new Map(),
    });
    expect([total, lines.every(({ sum }) => sum === null)]).toEqual([0, true]);
  });
});
