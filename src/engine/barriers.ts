// How many things have to go wrong at least: the cheapest true path of a condition, by one bottom-up pass.
// Slips (somebody's) and circumstances (something's) count together, and are shown apart.

import type { BasicEvent } from '../contacts/plan.ts';
import { type Diagram, FALSE, type Node, TRUE } from './diagram.ts';
import { reachable } from './walk.ts';

export interface Barriers {
  /** The least number of events, slips and circumstances together, that opens a route; 0 when it stands open. */
  readonly least: number;
  /** Of the combinations of that size, the one with the fewest slips: how many are slips ... */
  readonly slips: number;
  /** ... and how many are circumstances. */
  readonly circumstances: number;
  /** The least number of slips were every circumstance present: what is left if everything but people is bad. */
  readonly leastSlips: number;
  /** The least number of circumstances were every slip made. */
  readonly leastCircumstances: number;
}

const COUNT = 1 << 16;
const NEVER = 2 ** 31 - 1;

/** Per root: its barriers, or null when nothing opens it (`false`). `events` is the plan's list. */
export function barriersOf(
  diagram: Diagram,
  roots: ArrayLike<Node>,
  events: readonly Pick<BasicEvent, 'kind'>[],
): (Barriers | null)[] {
  const nodes = reachable(diagram, roots);
  const slip = Int32Array.from(events, ({ kind }) => (kind === 'slip' ? 1 : 0));
  const both = lightest(
    diagram,
    nodes,
    slip.map((one) => COUNT + one),
  );
  const slips = lightest(diagram, nodes, slip);
  const circumstances = lightest(
    diagram,
    nodes,
    slip.map((one) => 1 - one),
  );
  return Array.from(roots, (root) =>
    root === FALSE ? null : split(both[root]!, slips[root]!, circumstances[root]!),
  );
}

/** Per root: the least number of events that opens it, -1 when nothing does. */
export function leastEvents(diagram: Diagram, roots: ArrayLike<Node>): Int32Array {
  const ones = new Int32Array(diagram.variables).fill(1);
  const least = lightest(diagram, reachable(diagram, roots), ones);
  return Int32Array.from(roots, (root) => (root === FALSE ? -1 : least[root]!));
}

const split = (both: number, leastSlips: number, leastCircumstances: number): Barriers => ({
  least: both >> 16,
  slips: both & (COUNT - 1),
  circumstances: (both >> 16) - (both & (COUNT - 1)),
  leastSlips,
  leastCircumstances,
});

/** Per node id: the least total weight of a true path's events. */
function lightest(diagram: Diagram, nodes: Int32Array, weight: Int32Array): Int32Array {
  const least = new Int32Array(Math.max(2, (nodes.at(-1) ?? 0) + 1));
  least[FALSE] = NEVER;
  least[TRUE] = 0;
  for (const id of nodes) {
    const without = least[diagram.low[id]!]!;
    const taken = least[diagram.high[id]!]! + weight[diagram.variable[id]!]!;
    least[id] = Math.min(without, taken);
  }
  return least;
}
