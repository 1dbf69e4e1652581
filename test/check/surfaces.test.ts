// What the check says of each protected surface: its combinations are minimal and sufficient by the reference, complete to
// pairs, counted as listed, and the chance is what enumeration of all slip sets gives where that can be done.
import { describe, expect, test } from 'vitest';
import { eventChances } from '../../src/check/chances.ts';
import { LISTED } from '../../src/check/surfaces.ts';
import type { SurfaceVerdict } from '../../src/check/finding.ts';
import { parseReplayId } from '../../src/check/replayId.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { off, rub } from '../practice/procedures.ts';
import { lanesOf, reachedIn, setsUpTo } from '../support/lanes.ts';
import { person, procedure as made, step } from '../support/procedure.ts';
import { planOf, reachedBy } from './reference.ts';
import { SUBJECTS, verdictOf } from './subjects.ts';

const sizes = ({ combinations }: SurfaceVerdict): readonly number[] =>
  combinations.map(({ events }) => events.length);

describe.each(SUBJECTS)('%s', (_, procedure) => {
  const { surfaces, hash } = verdictOf(procedure);

  test('lists combinations that suffice and of which no slip can be spared', () => {
    for (const { surface, agent, combinations } of surfaces) {
      const plan = planOf(procedure, agent);
      // A slice: the smallest ones and a few of the rest.
      for (const { events } of combinations.filter((__, at) => at < 6 || at % 11 === 0)) {
        expect(reachedBy(plan, events).has(surface)).toBe(true);
        for (const spared of events) {
          const fewer = events.filter((event) => event !== spared);
          expect(reachedBy(plan, fewer).has(surface)).toBe(false);
        }
      }
    }
  });

  test('counts singles and pairs as the reference finds them, trying all', () => {
    for (const agent of AGENTS) {
      const plan = planOf(procedure, agent);
      const sets = setsUpTo(
        plan.events.map(({ key }) => key),
        2,
      );
      const reached = reachedIn(plan, lanesOf(sets));
      for (const verdict of surfaces.filter((one) => one.agent === agent)) {
        const row = reached.get(verdict.surface)!;
        const opens = sets.filter((__, lane) => ((row[lane >>> 5]! >>> (lane & 31)) & 1) === 1);
        const minimal = opens.filter(
          (set) =>
            !opens.some((other) => other.length < set.length && other.every((key) => set.includes(key))),
        );
        const counted = [0, 1, 2].map((order) => verdict.combinationsByOrder[String(order)] ?? '0');
        expect(counted).toEqual(
          [0, 1, 2].map((order) => String(minimal.filter((set) => set.length === order).length)),
        );
      }
    }
  });

  test('lists the smallest first, as many as there are or the most that are shown, and adds up', () => {
    for (const verdict of surfaces) {
      const total = Object.values(verdict.combinationsByOrder).reduce(
        (sum, count) => sum + BigInt(count),
        0n,
      );
      expect(String(total)).toBe(verdict.combinationCount);
      expect(verdict.combinations.length).toBe(Number(total < BigInt(LISTED) ? total : BigInt(LISTED)));
      expect(sizes(verdict)).toEqual(sizes(verdict).toSorted((a, b) => a - b));
      expect(verdict.barriers).toBe(sizes(verdict)[0] ?? null);
    }
  });

  test('gives each combination a replay id that reads back to it', () => {
    for (const { agent, combinations } of surfaces) {
      const plan = planOf(procedure, agent);
      for (const { replay, events } of combinations) {
        const read = parseReplayId(replay)!;
        expect([read.hash, read.events.map((event) => plan.events[event]?.key)]).toEqual([hash, events]);
      }
    }
  });

  test('keeps each chance within its interval, roughly, and above that of its likeliest combination', () => {
    for (const { chance, interval, combinations } of surfaces) {
      expect(interval.low).toBeLessThanOrEqual(chance);
      // The mean of a skewed distribution can pass its 95th percentile; never by much here.
      expect(chance).toBeLessThanOrEqual(interval.high * 1.5 + 1e-15);
      const likeliest = Math.max(0, ...combinations.map((one) => one.chance));
      expect(chance).toBeGreaterThanOrEqual(likeliest * (1 - 1e-9));
      const sum = combinations.reduce((total, one) => total + one.chance, 0);
      if (combinations.length < LISTED) expect(chance).toBeLessThanOrEqual(sum * (1 + 1e-9) + 1e-15);
    }
  });
});

const wearer = (wears: Parameters<typeof person>[0]['wears']) =>
  person({ id: 'wearer', role: 'wearer', wears: wears!, underneath: ['scrubs'] });

/** Small enough to try every set of slips. */
const TINY: readonly (readonly [string, Procedure])[] = [
  ['one pair of gloves', made({ people: [wearer(['gloves'])], steps: [off('off', 'gloves'), rub('rub')] })],
  [
    'one glove, then the other',
    made({
      people: [wearer(['gloves'])],
      steps: [
        off('one', 'gloves', { side: 'left', technique: 'peel-one' }),
        rub('rub'),
        off('two', 'gloves', { side: 'right', technique: 'peel-one' }),
        rub('end'),
      ],
    }),
  ],
  [
    'goggles and gloves',
    made({
      people: [wearer(['goggles', 'gloves'])],
      steps: [off('off', 'gloves'), off('goggles', 'goggles')],
    }),
  ],
  [
    'an apron alone',
    made({
      people: [wearer(['apron', 'gloves'])],
      steps: [step('apron', 'remove', { items: ['apron'], technique: 'tear-at-neck' }), rub('rub')],
    }),
  ],
];

describe.each(TINY)('the chance on %s', (_, procedure) => {
  test.each(AGENTS)('equals the sum over all sets of slips (%s)', (agent) => {
    const plan = planOf(procedure, agent);
    const chances = eventChances(plan.events, procedure.policy);
    expect(plan.events.length).toBeGreaterThan(4);
    expect(plan.events.length).toBeLessThan(17);
    const keys = plan.events.map(({ key }) => key);
    const sets = setsUpTo(keys, keys.length);
    expect(sets.length).toBe(2 ** keys.length);
    const weights = sets.map((set) =>
      keys.reduce((product, key, at) => product * (set.includes(key) ? chances[at]! : 1 - chances[at]!), 1),
    );
    const reached = reachedIn(plan, lanesOf(sets));
    const told = verdictOf(procedure).surfaces.filter((one) => one.agent === agent);
    expect(told.some(({ chance }) => chance > 0)).toBe(true);
    for (const { surface, chance } of told) {
      const row = reached.get(surface)!;
      const sum = weights.reduce(
        (total, weight, lane) => ((row[lane >>> 5]! >>> (lane & 31)) & 1 ? total + weight : total),
        0,
      );
      expect(chance).toBeCloseTo(sum, 12);
    }
  });
});
