// The order of the events changes the size of the diagram, never what it says; and an event stands where its last use is.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/contacts/plan.ts';
import { countsOf } from '../../src/engine/cutSets.ts';
import { chanceOf } from '../../src/engine/chance.ts';
import { Diagram, FALSE } from '../../src/engine/diagram.ts';
import { Families } from '../../src/engine/families.ts';
import { ranksOf } from '../../src/engine/order.ts';
import { propagate } from '../../src/engine/propagate.ts';
import { chancesOf as chances, plans } from './arbitrary.ts';

describe('the order of the events', () => {
  it('does not change chances or cut sets', () => {
    fc.assert(
      fc.property(plans(), chances(10), fc.infiniteStream(fc.nat()), (plan, p, keys) => {
        const order = plan.events
          .map((_, at) => [keys.next().value, at] as const)
          .sort((a, b) => a[0] - b[0]);
        const diagram = new Diagram(plan.events.length);
        diagram.order(Int32Array.from(order, ([, event]) => event));
        const [own, shuffled] = [propagate(plan), propagate(plan, diagram)];
        const [ours, others] = [new Families(own.diagram), new Families(diagram)];
        own.ever.forEach((root, at) => {
          if (root < FALSE) return;
          const other = shuffled.ever[at]!;
          expect(chanceOf(diagram, other, p)).toBeCloseTo(chanceOf(own.diagram, root, p), 12);
          expect(countsOf(others, others.minimal(other))).toEqual(countsOf(ours, ours.minimal(root)));
        });
      }),
      { numRuns: 500 },
    );
  });

  it('puts an event with its last use, and a soiled surface with its first touch', () => {
    const event = (key: string) =>
      ({ key, kind: 'slip', what: key, step: 0, prior: 'p', visible: true }) as const;
    const plan: Plan = {
      surfaces: [0, 1, 2].map((id) => ({ id: `${id}`, class: 'skin', protected: true, judged: 'ever' })),
      events: ['soiled', 'pinhole', 'grip', 'wipe'].map(event),
      start: [
        { op: 'taint', a: 2, when: [0] },
        { op: 'contact', a: 0, b: 1, when: [1] },
      ],
      steps: [
        { id: 'a', operations: [{ op: 'contact', a: 0, b: 1, when: [2] }] },
        { id: 'b', operations: [{ op: 'sanitise', a: 0, failure: [[3]] }] },
        { id: 'c', operations: [{ op: 'contact', a: 1, b: 2, when: [1] }] },
      ],
    };
    expect([...ranksOf(plan)]).toEqual([2, 3, 0, 1]);
  });

  it('cannot be changed once there are nodes', () => {
    const diagram = new Diagram(2);
    diagram.event(0);
    expect(() => diagram.order(Int32Array.of(1, 0))).toThrow('order');
  });
});
