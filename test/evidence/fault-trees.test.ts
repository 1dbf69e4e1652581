// The re-keyed fault trees give their published answers by brute force over every combination of basic events.
// So a wrong key would show here, and not as a fault of the engine. Sources: NUREG-0492 (from memory) and the stored
// inputs of an open program; the 25-event tree is too large for brute force and is checked by its counts.
import { describe, expect, it } from 'vitest';
import { allEvidence, type EvidenceId, evidence } from '../../src/evidence/index.ts';

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
type Importance = Readonly<
  Record<string, { birnbaum: number; fussellVesely: number; riskAchievement: number }>
>;

const recordValue = (id: string): unknown => evidence(id as EvidenceId).value;

function fails(tree: Tree, node: string, failed: ReadonlySet<string>): boolean {
  const gate = tree.gates[node];
  if (gate === undefined) return failed.has(node);
  return 'or' in gate
    ? gate.or.some((input) => fails(tree, input, failed))
    : gate.and.every((input) => fails(tree, input, failed));
}

function subsets(items: readonly string[]): ReadonlySet<string>[] {
  return Array.from(
    { length: 2 ** items.length },
    (_, bits) => new Set(items.filter((_item, index) => (bits >> index) & 1)),
  );
}

function exactChance(tree: Tree, chances: Readonly<Record<string, number>>): number {
  const events = Object.keys(chances);
  const weight = (failed: ReadonlySet<string>) =>
    events.reduce((product, e) => product * (failed.has(e) ? (chances[e] ?? 0) : 1 - (chances[e] ?? 0)), 1);
  return subsets(events)
    .filter((failed) => fails(tree, tree.top, failed))
    .reduce((sum, failed) => sum + weight(failed), 0);
}

function minimalCutSets(tree: Tree): string[] {
  const cuts = subsets(Object.keys(tree.chances)).filter((failed) => fails(tree, tree.top, failed));
  const within = (inner: ReadonlySet<string>, outer: ReadonlySet<string>) =>
    [...inner].every((e) => outer.has(e));
  const minimal = cuts.filter((cut) => !cuts.some((other) => other.size < cut.size && within(other, cut)));
  return minimal.map(keyOf).toSorted();
}

const keyOf = (cut: Iterable<string>) => [...cut].toSorted().join(' ');
const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);

const small = ['pressure-tank', 'theatre', 'two-trains', 'ne574', 'any-of-three', 'ab-or-bc', 'two-of-three'];

describe.each(small)('%s', (name) => {
  const tree = recordValue(`fault-tree.${name}.structure`) as Tree;
  const results = recordValue(`fault-tree.${name}.results`) as Results;
  const cutChances = results.cutSets.map((cut) => cut.reduce((p, e) => p * (tree.chances[e] ?? 0), 1));

  it('has its minimal cut sets', () => {
    expect(minimalCutSets(tree)).toEqual(results.cutSets.map(keyOf).toSorted());
  });

  it('has its exact chance and bounds', () => {
    expect(relative(exactChance(tree, tree.chances), results.exact)).toBeLessThan(1e-8);
    expect(
      relative(
        cutChances.reduce((sum, p) => sum + p, 0),
        results.rareEvent,
      ),
    ).toBeLessThan(1e-8);
    const bound = 1 - cutChances.reduce((product, p) => product * (1 - p), 1);
    expect(relative(bound, results.minCutUpperBound ?? bound)).toBeLessThan(1e-8);
    expect(results.exact).toBeLessThanOrEqual(bound * (1 + 1e-12));
  });
});

describe.each(['pressure-tank', 'theatre', 'ne574'])('importance in %s', (name) => {
  const tree = recordValue(`fault-tree.${name}.structure`) as Tree;
  const { exact } = recordValue(`fault-tree.${name}.results`) as Results;
  const rows = Object.entries(recordValue(`fault-tree.${name}.importance`) as Importance);

  it.each(rows)('%s', (event, row) => {
    const certain = exactChance(tree, { ...tree.chances, [event]: 1 });
    const never = exactChance(tree, { ...tree.chances, [event]: 0 });
    expect(relative(certain - never, row.birnbaum)).toBeLessThan(1e-6);
    expect(relative(1 - never / exact, row.fussellVesely)).toBeLessThan(1e-6);
    expect(relative(certain / exact, row.riskAchievement)).toBeLessThan(1e-6);
  });
});

describe('the 25-event tree', () => {
  const tree = recordValue('fault-tree.chinese.structure') as Tree;

  it('has 25 events, 36 gates, and nothing left unnamed', () => {
    const inputs = Object.values(tree.gates).flatMap((gate) => ('or' in gate ? gate.or : gate.and));
    const known = new Set([...Object.keys(tree.gates), ...Object.keys(tree.chances)]);
    expect(Object.keys(tree.chances)).toHaveLength(25);
    expect(Object.keys(tree.gates)).toHaveLength(36);
    expect(inputs.filter((input) => !known.has(input))).toEqual([]);
    expect([...known].filter((node) => node !== tree.top && !inputs.includes(node))).toEqual([]);
  });

  it('counts its cut sets by order to the total', () => {
    const { cutSetCount, cutSetsByOrder } = recordValue('fault-tree.chinese.results') as {
      cutSetCount: number;
      cutSetsByOrder: Record<string, number>;
    };
    expect(Object.values(cutSetsByOrder).reduce((sum, n) => sum + n, 0)).toBe(cutSetCount);
  });

  it('lists each event with importance measures that agree with one another', () => {
    const { exact } = recordValue('fault-tree.chinese.results') as { exact: number };
    const rows = Object.values(
      recordValue('fault-tree.chinese.importance') as Record<
        string,
        Importance[string] & { diagnostic: number }
      >,
    );
    expect(rows).toHaveLength(Object.keys(tree.chances).length);
    for (const row of rows) {
      expect(relative((row.birnbaum * 0.02) / exact, row.fussellVesely)).toBeLessThan(1e-4);
      expect(relative(0.02 * row.riskAchievement, row.diagnostic)).toBeLessThan(1e-4);
    }
  });
});

it('every tree with results has its structure', () => {
  const names = allEvidence.flatMap(({ id }) => /^fault-tree\.(.+)\.results$/.exec(id)?.[1] ?? []);
  expect(names.toSorted()).toEqual([...small, 'chinese'].toSorted());
});
