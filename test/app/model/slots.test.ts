// The rows of the picture of two procedures: every step once on its side, moved ones joined across, long stretches folded
// without losing a step.
import { describe, expect, test } from 'vitest';
import { test as property } from '@fast-check/vitest';
import { alignedOf, type Slot } from '../../../src/app/model/slots.ts';
import { alignSteps } from '../../../src/compare/align.ts';
import { matchOf } from '../../../src/compare/match.ts';
import type { Procedure } from '../../../src/domain/procedure.ts';
import { goodDoffing } from '../../support/good.ts';
import { procedures } from '../../support/arbitraryProcedure.ts';
import { inserted, moved, step, without } from '../../support/procedure.ts';

const GOOD = goodDoffing();
const rowsOf = (a: Procedure, b: Procedure) => alignSteps(a, b, matchOf(a, b));

/** Steps of one side from top to bottom, those in folds included. */
const steps = (slots: readonly Slot[], side: 'a' | 'b'): readonly number[] =>
  slots.flatMap((slot) =>
    slot.is === 'fold'
      ? Array.from({ length: slot.count }, (_, at) => slot[side] + at)
      : slot[side] === null
        ? []
        : [slot[side]],
  );

describe('any two procedures', () => {
  property.prop([procedures(12), procedures(12)])('show each side whole and in its own order', (a, b) => {
    const rows = rowsOf(a, b);
    for (const whole of [true, false]) {
      const { slots, joins } = alignedOf(rows, whole);
      expect(steps(slots, 'a')).toEqual(a.steps.map((_, at) => at));
      expect(steps(slots, 'b')).toEqual(b.steps.map((_, at) => at));
      expect(joins.every(({ from, to }) => slots[from]?.is === 'row' && slots[to]?.is === 'row')).toBe(true);
    }
    expect(alignedOf(rows, true).joins).toHaveLength(
      rows.filter((row) => row.a !== null && row.b !== null).length,
    );
  });
});

test('a procedure and itself fold into one row', () => {
  expect(alignedOf(rowsOf(GOOD, GOOD), false)).toEqual({
    slots: [{ is: 'fold', a: 0, b: 0, count: GOOD.steps.length }],
    joins: [],
  });
});

test('around a change one step stays on each side', () => {
  const rub = step('more', 'sanitise', { product: 'alcohol-hand-rub' });
  const at = 6;
  const { slots } = alignedOf(rowsOf(GOOD, inserted(GOOD, GOOD.steps[at]?.id ?? '', rub)), false);
  expect(slots.slice(0, 4)).toEqual([
    { is: 'fold', a: 0, b: 0, count: at - 1 },
    { is: 'row', a: at - 1, b: at - 1, what: 'same' },
    { is: 'row', a: null, b: at, what: 'new' },
    { is: 'row', a: at, b: at + 1, what: 'same' },
  ]);
});

test('a moved step stands in two rows, joined; one left out in one', () => {
  const items = GOOD.steps.filter(({ items: own }) => own.length > 0);
  const [first, last] = [items[0]?.id ?? '', items.at(-1)?.id ?? ''];
  const { slots, joins } = alignedOf(rowsOf(GOOD, moved(GOOD, first, last)), true);
  const across = joins.filter(({ from, to }) => from !== to);
  expect(across).toHaveLength(1);
  expect(across[0]?.what).toBe('moved');
  expect(slots).toHaveLength(GOOD.steps.length + 1);
  const gone = alignedOf(rowsOf(GOOD, without(GOOD, first)), true).slots;
  expect(gone.filter((slot) => slot.is === 'row' && slot.what === 'gone')).toHaveLength(1);
});
