// Random small plans and random sets of true events, for the properties of the engine. Nothing here knows
// what a procedure is: any sequence of operations must keep the engine's promises.

import * as fc from 'fast-check';
import type { BasicEvent, Guard, Operation, Plan, Surface } from '../../src/contacts/plan.ts';

export interface Sizes {
  readonly surfaces: number;
  readonly events: number;
  readonly steps: number;
}

const SMALL: Sizes = { surfaces: 8, events: 10, steps: 12 };

const surfaceOf = (id: number, watched: boolean): Surface => ({
  id: `surface.${id}`,
  class: watched ? 'skin' : 'equipment',
  protected: watched,
  judged: 'ever',
});

const eventOf = (id: number): BasicEvent => ({
  key: `event:${id}`,
  kind: id % 3 === 0 ? 'circumstance' : 'slip',
  what: 'any',
  step: -1,
  prior: `prior.${id % 4}`,
  visible: true,
});

const guards = (events: number): fc.Arbitrary<Guard> => fc.uniqueArray(fc.nat(events - 1), { maxLength: 2 });

function operations(surfaces: number, events: number): fc.Arbitrary<Operation> {
  const a = fc.nat(surfaces - 1);
  const when = guards(events);
  return fc.oneof(
    { weight: 6, arbitrary: fc.record({ op: fc.constant('contact' as const), a, b: a, when }) },
    { weight: 2, arbitrary: fc.record({ op: fc.constant('taint' as const), a, when }) },
    {
      weight: 2,
      arbitrary: fc.record({
        op: fc.constant('sanitise' as const),
        a,
        failure: fc.array(when, { maxLength: 2 }),
      }),
    },
    { weight: 1, arbitrary: fc.record({ op: fc.constantFrom('fresh' as const, 'retire' as const), a }) },
  );
}

/** Plans of at most these sizes; about half the surfaces are protected. */
export function plans(sizes: Sizes = SMALL): fc.Arbitrary<Plan> {
  return fc
    .tuple(fc.integer({ min: 2, max: sizes.surfaces }), fc.integer({ min: 1, max: sizes.events }))
    .chain(([surfaces, events]) => {
      const step = fc.array(operations(surfaces, events), { minLength: 1, maxLength: 4 });
      return fc.record({
        surfaces: fc
          .array(fc.boolean(), { minLength: surfaces, maxLength: surfaces })
          .map((watched) => watched.map((flag, id) => surfaceOf(id, flag))),
        events: fc.constant(Array.from({ length: events }, (_, id) => eventOf(id))),
        start: fc.array(operations(surfaces, events), { minLength: 1, maxLength: 4 }),
        steps: fc
          .array(step, { minLength: 1, maxLength: sizes.steps })
          .map((lists) => lists.map((list, id) => ({ id: `s${id}`, operations: list }))),
      });
    });
}

/** A set of true events as the bits of a number. */
export const eventSets: fc.Arbitrary<number> = fc.nat(1023);

/** The events whose bits are set. */
export const setOf = (bits: number, events: number): Set<number> =>
  new Set(Array.from({ length: events }, (_, id) => id).filter((id) => (bits >> id) & 1));

/** Chances for this many events, none of them 0 or 1. */
export const chancesOf = (events: number): fc.Arbitrary<number[]> =>
  fc.array(fc.double({ min: 0.001, max: 0.6, noNaN: true }), { minLength: events, maxLength: events });
