// Published fault trees through the same diagram as the procedures: cut sets, exact chance, both bounds, importance. Structures
// and answers are in the evidence (fault-tree.*), with source and status: the pressure tank from memory of NUREG-0492, chapters
// VIII and XI; the others from the inputs and reports of an open program, re-keyed. Results are held to the digits stated.
//
// Out of scope, because a condition here is monotone (more slips never clean anything) and the diagram has no negation:
//   A xor B xor C (0.404), A B + not A C (0.29), A + not B (0.82), A not B (0.08), A + B not A (0.28), A => (B => C) (0.986).

import { describe, expect, it } from 'vitest';
import { cutSetShares, minCutUpperBound, rareEvent } from '../../src/engine/bounds.ts';
import { chanceOf, importanceOf } from '../../src/engine/chance.ts';
import { containing, countsOf, listOf } from '../../src/engine/cutSets.ts';
import { Diagram, type Node } from '../../src/engine/diagram.ts';
import { Families } from '../../src/engine/families.ts';
import { type EvidenceId, evidence } from '../../src/evidence/index.ts';

type Gate = { readonly or: readonly string[] } | { readonly and: readonly string[] };
interface Tree {
  readonly top: string;
  readonly gates: Readonly<Record<string, Gate>>;
  readonly chances: Readonly<Record<string, number>>;
}
interface Results {
  readonly cutSets: readonly (readonly string[])[];
  readonly exact: number;
  readonly rareEvent: number;
  readonly minCutUpperBound?: number;
}
interface Measures {
  readonly cutSets?: number;
  readonly birnbaum: number;
  readonly fussellVesely: number;
  readonly diagnostic?: number;
  readonly riskAchievement: number;
  readonly riskReduction?: number;
}

const recordValue = (id: string): unknown => evidence(id as EvidenceId).value;

function built(name: string, chances?: (event: string) => number) {
  const tree = recordValue(`fault-tree.${name}.structure`) as Tree;
  const inputs = Object.values(tree.gates).flatMap((gate) => ('or' in gate ? gate.or : gate.and));
  const events = [...new Set(inputs)].filter((input) => !(input in tree.gates));
  const diagram = new Diagram(events.length);
  const known = new Map<string, Node>();
  const nodeOf = (input: string): Node => {
    const gate = tree.gates[input];
    if (gate === undefined) return diagram.event(events.indexOf(input));
    const found = known.get(input);
    if (found !== undefined) return found;
    const node =
      'or' in gate
        ? gate.or.map(nodeOf).reduce((a, b) => diagram.or(a, b))
        : gate.and.map(nodeOf).reduce((a, b) => diagram.and(a, b));
    known.set(input, node);
    return node;
  };
  const top = nodeOf(tree.top);
  const families = new Families(diagram);
  const p = events.map((event) => chances?.(event) ?? tree.chances[event]!);
  return { events, diagram, top, families, family: families.minimal(top), p };
}

/** Agrees to the digits that a number of this many significant digits can state. */
function expectDigits(actual: number, stated: number, digits: number): void {
  expect(Math.abs(actual / stated - 1)).toBeLessThanOrEqual(0.55 * 10 ** (1 - digits));
}

const named = (sets: readonly (readonly string[])[]): string[] =>
  sets.map((set) => [...set].sort().join(' ')).sort();

describe.each([
  ['pressure-tank', 10],
  ['theatre', 10],
  ['two-trains', 10],
  ['ne574', 9],
  ['any-of-three', 10],
  ['ab-or-bc', 10],
  ['two-of-three', 10],
])('%s', (name, digits) => {
  const { events, diagram, top, families, family, p } = built(name);
  const results = recordValue(`fault-tree.${name}.results`) as Results;

  it('has its minimal cut sets', () => {
    const ours = listOf(families, family, Infinity).map((set) => set.map((event) => events[event]!));
    expect(named(ours)).toEqual(named(results.cutSets));
  });

  it('has its exact chance and bounds', () => {
    expectDigits(chanceOf(diagram, top, p), results.exact, digits);
    expectDigits(rareEvent(families, family, p), results.rareEvent, digits);
    if (results.minCutUpperBound) {
      expectDigits(minCutUpperBound(families, family, p), results.minCutUpperBound, digits);
    }
  });
});

