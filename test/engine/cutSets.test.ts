// Minimal cut sets against brute force over the reference engine: to order 3 none is missing and none is too many, each is
// sufficient and loses its effect with any event taken away; counts and lists agree with one another.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/contacts/plan.ts';
import { barriersOf, leastEvents } from '../../src/engine/barriers.ts';
import { containing, countOf, countsOf, listOf, singlesOf, smallestFirst } from '../../src/engine/cutSets.ts';
import { Diagram, FALSE, type Node, TRUE } from '../../src/engine/diagram.ts';
import { Families } from '../../src/engine/families.ts';
import { judgedOf, propagate } from '../../src/engine/propagate.ts';
import { run } from '../../src/engine/reference.ts';
import { evaluate, restrict, support, union } from '../../src/engine/walk.ts';
import { eventSets, plans } from './arbitrary.ts';
import { minimalSets } from './bruteForce.ts';

const textOf = (sets: readonly (readonly number[])[]): string[] => sets.map((set) => set.join(' ')).sort();

/** Whether this surface is ever contaminated in the reference run. */
const reaches = (plan: Plan, surface: number) => (set: readonly number[]) =>
  run(plan, new Set(set)).ever[surface] === true;

function watchedOf(plan: Plan): number[] {
  return plan.surfaces.flatMap((surface, at) => (surface.protected ? [at] : []));
}

