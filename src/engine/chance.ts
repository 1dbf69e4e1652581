// The exact chance of a condition by one bottom-up pass (Shannon), events independent, and what each
// event contributes to it: the importance measures of fault-tree analysis (Vesely et al. 1981, NUREG-0492).

import { type Diagram, type Node, TRUE } from './diagram.ts';
import { reachable } from './walk.ts';

/** What one event means for one condition; P is the condition's chance, q the event's. */
export interface Importance {
  readonly event: number;
  /** P(condition | event) - P(condition | not event). */
  readonly birnbaum: number;
  /** Share of P that goes away if the event never happens: 1 - P(condition | not event) / P. */
  readonly fussellVesely: number;
  /** Birnbaum * q / P; for a monotone condition the same as Fussell-Vesely. */
  readonly criticality: number;
  /** Risk achievement worth: P(condition | event) / P. */
  readonly achievement: number;
  /** Risk reduction worth: P / P(condition | not event); infinite when nothing opens it without the event. */
  readonly reduction: number;
  /** P(event | condition): how likely it was this event, given contamination. */
  readonly diagnostic: number;
}

/** Chance of each root. `p` holds one chance per event, 0 to 1. */
export function chancesOf(diagram: Diagram, roots: ArrayLike<Node>, p: ArrayLike<number>): Float64Array {
  const nodes = reachable(diagram, roots);
  const value = pass(diagram, nodes, p);
  return Float64Array.from(roots, (root) => value[root]!);
}

/** Chance of one condition. */
export const chanceOf = (diagram: Diagram, root: Node, p: ArrayLike<number>): number =>
  chancesOf(diagram, [root], p)[0]!;

/** Importance of every event the condition depends on, ascending by event; empty when its chance is 0. */
export function importanceOf(diagram: Diagram, root: Node, p: ArrayLike<number>): Importance[] {
  const nodes = reachable(diagram, [root]);
  const trial = Float64Array.from(p);
  const chance = pass(diagram, nodes, trial)[root]!;
  if (chance === 0) return [];
  const events = [...new Set(Array.from(nodes, (id) => diagram.variable[id]!))].sort((a, b) => a - b);
  return events.map((event) => {
    const [without, given] = [0, 1].map((value) => {
      trial[event] = value;
      return pass(diagram, nodes, trial)[root]!;
    });
    const q = p[event]!;
    trial[event] = q;
    return measures(event, q, chance, without!, given!);
  });
}

/** Birnbaum and Fussell-Vesely importance alone. */
export type Contribution = Pick<Importance, 'event' | 'birnbaum' | 'fussellVesely'>;

/**
 * The same two importances as `importanceOf`, of all events by one pass up and one down: a node gives its event the chance
 * of coming to it times what the event changes there. For conditions of any size.
 */
export function contributionsOf(diagram: Diagram, root: Node, p: ArrayLike<number>): Contribution[] {
  const { variable, low, high } = diagram;
  const nodes = reachable(diagram, [root]);
  const value = pass(diagram, nodes, p);
  const chance = value[root]!;
  if (chance === 0) return [];
  const arriving = new Float64Array(value.length);
  arriving[root] = 1;
  const birnbaum = new Map<number, number>();
  for (let i = nodes.length - 1; i >= 0; i--) {
    const id = nodes[i]!;
    const event = variable[id]!;
    const [here, without, given] = [arriving[id]!, low[id]!, high[id]!];
    birnbaum.set(event, (birnbaum.get(event) ?? 0) + here * (value[given]! - value[without]!));
    arriving[without]! += here * (1 - p[event]!);
    arriving[given]! += here * p[event]!;
  }
  return [...birnbaum]
    .sort(([a], [b]) => a - b)
    .map(([event, each]) => ({ event, birnbaum: each, fussellVesely: (p[event]! * each) / chance }));
}

function measures(event: number, q: number, chance: number, without: number, given: number): Importance {
  const birnbaum = given - without;
  return {
    event,
    birnbaum,
    fussellVesely: 1 - without / chance,
    criticality: (birnbaum * q) / chance,
    achievement: given / chance,
    reduction: chance / without,
    diagnostic: (q * given) / chance,
  };
}

function pass(diagram: Diagram, nodes: Int32Array, p: ArrayLike<number>): Float64Array {
  const { variable, low, high } = diagram;
  const value = new Float64Array(Math.max(2, (nodes.at(-1) ?? 0) + 1));
  value[TRUE] = 1;
  for (let i = 0; i < nodes.length; i++) {
    const id = nodes[i]!;
    const without = value[low[id]!]!;
    value[id] = without + p[variable[id]!]! * (value[high[id]!]! - without);
  }
  return value;
}
