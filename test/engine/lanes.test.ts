// Many sets of events at once must be the reference run once per set, on random plans and on a real procedure.
import { test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/contacts/plan.ts';
import { run } from '../../src/engine/reference.ts';
import { compiled } from '../procedures/shelf.ts';
import { lanesOf, runLanes, setsUpTo } from '../support/lanes.ts';
import { plans } from './arbitrary.ts';

const bits = (row: Uint32Array, count: number): readonly boolean[] =>
  Array.from({ length: count }, (_, lane) => ((row[lane >>> 5]! >>> (lane & 31)) & 1) === 1);

/** Per surface and set: ever, and at the end, by one reference run per set. */
function oneByOne(plan: Plan, sets: readonly (readonly string[])[]) {
  const runs = sets.map((set) =>
    run(plan, new Set(set.map((key) => plan.events.findIndex((event) => event.key === key)))),
  );
  return {
    ever: plan.surfaces.map((_, surface) => runs.map(({ ever }) => ever[surface])),
    end: plan.surfaces.map((_, surface) => runs.map(({ after }) => after.at(-1)?.[surface])),
  };
}

function allAtOnce(plan: Plan, sets: readonly (readonly string[])[]) {
  const { ever, end } = runLanes(plan, lanesOf(sets));
  return {
    ever: ever.map((row) => bits(row, sets.length)),
    end: end.map((row) => bits(row, sets.length)),
  };
}

const keysOf = (plan: Plan): readonly string[] => plan.events.map(({ key }) => key);

describe('the reference, many sets at once', () => {
  property.prop([plans()], { numRuns: 60 })('equals one run per set of up to three events', (plan) => {
    const sets = setsUpTo(keysOf(plan), 3);
    expect(allAtOnce(plan, sets)).toEqual(oneByOne(plan, sets));
  });

  test('equals one run per set on a published doffing, for a slice of all pairs', () => {
    const { plan } = compiled('international-gown-doffing.yaml');
    const sets = setsUpTo(keysOf(plan), 2).filter((_, at) => at % 23 === 0);
    expect(allAtOnce(plan, sets)).toEqual(oneByOne(plan, sets));
  });

  test('lists each set of at most two once, the empty one first', () => {
    const sets = setsUpTo(['a', 'b', 'c'], 2).map((set) => set.join(' '));
    expect(sets).toEqual(['', 'a', 'b', 'c', 'a b', 'a c', 'b c']);
  });
});
