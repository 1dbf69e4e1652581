// The exact chance against its definition, and the identities that every monotone condition keeps (NUREG-0492):
// exact <= min-cut upper bound <= rare event; criticality = Fussell-Vesely; RRW = 1 / (1 - FV); RAW = 1 + birnbaum (1 - q) / P.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutSetShares, minCutUpperBound, rareEvent } from '../../src/engine/bounds.ts';
import { chanceOf, chancesOf, contributionsOf, importanceOf } from '../../src/engine/chance.ts';
import { listOf } from '../../src/engine/cutSets.ts';
import { Diagram, FALSE, TRUE } from '../../src/engine/diagram.ts';
import { Families } from '../../src/engine/families.ts';
import { propagate } from '../../src/engine/propagate.ts';
import { evaluate, union } from '../../src/engine/walk.ts';
import { chancesOf as chances, plans } from './arbitrary.ts';
import { weighedChance } from './bruteForce.ts';

const withChances = plans().chain((plan) => fc.tuple(fc.constant(plan), chances(plan.events.length)));

describe('chance', () => {
  it('is the weighed sum over every set of events', () => {
    fc.assert(
      fc.property(plans({ surfaces: 6, events: 7, steps: 8 }), chances(7), (plan, p) => {
        const { diagram, ever } = propagate(plan);
        const roots = [...new Set(ever)].filter((node) => node >= FALSE);
        const values = chancesOf(diagram, roots, p);
        roots.forEach((root, at) => {
          expect(values[at]).toBeCloseTo(
            weighedChance(p, (isTrue) => evaluate(diagram, root, isTrue)),
            12,
          );
        });
      }),
      { numRuns: 500 },
    );
  });

  it('never exceeds the min-cut upper bound, nor that the rare-event sum', () => {
    fc.assert(
      fc.property(withChances, ([plan, p]) => {
        const { diagram, ever } = propagate(plan);
        const families = new Families(diagram);
        for (const root of new Set(ever.filter((node) => node >= FALSE))) {
          const family = families.minimal(root);
          const [exact, bound] = [chanceOf(diagram, root, p), minCutUpperBound(families, family, p)];
          const products = listOf(families, family, Infinity).map((set) =>
            set.reduce((all, e) => all * p[e]!, 1),
          );
          expect(bound).toBeCloseTo(1 - products.reduce((all, q) => all * (1 - q), 1), 12);
          expect(rareEvent(families, family, p)).toBeCloseTo(
            products.reduce((all, q) => all + q, 0),
            12,
          );
          expect(exact).toBeLessThanOrEqual(bound + 1e-12);
          expect(bound).toBeLessThanOrEqual(rareEvent(families, family, p) + 1e-12);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('grows with every chance', () => {
    fc.assert(
      fc.property(withChances, fc.nat(9), ([plan, p], event) => {
        const { diagram, ever } = propagate(plan);
        const roots = [...ever].filter((node) => node >= FALSE);
        const more = p.map((q, at) => (at === event ? q + (1 - q) / 2 : q));
        const after = chancesOf(diagram, roots, more);
        chancesOf(diagram, roots, p).forEach((value, at) => {
          expect(value).toBeLessThanOrEqual(after[at]! + 1e-15);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('of the constants is 0 and 1', () => {
    expect([...chancesOf(new Diagram(1), [FALSE, TRUE], [0.5])]).toEqual([0, 1]);
  });
});

describe('importance', () => {
  it('keeps the identities of monotone conditions', () => {
    fc.assert(
      fc.property(withChances, ([plan, p]) => {
        const { diagram, ever } = propagate(plan);
        const root = union(
          diagram,
          [...ever].filter((node) => node > TRUE),
        );
        const exact = chanceOf(diagram, root, p);
        for (const each of importanceOf(diagram, root, p)) {
          const q = p[each.event]!;
          expect(each.birnbaum).toBeGreaterThanOrEqual(-1e-15);
          expect(each.criticality).toBeCloseTo(each.fussellVesely, 10);
          expect(each.achievement).toBeCloseTo(1 + (each.birnbaum * (1 - q)) / exact, 8);
          expect(each.diagnostic).toBeCloseTo(q * each.achievement, 10);
          if (each.fussellVesely < 1 - 1e-9) {
            expect(each.reduction * (1 - each.fussellVesely)).toBeCloseTo(1, 6);
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  it('is the same worked out for all events at once', () => {
    fc.assert(
      fc.property(withChances, ([plan, p]) => {
        const { diagram, ever } = propagate(plan);
        for (const root of new Set(ever)) {
          if (root < 0) continue;
          const one = importanceOf(diagram, root, p);
          const all = contributionsOf(diagram, root, p);
          expect(all.map(({ event }) => event)).toEqual(one.map(({ event }) => event));
          all.forEach(({ birnbaum, fussellVesely }, at) => {
            expect(birnbaum).toBeCloseTo(one[at]!.birnbaum, 10);
            expect(fussellVesely).toBeCloseTo(one[at]!.fussellVesely, 8);
          });
        }
      }),
      { numRuns: 300 },
    );
  });

  it('in its cut-set form is the share of the cut sets that hold the event', () => {
    fc.assert(
      fc.property(withChances, ([plan, p]) => {
        const { diagram, ever } = propagate(plan);
        const families = new Families(diagram);
        const family = families.minimal(
          union(
            diagram,
            [...ever].filter((node) => node > TRUE),
          ),
        );
        const sets = listOf(families, family, Infinity);
        const weigh = (some: typeof sets) =>
          some.reduce((sum, set) => sum + set.reduce((all, event) => all * p[event]!, 1), 0);
        for (const [event, share] of cutSetShares(families, family, p)) {
          expect(share).toBeCloseTo(weigh(sets.filter((set) => set.includes(event))) / weigh(sets), 10);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('of what cannot happen is empty', () => {
    const diagram = new Diagram(1);
    expect(importanceOf(diagram, diagram.event(0), [0])).toEqual([]);
    expect(importanceOf(diagram, FALSE, [0.5])).toEqual([]);
  });
});
