// The fast engine against the explicit-state reference: at every step, and for `ever`, the condition says
// what the reference finds. Together with the other files of this folder well over 10,000 random plans.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/contacts/plan.ts';
import { Diagram, FALSE, TRUE } from '../../src/engine/diagram.ts';
import {
  conditionAt,
  copyOf,
  everUntil,
  finalOf,
  judgedOf,
  momentAfter,
  propagate,
  stepOnce,
  UNWATCHED,
} from '../../src/engine/propagate.ts';
import { run } from '../../src/engine/reference.ts';
import { evaluate, implies } from '../../src/engine/walk.ts';
import { eventSets, plans, setOf } from './arbitrary.ts';

const indices = (plan: Plan): number[] => plan.surfaces.map((_, at) => at);

describe('conditions', () => {
  it('equal the reference at every step and ever, under any set of slips', () => {
    fc.assert(
      fc.property(plans(), fc.array(eventSets, { minLength: 3, maxLength: 3 }), (plan, sets) => {
        const conditions = propagate(plan);
        for (const bits of sets) {
          const trueEvents = setOf(bits, plan.events.length);
          const reference = run(plan, trueEvents);
          const holds = (node: number) =>
            evaluate(conditions.diagram, node, (event) => trueEvents.has(event));
          reference.after.forEach((row, at) => {
            expect(indices(plan).map((s) => holds(conditionAt(conditions, at - 1, s)))).toEqual(row);
          });
          for (const s of indices(plan).filter((at) => plan.surfaces[at]?.protected)) {
            expect(holds(conditions.ever[s]!)).toBe(reference.ever[s]);
          }
        }
      }),
      { numRuns: 6000 },
    );
  });

  it('are equal exactly when their ids are equal', () => {
    fc.assert(
      fc.property(plans({ surfaces: 6, events: 6, steps: 8 }), (plan) => {
        const conditions = propagate(plan);
        const table = (node: number): string =>
          Array.from({ length: 64 }, (_, bits) =>
            Number(evaluate(conditions.diagram, node, (event) => ((bits >> event) & 1) === 1)),
          ).join('');
        const nodes = [...new Set(conditions.rows)];
        expect(new Set(nodes.map(table)).size).toBe(nodes.length);
      }),
      { numRuns: 1000 },
    );
  });

  it('grow with more slips: what is contaminated stays so', () => {
    fc.assert(
      fc.property(plans(), eventSets, eventSets, (plan, fewer, more) => {
        const less = run(plan, setOf(fewer, plan.events.length));
        const greater = run(plan, setOf(fewer | more, plan.events.length));
        less.after.forEach((row, at) => {
          row.forEach((dirty, s) => expect(!dirty || greater.after[at]?.[s]).toBe(true));
        });
        const { diagram, ever } = propagate(plan);
        const holds = (node: number, bits: number) =>
          evaluate(diagram, node, (event) => ((bits >> event) & 1) === 1);
        for (const node of ever.filter((at) => at !== UNWATCHED)) {
          expect(!holds(node, fewer) || holds(node, fewer | more)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('resuming', () => {
  it('from the moment after any step gives the whole run again', () => {
    fc.assert(
      fc.property(plans(), fc.nat(11), (plan, cut) => {
        const conditions = propagate(plan);
        const from = cut % plan.steps.length;
        const moment = copyOf(momentAfter(conditions, from));
        for (const step of plan.steps.slice(from + 1)) stepOnce(conditions.diagram, moment, step.operations);
        expect([...moment.state]).toEqual(indices(plan).map((s) => finalOf(conditions, s)));
        expect(everUntil(conditions.diagram, moment)).toEqual(conditions.ever);
      }),
      { numRuns: 500 },
    );
  });

  it('leaves the earlier rows alone and sees the other operations', () => {
    const plan = handPlan();
    const conditions = propagate(plan);
    const moment = momentAfter(conditions, 0);
    stepOnce(conditions.diagram, moment, [{ op: 'contact', a: 1, b: 2, when: [] }]);
    expect(moment.state[2]).toBe(moment.state[1]);
    expect(conditionAt(conditions, 0, 2)).toBe(FALSE);
  });
});

/** Glove 0 soiled; step a: glove touches gown 1 on slip 0; step b: gown wiped, fails on slip 1, touches skin 2. */
function handPlan(): Plan {
  const surface = (id: string, watched: boolean, judged: 'ever' | 'end' = 'ever') =>
    ({ id, class: watched ? 'skin' : 'equipment', protected: watched, judged }) as const;
  const event = (key: string) =>
    ({ key, kind: 'slip', what: key, step: 0, prior: 'p', visible: true }) as const;
  return {
    surfaces: [
      surface('glove', false),
      surface('gown', false),
      surface('skin', true),
      surface('shoe', true, 'end'),
    ],
    events: [event('a'), event('b')],
    start: [{ op: 'taint', a: 0, when: [] }],
    steps: [
      {
        id: 'a',
        operations: [
          { op: 'contact', a: 0, b: 1, when: [0] },
          { op: 'contact', a: 0, b: 3, when: [] },
        ],
      },
      {
        id: 'b',
        operations: [
          { op: 'sanitise', a: 1, failure: [[1]] },
          { op: 'contact', a: 1, b: 2, when: [] },
          { op: 'retire', a: 0 },
          { op: 'sanitise', a: 3, failure: [[0], [1]] },
          { op: 'sanitise', a: 2, failure: [] },
        ],
      },
    ],
  };
}

describe('a plan by hand', () => {
  const conditions = propagate(handPlan());
  const { diagram } = conditions;
  it('says which slips it takes', () => {
    expect(conditionAt(conditions, -1, 0)).toBe(TRUE);
    expect(conditionAt(conditions, 0, 1)).toBe(diagram.event(0));
    expect(conditions.ever[2]).toBe(diagram.conjunction([0, 1]));
    expect(finalOf(conditions, 2)).toBe(FALSE);
  });
  it('judges shoes at the end, skin ever, and leaves the rest unwatched', () => {
    expect(judgedOf(conditions, 2)).toBe(diagram.conjunction([0, 1]));
    expect(conditions.ever[3]).toBe(TRUE);
    expect(judgedOf(conditions, 3)).toBe(diagram.or(diagram.event(0), diagram.event(1)));
    expect(conditions.ever[0]).toBe(UNWATCHED);
    expect(judgedOf(conditions, 0)).toBe(FALSE);
  });
  it('lists what changed in each step', () => {
    expect(conditions.changed.map((list) => [...list])).toEqual([[0], [1, 3], [0, 1, 3]]);
  });
});

describe('the diagram', () => {
  it('forgets trial nodes and keeps the numbers of the rest', () => {
    const diagram = new Diagram(40);
    const kept = diagram.or(diagram.conjunction([1, 5, 9]), diagram.event(7));
    const mark = diagram.count;
    for (let i = 0; i < 38; i++) diagram.or(kept, diagram.conjunction([i, i + 1, i + 2 > 39 ? 0 : i + 2]));
    diagram.rollback(mark);
    expect(diagram.count).toBe(mark);
    expect(diagram.or(diagram.event(7), diagram.conjunction([9, 1, 5]))).toBe(kept);
    expect(implies(diagram, diagram.event(7), kept)).toBe(true);
  });
  it('refuses an event it does not know, until extended', () => {
    const diagram = new Diagram(1);
    expect(() => diagram.event(1)).toThrow(RangeError);
    diagram.extend(2);
    expect(diagram.event(1)).toBeGreaterThan(TRUE);
  });
  it('stays right past many growths', () => {
    const diagram = new Diagram(64);
    let pairs = FALSE;
    for (let i = 0; i < 12; i++) pairs = diagram.or(pairs, diagram.conjunction([i, i + 12]));
    expect(diagram.count).toBeGreaterThan(1 << 12);
    expect(evaluate(diagram, pairs, (event) => event === 5 || event === 17)).toBe(true);
    expect(evaluate(diagram, pairs, (event) => event < 12)).toBe(false);
  });
});
