// The two classical upper bounds of a chance, and Fussell-Vesely in its cut-set form, from the family of
// minimal cut sets (NUREG-0492). The exact chance never exceeds them; they are what a fault-tree report
// prints, so they let others check ours. Sums run over the family's diagram, not over its sets.

import type { Families, Family } from './families.ts';
import { EMPTY_SET } from './families.ts';
import { reachable } from './walk.ts';

const MOST_TERMS = 100_000;

/** Sum of the cut sets' chances; may pass 1, then it says nothing. */
export const rareEvent = (families: Families, family: Family, p: ArrayLike<number>): number =>
  sums(families, reachable(families, [family]), p)[family]!;

/**
 * 1 - product(1 - P(cut set)). As -ln(1 - x) = sum x^k / k, the product is a series of sums of powers, each
 * one pass over the family: no listing, whatever its size.
 */
export function minCutUpperBound(families: Families, family: Family, p: ArrayLike<number>): number {
  const nodes = reachable(families, [family]);
  const likeliest = greatest(families, nodes, p, family);
  if (likeliest >= 1) return 1;
  let exponent = 0;
  const power = Float64Array.from(p);
  for (let k = 1; k <= MOST_TERMS; k++) {
    const sum = sums(families, nodes, power)[family]!;
    exponent += sum / k;
    if ((sum * likeliest) / ((k + 1) * (1 - likeliest)) <= exponent * 1e-16) break;
    for (let event = 0; event < power.length; event++) power[event]! *= p[event]!;
  }
  return -Math.expm1(-exponent);
}

/** Per event: chance of the cut sets that hold it, as a share of all (0 to 1). */
export function cutSetShares(
  families: Families,
  family: Family,
  p: ArrayLike<number>,
): ReadonlyMap<number, number> {
  const nodes = reachable(families, [family]);
  const below = sums(families, nodes, p);
  const above = new Float64Array(below.length);
  const held = new Map<number, number>();
  above[family] = 1;
  for (const id of nodes.reverse()) {
    const [low, high, event] = [families.low[id]!, families.high[id]!, families.variable[id]!];
    const taken = above[id]! * p[event]!;
    held.set(event, (held.get(event) ?? 0) + taken * below[high]!);
    above[low]! += above[id]!;
    above[high]! += taken;
  }
  return new Map([...held].map(([event, sum]) => [event, sum / below[family]!]));
}

/** Per node: the sum over its sets of the product of their events' chances. */
function sums(families: Families, nodes: Int32Array, p: ArrayLike<number>): Float64Array {
  const value = new Float64Array(Math.max(2, (nodes.at(-1) ?? 0) + 1));
  value[EMPTY_SET] = 1;
  for (const id of nodes) {
    value[id] = value[families.low[id]!]! + p[families.variable[id]!]! * value[families.high[id]!]!;
  }
  return value;
}

function greatest(families: Families, nodes: Int32Array, p: ArrayLike<number>, family: Family): number {
  const value = new Float64Array(Math.max(2, (nodes.at(-1) ?? 0) + 1));
  value[EMPTY_SET] = 1;
  for (const id of nodes) {
    const taken = p[families.variable[id]!]! * value[families.high[id]!]!;
    value[id] = Math.max(value[families.low[id]!]!, taken);
  }
  return value[family]!;
}
