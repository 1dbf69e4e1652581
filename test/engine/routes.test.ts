// Routes and the ledger: a route is a chain of contacts that did happen, from a source to the target, and no chain with
// fewer transfers exists; the ledger turns as the conditions do.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Operation, Plan } from '../../src/contacts/plan.ts';
import { ledgerOf } from '../../src/engine/ledger.ts';
import { propagate } from '../../src/engine/propagate.ts';
import { run } from '../../src/engine/reference.ts';
import { type Route, routeOf } from '../../src/engine/routes.ts';
import { eventSets, plans, setOf } from './arbitrary.ts';

const operationAt = (plan: Plan, step: number, index: number): Operation | undefined =>
  (step < 0 ? plan.start : plan.steps[step]?.operations)?.[index];

/** Every link is an operation of the plan whose guard held, each beginning where the one before ended. */
function expectReal(plan: Plan, trueEvents: ReadonlySet<number>, { links, transfers }: Route): void {
  expect(links[0]?.kind).toBe('taint');
  expect(links.length).toBe(transfers + 1);
  links.forEach((link, at) => {
    const operation = operationAt(plan, link.step, link.operation);
    expect(operation?.op).toBe(link.kind);
    expect(link.guard.every((event) => trueEvents.has(event))).toBe(true);
    if (operation?.op === 'contact') {
      expect([operation.a, operation.b]).toEqual(expect.arrayContaining([link.from, link.to]));
    }
    expect(link.from).toBe(links[at - 1]?.to);
    const before = links[at - 1];
    if (before)
      expect(link.step * 100 + link.operation).toBeGreaterThan(before.step * 100 + before.operation);
  });
}

/** Fewest transfers by trying, per operation, every surface's least number so far: written apart from the engine. */
function fewest(plan: Plan, trueEvents: ReadonlySet<number>, target: number): number {
  let [now, best] = [plan.surfaces.map(() => Infinity), Infinity];
  const holds = (guard: readonly number[]) => guard.every((event) => trueEvents.has(event));
  for (const operation of [...plan.start, ...plan.steps.flatMap((step) => step.operations)]) {
    const next = [...now];
    const { op, a } = operation;
    if (op === 'taint' && holds(operation.when)) next[a] = 0;
    if (op === 'contact' && holds(operation.when)) {
      next[a] = Math.min(now[a]!, now[operation.b]! + 1);
      next[operation.b] = Math.min(now[operation.b]!, now[a]! + 1);
    }
    if (op === 'fresh' || op === 'retire' || (op === 'sanitise' && !operation.failure.some(holds)))
      next[a] = Infinity;
    now = next;
    best = Math.min(best, now[target]!);
  }
  return best;
}

describe('routes', () => {
  it('are real, end at the target, and have the fewest transfers', () => {
    fc.assert(
      fc.property(plans(), eventSets, (plan, bits) => {
        const trueEvents = setOf(bits, plan.events.length);
        const { ever, after } = run(plan, trueEvents);
        plan.surfaces.forEach((_, target) => {
          const route = routeOf(plan, trueEvents, { target, judged: 'ever' });
          expect(route !== null).toBe(ever[target]);
          expect(route?.transfers ?? Infinity).toBe(fewest(plan, trueEvents, target));
          if (route) {
            expectReal(plan, trueEvents, route);
            expect(route.links.at(-1)?.to).toBe(target);
          }
          expect(routeOf(plan, trueEvents, { target, judged: 'end' }) !== null).toBe(after.at(-1)?.[target]);
        });
      }),
      { numRuns: 1500 },
    );
  });

  it('count the transfers between hands apart', () => {
    const plan = chainPlan();
    const route = routeOf(plan, new Set([0]), {
      target: 3,
      judged: 'ever',
      isHand: (s) => s === 1 || s === 2,
    });
    expect(route?.links.map(({ from, to, step }) => [from, to, step])).toEqual([
      [undefined, 0, -1],
      [0, 1, 0],
      [1, 2, 0],
      [2, 3, 1],
    ]);
    expect(route).toMatchObject({ transfers: 3, handTransfers: 1 });
    expect(routeOf(plan, new Set(), { target: 3, judged: 'ever' })).toBeNull();
    expect(routeOf(plan, new Set([0]), { target: 1, judged: 'end' })).toBeNull();
  });
});

/** Gown 0 soiled; touched by left hand 1, then right hand 2 on slip 0; right touches skin 3; left is fresh. */
function chainPlan(): Plan {
  const surface = (id: string) => ({ id, class: 'skin', protected: true, judged: 'ever' }) as const;
  return {
    surfaces: ['gown', 'left', 'right', 'skin'].map(surface),
    events: [{ key: 'a', kind: 'slip', what: 'a', step: 0, prior: 'p', visible: true }],
    start: [{ op: 'taint', a: 0, when: [] }],
    steps: [
      {
        id: 'a',
        operations: [
          { op: 'contact', a: 0, b: 1, when: [] },
          { op: 'contact', a: 2, b: 1, when: [0] },
        ],
      },
      {
        id: 'b',
        operations: [
          { op: 'contact', a: 2, b: 3, when: [] },
          { op: 'fresh', a: 1 },
        ],
      },
    ],
  };
}

describe('the ledger', () => {
  it('tells when a surface became certain, suspect, less, and was cleared', () => {
    const plan = chainPlan();
    const wiped: Plan = {
      ...plan,
      steps: [...plan.steps, { id: 'c', operations: [{ op: 'sanitise', a: 0, failure: [[0]] }] }],
    };
    const turns = ledgerOf(propagate(wiped)).map(({ step, surface, turn }) => [step, surface, turn]);
    expect(turns).toEqual([
      [-1, 0, 'certain'],
      [0, 1, 'certain'],
      [0, 2, 'suspect'],
      [1, 1, 'cleared'],
      [1, 3, 'suspect'],
      [2, 0, 'lessened'],
    ]);
  });

  it('has an entry exactly where a surface enters or leaves false and true', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const conditions = propagate(plan);
        const level = plan.surfaces.map(() => 'clean');
        const entries = ledgerOf(conditions);
        const width = plan.surfaces.length;
        for (let at = 0; at < conditions.rows.length; at++) {
          const surface = at % width;
          const node = conditions.rows[at]!;
          const now = node === 0 ? 'clean' : node === 1 ? 'certain' : 'suspect';
          const turned = entries.filter(
            (e) => e.surface === surface && e.step === Math.floor(at / width) - 1,
          );
          expect(turned.length).toBe(now === level[surface] ? 0 : 1);
          level[surface] = now;
        }
      }),
      { numRuns: 300 },
    );
  });
});