it.each(['pressure-tank', 'theatre', 'ne574'])('%s has its importance measures', (name) => {
  const { events, diagram, top, p } = built(name);
  const stated = recordValue(`fault-tree.${name}.importance`) as Record<string, Measures>;
  const ours = new Map(importanceOf(diagram, top, p).map((each) => [events[each.event]!, each]));
  for (const [event, measures] of Object.entries(stated)) {
    const each = ours.get(event)!;
    expectDigits(each.birnbaum, measures.birnbaum, 6);
    expectDigits(each.fussellVesely, measures.fussellVesely, 8);
    expectDigits(each.criticality, measures.fussellVesely, 8);
    expectDigits(each.achievement, measures.riskAchievement, 8);
    if (measures.riskReduction) expectDigits(each.reduction, measures.riskReduction, 8);
  }
});

describe('pressure tank (NUREG-0492, from memory)', () => {
  const { events, families, family, p } = built('pressure-tank');
  it('shares in cut-set form: 14 % tank, 86 % relay', () => {
    const shares = cutSetShares(families, family, p);
    const of = (event: string) => shares.get(events.indexOf(event))!;
    expectDigits(of('T'), 0.142791867, 9);
    expectDigits(of('K2'), 0.856751199, 9);
    expectDigits(of('S'), 4.56933973e-4, 9);
    expectDigits(of('R'), 2.85583733e-4, 9);
    expectDigits(of('K1'), 8.56751199e-5, 9);
    expectDigits(of('S1'), 8.56751199e-5, 9);
  });
});

it('theatre: nothing goes wrong while the mains stand, so their risk reduction worth is infinite', () => {
  const { events, diagram, top, p } = built('theatre');
  const mains = importanceOf(diagram, top, p).find((each) => events[each.event] === 'Mains');
  expect(mains?.reduction).toBe(Infinity);
});

it('lift: twelve single events of 1E-6 (open program, folder input)', () => {
  const diagram = new Diagram(12);
  const top = Array.from({ length: 12 }, (_, at) => diagram.event(at)).reduce((a, b) => diagram.or(a, b));
  const families = new Families(diagram);
  expect(countsOf(families, families.minimal(top)).byOrder).toEqual([0n, 12n]);
  expectDigits(chanceOf(diagram, top, new Float64Array(12).fill(1e-6)), 1.19999e-5, 6);
});

describe('the 25-event tree', () => {
  const { events, diagram, top, families, family, p } = built('chinese', () => 0.02);
  const results = recordValue('fault-tree.chinese.results') as Omit<Results, 'cutSets'> &
    Record<string, never>;

  it('has 392 minimal cut sets of the stated orders', () => {
    const { cutSetCount, cutSetsByOrder } = recordValue('fault-tree.chinese.results') as {
      cutSetCount: number;
      cutSetsByOrder: Record<string, number>;
    };
    const { total, byOrder } = countsOf(families, family);
    expect(total).toBe(BigInt(cutSetCount));
    const stated = byOrder.map((_, order) => BigInt(cutSetsByOrder[order] ?? 0));
    expect(byOrder).toEqual(stated);
  });

  it('has its exact chance and bounds, computed and as printed', () => {
    expectDigits(chanceOf(diagram, top, p), results.exact, 9);
    expectDigits(rareEvent(families, family, p), results.rareEvent, 10);
    expectDigits(minCutUpperBound(families, family, p), results.minCutUpperBound!, 10);
    expectDigits(chanceOf(diagram, top, p), results.printedExact!, 4);
    expectDigits(rareEvent(families, family, p), results.printedRareEvent!, 4);
  });

  it('has them at 1 % too', () => {
    const stated = recordValue('fault-tree.chinese.results-at-one-percent') as Results & { chance: number };
    const one = events.map(() => stated.chance);
    expectDigits(chanceOf(diagram, top, one), stated.exact, 10);
    expectDigits(rareEvent(families, family, one), stated.rareEvent, 10);
    expectDigits(minCutUpperBound(families, family, one), stated.minCutUpperBound!, 10);
  });

  it('has the printed importance of all 25 events, and how many cut sets hold each', () => {
    const stated = recordValue('fault-tree.chinese.importance') as Record<string, Measures>;
    const held = containing(families, family);
    const ours = importanceOf(diagram, top, p);
    expect(ours.length).toBe(25);
    for (const each of ours) {
      const measures = stated[events[each.event]!]!;
      expect(held.get(each.event)).toBe(BigInt(measures.cutSets!));
      expectDigits(each.birnbaum, measures.birnbaum, 6);
      expectDigits(each.criticality, measures.fussellVesely, 6);
      expectDigits(each.diagnostic, measures.diagnostic!, 6);
      expectDigits(each.achievement, measures.riskAchievement, 6);
      expectDigits(each.reduction, measures.riskReduction!, 6);
    }
  });
});
