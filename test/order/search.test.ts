// The search against everything it claims: on small ensembles every admissible order is tried one by one with the check
// itself; bounds never exceed what an order ends with; a partial order that dominates another does so to every end.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../src/check/finding.ts';
import { compareMeasures } from '../../src/check/measure.ts';
import type { ItemId } from '../../src/domain/items.ts';
import { corridorTo } from '../../src/order/corridor.ts';
import { dominates } from '../../src/order/front.ts';
import { search } from '../../src/order/search.ts';
import { sweep } from '../../src/order/conditions.ts';
import { measureOf as checked } from '../../src/order/written.ts';
import {
  begin,
  dressed,
  follow,
  type Ground,
  groundOf,
  liveAt,
  measureOf,
  ordersFrom,
  procedureOf,
  turns,
  walk,
} from './support.ts';

const never = (): boolean => false;
const LIMITS = { tried: 1e6, late: never, over: never };

type Options = Parameters<typeof groundOf>[1];

const ENSEMBLES: readonly (readonly [string, readonly ItemId[], Options])[] = [
  ['mask, goggles and gloves', ['surgical-mask', 'goggles', 'gloves'], {}],
  ['gown and gloves', ['gown', 'gloves'], { gloveChanges: 1 }],
  ['mask, gown and gloves', ['surgical-mask', 'gown', 'gloves'], { free: false }],
  [
    'apron, shield and two pairs of gloves',
    ['inner-gloves', 'apron', 'face-shield', 'outer-gloves'],
    { free: false },
  ],
  ['boot covers, gown, mask and gloves', ['boot-covers', 'gown', 'surgical-mask', 'gloves'], { free: false }],
];

const ground = (wears: readonly ItemId[], options: Options): Ground => groundOf(dressed(wears), options);

const close = (a: Measure, b: Measure): void => {
  expect([a.impossible, a.open, a.departures, a.seconds]).toEqual([
    b.impossible,
    b.open,
    b.departures,
    b.seconds,
  ]);
  a.chance.forEach((chance, at) => {
    expect(chance).toBeCloseTo(b.chance[at] ?? 0, 9);
  });
};

describe.each(ENSEMBLES)('%s', (_, wears, options) => {
  const here = ground(wears, options);
  const [first] = here.graph.nodes;
  const orders = first ? [...ordersFrom(here, first)] : [];

  test('no order of all of them is better, by the check', () => {
    expect(orders.length).toBeGreaterThan(3);
    const measures = orders.map((arcs) => checked(procedureOf(here, arcs), 'enveloped'));
    const least = measures.reduce((best, one) => (compareMeasures(one, best) < 0 ? one : best));
    const found = search(here.world, here.bounds, here.graph, undefined, LIMITS);
    expect(found.proved).toBe(true);
    if (!found.best) throw new Error('nothing was found');
    close(found.best.measure, least);
    close(checked(procedureOf(here, found.best.arcs), 'enveloped'), least);
  });
});

const RICH: readonly (readonly [string, Ground])[] = [
  [
    'coverall with an assistant',
    groundOf(dressed(['boot-covers', 'inner-gloves', 'coverall', 'goggles', 'outer-gloves'], {}, true), {
      gloveChanges: 1,
    }),
  ],
  [
    'gown and respirator',
    groundOf(dressed(['inner-gloves', 'n95-respirator', 'gown', 'surgical-hood', 'outer-gloves']), {
      gloveChanges: 1,
    }),
  ],
];

