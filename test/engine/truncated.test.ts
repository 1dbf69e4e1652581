// Conditions cut off at an order, against the same conditions kept whole as plain lists of cut sets: the least number of events
// up to that order, and whether anything opens them at all, are the same.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CERTAIN, LASTING, NEVER, Truncated } from '../../src/engine/truncated.ts';

type Sets = readonly ReadonlySet<number>[];

/** Makes a condition from the ones so far. */
type Making =
  | { readonly make: 'or'; readonly a: number; readonly b: number }
  | { readonly make: 'under'; readonly a: number; readonly guard: readonly number[] };

const guards = fc.uniqueArray(fc.nat(7), { maxLength: 3 }).map((names) => names.sort((a, b) => a - b));
const makings: fc.Arbitrary<Making> = fc.oneof(
  fc.record({ make: fc.constant('or' as const), a: fc.nat(), b: fc.nat() }),
  fc.record({ make: fc.constant('under' as const), a: fc.nat(), guard: guards }),
);

const slow = (all: readonly Sets[], making: Making): Sets => {
  const a = all[making.a % all.length]!;
  if (making.make === 'or') return [...a, ...all[making.b % all.length]!];
  return a.map((set) => new Set([...set, ...making.guard]));
};

const leastOf = (sets: Sets): number => Math.min(Infinity, ...sets.map(({ size }) => size));

/** The same makings, cut off; `named` says how an event is called. */
function cutOff(order: number, list: readonly Making[], named: (event: number) => number) {
  const truncated = new Truncated(order);
  const all = [NEVER, CERTAIN];
  for (const making of list) {
    const a = all[making.a % all.length]!;
    all.push(
      making.make === 'or'
        ? truncated.or(a, all[making.b % all.length]!)
        : truncated.under(a, truncated.guard(making.guard.map(named))),
    );
  }
  return { truncated, all };
}

function wholly(list: readonly Making[]): readonly Sets[] {
  const all: Sets[] = [[], [new Set()]];
  for (const making of list) all.push(slow(all, making));
  return all;
}

const upTo = (order: number, least: number): number => (least <= order ? least : Infinity);

describe('conditions cut off at an order', () => {
  test.each([0, 1, 2, 3])(
    'keep their least number of events up to %i, and whether anything opens them',
    (order) => {
      fc.assert(
        fc.property(fc.array(makings, { maxLength: 12 }), (list) => {
          const { truncated, all } = cutOff(order, list, (event) => event);
          const whole = wholly(list);
          expect(all.map((one) => truncated.least(one))).toEqual(
            whole.map((sets) => upTo(order, leastOf(sets))),
          );
          expect(all.map((one) => one === NEVER)).toEqual(whole.map((sets) => sets.length === 0));
        }),
        { numRuns: 300 },
      );
    },
  );

  test('are one number where they are equal', () => {
    fc.assert(
      fc.property(fc.array(makings, { maxLength: 10 }), fc.nat(), fc.nat(), fc.nat(), (list, a, b, c) => {
        const { truncated, all } = cutOff(3, list, (event) => event);
        const [one, two, three] = [a, b, c].map((at) => all[at % all.length]!) as [number, number, number];
        expect(truncated.or(one, two)).toBe(truncated.or(two, one));
        expect(truncated.or(one, truncated.or(two, three))).toBe(truncated.or(truncated.or(one, two), three));
      }),
    );
  });

  test('count events by number alone once their step has ended, and lasting ones by name', () => {
    fc.assert(
      fc.property(fc.array(makings, { maxLength: 10 }), guards, (list, later) => {
        const named = (event: number): number => (event < 4 ? LASTING + event : event);
        const { truncated, all } = cutOff(3, list, named);
        const lasting = later.filter((event) => event < 4);
        const after = all.map((one) =>
          truncated.least(truncated.under(truncated.forget(one), truncated.guard(lasting.map(named)))),
        );
        const whole = wholly(list).map((sets) => sets.map((set) => new Set([...set, ...lasting])));
        expect(after).toEqual(whole.map((sets) => upTo(3, leastOf(sets))));
      }),
      { numRuns: 300 },
    );
  });
});
