// Laws of whole random procedures: compiling never throws, what it says refers to what exists, the fast engine and the
// reference agree on it at every step, and more slips never clean. Thousands of procedures; the seed is fast-check's own.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Compiled, compile } from '../../src/contacts/interpret.ts';
import type { Operation } from '../../src/contacts/plan.ts';
import { PROBLEM_CODES } from '../../src/contacts/problem.ts';
import { AGENTS } from '../../src/domain/products.ts';
import { conditionAt, propagate } from '../../src/engine/propagate.ts';
import { run } from '../../src/engine/reference.ts';
import { evaluate } from '../../src/engine/walk.ts';
import { procedures } from '../support/arbitraryProcedure.ts';

const agents = fc.constantFrom(...AGENTS);

const operationsOf = ({ plan }: Compiled): readonly Operation[] => [
  ...plan.start,
  ...plan.steps.flatMap((step) => step.operations),
];

const eventsIn = (operation: Operation): readonly number[] =>
  operation.op === 'sanitise' ? operation.failure.flat() : 'when' in operation ? operation.when : [];

const surfacesIn = (operation: Operation): readonly number[] =>
  operation.op === 'contact' ? [operation.a, operation.b] : [operation.a];

/** Some of the plan's events: each with a chance of one in `odds`, by the seed's own arithmetic. */
function someEvents(count: number, seed: number, odds: number): Set<number> {
  const chosen = new Set<number>();
  let state = seed | 1;
  for (let event = 0; event < count; event += 1) {
    state = Math.imul(state, 1_664_525) + 1_013_904_223;
    if ((state >>> 8) % odds === 0) chosen.add(event);
  }
  return chosen;
}

const seeds = fc.array(fc.tuple(fc.integer(), fc.integer({ min: 1, max: 6 })), {
  minLength: 2,
  maxLength: 2,
});

describe('any procedure', () => {
  it('compiles to operations on known surfaces under known events, with known problems', () => {
    fc.assert(
      fc.property(procedures(), agents, (one, agent) => {
        const compiled = compile(one, agent);
        const { plan, problems } = compiled;
        const operations = operationsOf(compiled);
        expect(operations.flatMap(surfacesIn).every((at) => plan.surfaces[at] !== undefined)).toBe(true);
        expect(operations.flatMap(eventsIn).every((at) => plan.events[at] !== undefined)).toBe(true);
        expect(new Set(plan.events.map(({ key }) => key)).size).toBe(plan.events.length);
        expect(new Set(plan.surfaces.map(({ id }) => id)).size).toBe(plan.surfaces.length);
        expect(problems.every(({ code, step }) => PROBLEM_CODES.includes(code) && plan.steps[step])).toBe(
          true,
        );
      }),
      { numRuns: 1500 },
    );
  });

  it('has its events in the order of its steps, none used before its own', () => {
    fc.assert(
      fc.property(procedures(), agents, (one, agent) => {
        const { plan } = compile(one, agent);
        const steps = plan.events.map(({ step }) => step);
        expect(steps).toEqual([...steps].sort((x, y) => x - y));
        const early = plan.steps.map(({ operations }, at) =>
          operations.flatMap(eventsIn).every((event) => (plan.events[event]?.step ?? at + 1) <= at),
        );
        expect(early).not.toContain(false);
      }),
      { numRuns: 500 },
    );
  });

  it('is contaminated by the fast engine exactly where it is by the reference, at every step', () => {
    fc.assert(
      fc.property(procedures(), agents, seeds, (one, agent, sets) => {
        const { plan } = compile(one, agent);
        const conditions = propagate(plan);
        for (const [seed, odds] of sets) {
          const trueEvents = someEvents(plan.events.length, seed, odds);
          const { after, ever } = run(plan, trueEvents);
          const holds = (node: number) =>
            evaluate(conditions.diagram, node, (event) => trueEvents.has(event));
          const rows = after.map((row, at) => row.map((_, s) => holds(conditionAt(conditions, at - 1, s))));
          expect(rows).toEqual(after);
          const watched = plan.surfaces
            .map((surface, s) => (surface.protected ? s : -1))
            .filter((s) => s >= 0);
          expect(watched.map((s) => holds(conditions.ever[s]!))).toEqual(watched.map((s) => ever[s]));
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('is never cleaned by more slips', () => {
    fc.assert(
      fc.property(procedures(), agents, seeds, (one, agent, [some, others]) => {
        const { plan } = compile(one, agent);
        const fewer = someEvents(plan.events.length, ...some!);
        const more = new Set([...fewer, ...someEvents(plan.events.length, ...others!)]);
        const [less, greater] = [run(plan, fewer), run(plan, more)];
        const cleaned = less.after.flatMap((row, at) =>
          row.filter((dirty, s) => dirty && !greater.after[at]?.[s]),
        );
        expect(cleaned).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});