describe.each(RICH)('%s', (_, here) => {
  test('the search counts an order as the check does', () => {
    fc.assert(
      fc.property(turns, (choices) => {
        const way = walk(here, choices);
        const end = way.reduce((begun, arc) => follow(here, begun, arc), begin(here));
        close(measureOf(here, end), checked(procedureOf(here, way), 'enveloped'));
      }),
      { numRuns: 25 },
    );
  });

  test('no order ends below what was its bound anywhere on the way', () => {
    fc.assert(
      fc.property(turns, (choices) => {
        const bounds = [begin(here).least];
        let begun = begin(here);
        for (const arc of walk(here, choices)) {
          begun = follow(here, begun, arc);
          bounds.push(begun.least);
        }
        const end = measureOf(here, begun);
        for (const bound of bounds) expect(compareMeasures(bound, end)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  test('what dominates at a scene dominates at every end', () => {
    let pairs = 0;
    fc.assert(
      fc.property(
        fc.array(turns, { minLength: 12, maxLength: 12 }),
        fc.integer({ min: 3, max: 6 }),
        turns,
        (ways, most, on) => {
          const partial = ways.map((choices) => walk(here, choices, undefined, most));
          for (const one of partial) {
            const node = one.at(-1)?.to;
            if (!node) continue;
            const run = (way: typeof one) =>
              way.reduce((begun, arc) => follow(here, begun, arc), begin(here));
            const others = partial.filter((other) => other !== one && other.at(-1)?.to === node);
            const rest = walk(here, on, node);
            const live = liveAt(here, node);
            for (const other of others) {
              const [a, b] = [run(one), run(other)];
              if (!dominates(here.world, a, b, live)) continue;
              pairs += 1;
              const [x, y] = [a, b].map((begun) =>
                measureOf(
                  here,
                  rest.reduce((now, arc) => follow(here, now, arc), begun),
                ),
              );
              if (!x || !y) throw new Error('no end');
              expect(compareMeasures(x, y)).toBeLessThanOrEqual(0);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(pairs).toBeGreaterThan(10);
  });

  test('every move outside the corridor leads to what is worse, and no order is below its least', () => {
    const first = search(here.world, here.bounds, here.graph, undefined, { ...LIMITS, tried: 0 });
    if (!first.best) throw new Error('nothing was found');
    const goal = { open: first.best.measure.open, mucosa: first.best.measure.chance[0] };
    const corridor = corridorTo(here.world, here.bounds, here.graph, goal, { most: 1e6, stop: never });
    const { least } = corridor;
    if (!least) throw new Error('it was not walked to its end');
    const below = (open: Measure['open'], mucosa: number): Measure => ({
      ...first.best!.measure,
      open,
      chance: [mucosa, 0, 0, 0],
    });
    let outside = 0;
    fc.assert(
      fc.property(turns, (choices) => {
        const way = walk(here, choices);
        const end = measureOf(
          here,
          way.reduce((begun, arc) => follow(here, begun, arc), begin(here)),
        );
        const weightiest = below(end.open, end.chance[0]);
        expect(compareMeasures(below(least.open, least.mucosa), weightiest)).toBeLessThanOrEqual(0);
        if (way.every((arc) => corridor.keeps(arc))) return;
        outside += 1;
        expect(compareMeasures(weightiest, below(goal.open, goal.mucosa))).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
    expect(outside).toBeGreaterThan(10);
  });

  test('a sweep of the diagram changes no chance', () => {
    fc.assert(
      fc.property(turns, (choices) => {
        const { held } = here.bounds;
        const end = walk(here, choices).reduce((begun, arc) => follow(here, begun, arc), begin(here));
        const before = measureOf(here, end);
        sweep(here.world, [...held, end.state, end.ever]);
        close(measureOf(here, end), before);
      }),
      { numRuns: 5 },
    );
  });
});

test('past its limit it says what it left, and the bound is honest', () => {
  const here = groundOf(dressed(['inner-gloves', 'gown', 'surgical-mask', 'face-shield', 'outer-gloves']), {
    free: false,
  });
  const whole = search(here.world, here.bounds, here.graph, undefined, LIMITS);
  const cut = search(here.world, here.bounds, here.graph, undefined, { ...LIMITS, tried: 20 });
  expect([whole.proved, cut.proved]).toEqual([true, false]);
  if (!whole.best || !cut.best || !cut.left) throw new Error('nothing was found');
  expect(compareMeasures(whole.best.measure, cut.best.measure)).toBeLessThanOrEqual(0);
  expect(compareMeasures(cut.left, whole.best.measure)).toBeLessThanOrEqual(0);
});
