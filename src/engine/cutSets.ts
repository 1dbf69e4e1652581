// What the minimal cut sets of a condition say, without listing more of them than asked for: how many, of
// which order (number of events), how many hold each event, and the sets themselves, smallest first.

import { EMPTY_SET, type Families, type Family, NO_SET } from './families.ts';
import { reachable } from './walk.ts';

/** A minimal combination: event indices, ascending. */
export type CutSet = readonly number[];

/** Counts of sets: exact at any size, hence bigint. */
export interface CutSetCounts {
  readonly total: bigint;
  /** Index is the order; entry 0 is 1 only for the condition `true`. */
  readonly byOrder: readonly bigint[];
}

/** Number of sets in the family. */
export const countOf = (families: Families, family: Family): bigint => countsOf(families, family).total;

/** Number of sets, and of each order. */
export function countsOf(families: Families, family: Family): CutSetCounts {
  const row = orderRow(families, family);
  const exact = row.reduce((sum, count) => sum + count, 0) <= Number.MAX_SAFE_INTEGER;
  const byOrder = exact ? Array.from(row, BigInt) : bigOrderRow(families, family);
  return { total: byOrder.reduce((sum, count) => sum + count, 0n), byOrder };
}

/** Per event, how many of the sets hold it. */
export function containing(families: Families, family: Family): ReadonlyMap<number, bigint> {
  const nodes = reachable(families, [family]);
  const below = new Map<Family, bigint>([
    [NO_SET, 0n],
    [EMPTY_SET, 1n],
  ]);
  for (const id of nodes) below.set(id, below.get(families.low[id]!)! + below.get(families.high[id]!)!);
  const above = new Map<Family, bigint>([[family, 1n]]);
  const held = new Map<number, bigint>();
  for (const id of nodes.reverse()) {
    const ways = above.get(id)!;
    const [low, high, event] = [families.low[id]!, families.high[id]!, families.variable[id]!];
    held.set(event, (held.get(event) ?? 0n) + ways * below.get(high)!);
    for (const child of [low, high]) above.set(child, (above.get(child) ?? 0n) + ways);
  }
  return held;
}

/** The sets, smallest first; lazily, so take as many as needed. */
export function* smallestFirst(families: Families, family: Family): Generator<CutSet> {
  orderRow(families, family);
  const rows = rowsOf(families);
  const has = (node: Family, order: number): boolean => (rows.get(node)?.[order] ?? 0) > 0;
  function* exactly(node: Family, order: number): Generator<number[]> {
    const chain: Family[] = [];
    for (let at = node; has(at, order); at = families.low[at]!) {
      chain.push(at);
      if (at === EMPTY_SET) break;
    }
    for (const at of chain.reverse()) {
      if (at === EMPTY_SET) yield [];
      else
        for (const set of exactly(families.high[at]!, order - 1)) {
          set.push(families.variable[at]!);
          yield set;
        }
    }
  }
  const orders = rows.get(family)!.length;
  for (let order = 0; order < orders; order++) {
    for (const set of exactly(family, order)) yield set.sort((a, b) => a - b);
  }
}

/** At most `cap` of the smallest sets, of at most `maxOrder` events each. */
export function listOf(families: Families, family: Family, cap: number, maxOrder = Infinity): CutSet[] {
  const sets: CutSet[] = [];
  if (cap <= 0) return sets;
  for (const set of smallestFirst(families, family)) {
    if (set.length > maxOrder) break;
    sets.push(set);
    if (sets.length >= cap) break;
  }
  return sets;
}

/**
 * The events that suffice alone, as `listOf` to order 1 has them, without working the rest out. Among minimal sets no other
 * holds such an event, so its node's high child is the empty set, and all these nodes lie on the chain of low children.
 */
export function singlesOf(families: Families, family: Family): readonly number[] {
  const events: number[] = [];
  for (let at = family; at > EMPTY_SET; at = families.low[at]!) {
    if (families.high[at] === EMPTY_SET) events.push(families.variable[at]!);
  }
  return events.reverse();
}

/** Rows found so far, per set of families: conditions of one procedure share most of their nodes. */
const known = new WeakMap<Families, Map<Family, Float64Array>>();

function rowsOf(families: Families): Map<Family, Float64Array> {
  const found = known.get(families);
  if (found) return found;
  const rows = new Map([
    [NO_SET, new Float64Array(0)],
    [EMPTY_SET, Float64Array.of(1)],
  ]);
  known.set(families, rows);
  return rows;
}

/** Number of sets by order. Exact below 2^53 sets; above, still right about which orders occur. */
const orderRow = (families: Families, family: Family): Float64Array =>
  rowIn(families, rowsOf(families), family);

function rowIn(families: Families, rows: Map<Family, Float64Array>, family: Family): Float64Array {
  const known = rows.get(family);
  if (known) return known;
  const low = rowIn(families, rows, families.low[family]!);
  const high = rowIn(families, rows, families.high[family]!);
  const row = new Float64Array(Math.max(low.length, high.length + 1));
  row.set(low);
  for (let order = 0; order < high.length; order++) row[order + 1]! += high[order]!;
  rows.set(family, row);
  return row;
}

function bigOrderRow(families: Families, family: Family): bigint[] {
  const rows = new Map<Family, bigint[]>([
    [NO_SET, []],
    [EMPTY_SET, [1n]],
  ]);
  for (const id of reachable(families, [family])) {
    const [low, high] = [rows.get(families.low[id]!)!, rows.get(families.high[id]!)!];
    const length = Math.max(low.length, high.length + 1);
    rows.set(
      id,
      Array.from({ length }, (_, order) => (low[order] ?? 0n) + (high[order - 1] ?? 0n)),
    );
  }
  return rows.get(family)!;
}