describe('minimal cut sets', () => {
  it('to order 3 are those of brute force over the reference', () => {
    fc.assert(
      fc.property(plans({ surfaces: 6, events: 9, steps: 8 }), (plan) => {
        const conditions = propagate(plan);
        const families = new Families(conditions.diagram);
        for (const surface of watchedOf(plan).slice(0, 2)) {
          const family = families.minimal(judgedOf(conditions, surface));
          const brute = minimalSets(plan.events.length, 3, reaches(plan, surface));
          expect(textOf(listOf(families, family, Infinity, 3))).toEqual(textOf(brute));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('of one event are those of order 1 in the list', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const conditions = propagate(plan);
        const families = new Families(conditions.diagram);
        for (const surface of watchedOf(plan)) {
          const family = families.minimal(judgedOf(conditions, surface));
          const listed = listOf(families, family, Infinity, 1).filter((set) => set.length === 1);
          expect(singlesOf(families, family)).toEqual(listed.flat());
        }
      }),
      { numRuns: 300 },
    );
  });

  it('of any order are sufficient, and not without any one of their events', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const conditions = propagate(plan);
        const families = new Families(conditions.diagram);
        for (const surface of watchedOf(plan)) {
          const opens = reaches(plan, surface);
          for (const set of listOf(families, families.minimal(judgedOf(conditions, surface)), 30)) {
            expect(opens(set)).toBe(true);
            for (const event of set) expect(opens(set.filter((other) => other !== event))).toBe(false);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('together are the condition again', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const { diagram, ever } = propagate(plan);
        const families = new Families(diagram);
        for (const root of ever.filter((node) => node >= FALSE)) {
          const sets = listOf(families, families.minimal(root), Infinity);
          expect(
            union(
              diagram,
              sets.map((set) => diagram.conjunction(set)),
            ),
          ).toBe(root);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('come smallest first, each once, in ascending events, as many as counted', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const { diagram, ever } = propagate(plan);
        const families = new Families(diagram);
        const root = union(
          diagram,
          [...ever].filter((node) => node >= FALSE),
        );
        const family = families.minimal(root);
        const sets = [...smallestFirst(families, family)];
        const { total, byOrder } = countsOf(families, family);
        expect(new Set(textOf(sets)).size).toBe(sets.length);
        expect(sets.map((set) => set.length)).toEqual(sets.map((set) => set.length).sort((a, b) => a - b));
        expect(sets.every((set) => set.every((event, at) => at === 0 || event > set[at - 1]!))).toBe(true);
        expect(BigInt(sets.length)).toBe(total);
        byOrder.forEach((count, order) => {
          expect(count).toBe(BigInt(sets.filter((set) => set.length === order).length));
        });
        for (const [event, count] of containing(families, family)) {
          expect(count).toBe(BigInt(sets.filter((set) => set.includes(event)).length));
        }
        expect(leastEvents(diagram, [root])[0]).toBe(sets[0]?.length ?? -1);
      }),
      { numRuns: 500 },
    );
  });

  it('of the two constants: none for false, the empty set for true', () => {
    const families = new Families(new Diagram(3));
    expect(listOf(families, families.minimal(FALSE), 9)).toEqual([]);
    expect(listOf(families, families.minimal(TRUE), 9)).toEqual([[]]);
    expect(countsOf(families, families.minimal(TRUE)).byOrder).toEqual([1n]);
    expect(listOf(families, families.minimal(TRUE), 0)).toEqual([]);
  });

  it('are counted exactly far past 2^53 without being listed', () => {
    const [groups, width] = [40, 5];
    const diagram = new Diagram(groups * width);
    const anyOf = (group: number): Node =>
      union(
        diagram,
        Array.from({ length: width }, (_, at) => diagram.event(group * width + at)),
      );
    const all = Array.from({ length: groups }, (_, group) => anyOf(group)).reduce(
      (both, next) => diagram.and(both, next),
      TRUE,
    );
    const families = new Families(diagram);
    const family = families.minimal(all);
    const { total, byOrder } = countsOf(families, family);
    expect(total).toBe(5n ** 40n);
    expect(byOrder).toEqual([...Array.from({ length: groups }, () => 0n), 5n ** 40n]);
    expect(containing(families, family).get(7)).toBe(5n ** 39n);
    expect(listOf(families, family, 3).map((set) => set.length)).toEqual([40, 40, 40]);
  });

  it('stay right after the conditions of a trial were forgotten', () => {
    const diagram = new Diagram(6);
    const kept = diagram.or(diagram.event(0), diagram.conjunction([1, 2]));
    const families = new Families(diagram);
    const mark = diagram.count;
    families.minimal(diagram.and(kept, diagram.event(5)));
    diagram.rollback(mark);
    const other = diagram.and(kept, diagram.event(4));
    expect(textOf(listOf(families, families.minimal(other), 9))).toEqual(['0 4', '1 2 4']);
    expect(countOf(families, families.minimal(kept))).toBe(2n);
  });
});

describe('barriers', () => {
  const kinds = [
    { kind: 'slip' },
    { kind: 'circumstance' },
    { kind: 'slip' },
    { kind: 'circumstance' },
  ] as const;
  it('count slips and circumstances together and show them apart', () => {
    const diagram = new Diagram(4);
    const root = union(diagram, [
      diagram.conjunction([0, 2]),
      diagram.conjunction([0, 1]),
      diagram.conjunction([1, 3]),
    ]);
    const [barriers, open, never] = barriersOf(diagram, [root, TRUE, FALSE], kinds);
    expect(barriers).toEqual({ least: 2, slips: 0, circumstances: 2, leastSlips: 0, leastCircumstances: 0 });
    expect(open).toEqual({ least: 0, slips: 0, circumstances: 0, leastSlips: 0, leastCircumstances: 0 });
    expect(never).toBeNull();
  });

  it('are those of the smallest cut sets', () => {
    fc.assert(
      fc.property(plans(), (plan) => {
        const { diagram, ever } = propagate(plan);
        const families = new Families(diagram);
        const roots = [...ever].filter((node) => node > FALSE);
        barriersOf(diagram, roots, plan.events).forEach((barriers, at) => {
          const sets = listOf(families, families.minimal(roots[at]!), Infinity);
          const slips = sets.map((set) => set.filter((event) => plan.events[event]?.kind === 'slip').length);
          const least = Math.min(...sets.map((set) => set.length));
          const fewest = Math.min(...slips.filter((_, which) => sets[which]?.length === least));
          expect(barriers).toEqual({
            least,
            slips: fewest,
            circumstances: least - fewest,
            leastSlips: Math.min(...slips),
            leastCircumstances: Math.min(...sets.map((set, which) => set.length - slips[which]!)),
          });
        });
      }),
      { numRuns: 500 },
    );
  });
});

describe('what is known', () => {
  it('restricts a condition as if those events were set', () => {
    fc.assert(
      fc.property(plans(), eventSets, eventSets, eventSets, (plan, seen, happened, rest) => {
        const { diagram, ever } = propagate(plan);
        const bit = (bits: number, event: number) => ((bits >> event) & 1) === 1;
        for (const root of ever.filter((node) => node >= FALSE)) {
          const left = restrict(diagram, root, (event) =>
            bit(seen, event) ? bit(happened, event) : undefined,
          );
          expect(support(diagram, left).some((event) => bit(seen, event))).toBe(false);
          const whole = (event: number) => bit(bit(seen, event) ? happened : rest, event);
          expect(evaluate(diagram, left, (event) => bit(rest, event))).toBe(evaluate(diagram, root, whole));
        }
      }),
      { numRuns: 500 },
    );
  });
});
