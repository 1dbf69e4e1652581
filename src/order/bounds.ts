// What no continuation can avoid, per scene: an admissible bound. Forwards, the conditions that hold on every way to a scene
// (their intersection); from them, what each move adds at least; backwards, what every way to the end adds. Operations are
// monotone, so a real order is never below. The same passes say from which scenes there is an end at all.
import type { Measure } from '../check/finding.ts';
import type { Operation } from '../contacts/plan.ts';
import { FALSE, TRUE } from '../engine/diagram.ts';
import { type Classes, ended, openPerClass, type Reached, touchedBy, type World } from './conditions.ts';
import { both, type Shadows, shadowsOf, stepShadows } from './shadow.ts';
import type { Graph } from './graph.ts';
import type { Arc, Node } from './nodes.ts';

export interface Ahead {
  readonly ever: Classes;
  readonly open: bigint;
  readonly seconds: number;
  readonly departures: number;
  /** Surfaces that some way to the end still touches or judges; others need not be compared. */
  readonly live: Int32Array;
}

export interface Bounds {
  /** Nodes by rank, so that every arc leads further. */
  readonly inOrder: readonly Node[];
  /** Per node; undefined where no way leads to an end. */
  readonly ahead: readonly (Ahead | undefined)[];
  /** Arcs of a node that lead to an end. */
  arcs(node: Node): readonly Arc[];
}

const met = (shadows: Shadows, a: Classes, b: Classes): Classes => [
  both(shadows, a[0], b[0]),
  both(shadows, a[1], b[1]),
  both(shadows, a[2], b[2]),
  both(shadows, a[3], b[3]),
];

const joined = ({ diagram }: World, a: Classes, b: Classes): Classes => [
  diagram.or(a[0], b[0]),
  diagram.or(a[1], b[1]),
  diagram.or(a[2], b[2]),
  diagram.or(a[3], b[3]),
];

/** Nodes from which an end is reached. */
function ending(inOrder: readonly Node[]): ReadonlySet<Node> {
  const good = new Set<Node>();
  for (const node of inOrder.toReversed())
    if (node.done || node.arcs.some(({ to }) => good.has(to))) good.add(node);
  return good;
}

const NOTHING: Classes = [FALSE, FALSE, FALSE, FALSE];

interface Added {
  readonly ever: Classes;
  readonly open: bigint;
}

/** What operations add to each class, and the state they leave, from this state. */
function added(
  world: World,
  shadows: Shadows,
  from: Int32Array,
  operations: readonly Operation[],
): Added & { readonly state: Int32Array } {
  const state = from.slice();
  const ever: Classes = [...NOTHING];
  let open = 0n;
  const note = (surface: number, was: number): void => {
    const at = world.group[surface]!;
    if (at < 0) return;
    if (was === TRUE) open |= 1n << BigInt(surface);
    ever[at] = world.diagram.or(ever[at]!, was);
  };
  stepShadows(shadows, state, note, operations);
  for (const surface of touchedBy(operations)) note(surface, state[surface]!);
  return { ever, open, state };
}

interface Least {
  readonly state: readonly (Int32Array | undefined)[];
  readonly added: ReadonlyMap<Arc, Added>;
}

function meet(shadows: Shadows, known: Int32Array, other: Int32Array): void {
  for (let at = 0; at < known.length; at += 1)
    if (known[at] !== other[at]) known[at] = both(shadows, known[at]!, other[at]!);
}

/** What holds on every way to a scene, node by node, and what each arc adds to that. */
function leastStates(world: World, shadows: Shadows, inOrder: readonly Node[], arcs: Bounds['arcs']): Least {
  const state: Int32Array[] = [];
  const adds = new Map<Arc, Added>();
  const [first] = inOrder;
  const { operations } = world.setting.machine.start;
  if (first) state[first.index] = added(world, shadows, new Int32Array(world.width), operations).state;
  for (const node of inOrder) {
    const from = state[node.index];
    if (!from) continue;
    for (const arc of arcs(node)) {
      const done = added(world, shadows, from, arc.operations);
      adds.set(arc, done);
      const known = state[arc.to.index];
      if (known) meet(shadows, known, done.state);
      else state[arc.to.index] = done.state;
    }
  }
  return { state, added: adds };
}

const indices = (marked: Uint8Array): Int32Array =>
  Int32Array.from([...marked.keys()].filter((at) => marked[at] === 1));

function endAhead(world: World, state: Int32Array): Ahead {
  const { ever, open } = ended(world, { state, ever: NOTHING, open: 0n });
  const live = indices(Uint8Array.from(world.endGroup, (group) => (group < 0 ? 0 : 1)));
  return { ever, open, seconds: 0, departures: 0, live };
}

/** By this arc at least this. */
const throughArc = (world: World, arc: Arc, { ever, open }: Added, then: Ahead): Ahead => ({
  ever: joined(world, ever, then.ever),
  open: open | then.open,
  seconds: arc.seconds + then.seconds,
  departures: arc.departures + then.departures,
  live: then.live,
});

/** Whatever way is taken. */
function leastOf(shadows: Shadows, ways: readonly Ahead[], live: Int32Array): Ahead | undefined {
  const [first, ...others] = ways;
  if (!first) return undefined;
  const least = others.reduce(
    (all, one) => ({
      ever: met(shadows, all.ever, one.ever),
      open: all.open & one.open,
      seconds: Math.min(all.seconds, one.seconds),
      departures: Math.min(all.departures, one.departures),
      live,
    }),
    first,
  );
  return { ...least, live };
}

function liveAt(world: World, arcs: readonly Arc[], ahead: readonly (Ahead | undefined)[]): Int32Array {
  const live = new Uint8Array(world.width);
  for (const arc of arcs) {
    for (const surface of touchedBy(arc.operations)) live[surface] = 1;
    for (const surface of ahead[arc.to.index]?.live ?? []) live[surface] = 1;
  }
  return indices(live);
}

/** Two events: a soiled strap and a reach for the face is the usual unavoidable way to mucosa. */
const SHADOW_ORDER = 2;

/** Both passes over the graph. */
export function boundsOf(world: World, graph: Graph): Bounds {
  const inOrder = graph.nodes.toSorted((a, b) => a.rank - b.rank || a.index - b.index);
  const good = ending(inOrder);
  const kept = new Map(graph.nodes.map((node) => [node, node.arcs.filter(({ to }) => good.has(to))]));
  const arcs = (node: Node): readonly Arc[] => kept.get(node) ?? [];
  const shadows = shadowsOf(world.diagram, SHADOW_ORDER);
  const least = leastStates(world, shadows, inOrder, arcs);
  const ahead: (Ahead | undefined)[] = [];
  for (const node of inOrder.toReversed()) {
    const state = least.state[node.index];
    if (!state || !good.has(node)) continue;
    const ways = arcs(node).flatMap((arc) => {
      const [adds, then] = [least.added.get(arc), ahead[arc.to.index]];
      return adds && then ? [throughArc(world, arc, adds, then)] : [];
    });
    ahead[node.index] = node.done
      ? endAhead(world, state)
      : leastOf(shadows, ways, liveAt(world, arcs(node), ahead));
  }
  return { inOrder, ahead, arcs };
}

/** The least measure that a partial order can end with. */
export function leastMeasure(
  world: World,
  reached: Reached,
  cost: Pick<Measure, 'departures' | 'seconds'>,
  ahead: Ahead,
): Measure {
  const chance = reached.ever.map((condition, at) =>
    world.chances.of(world.diagram.or(condition, ahead.ever[at] ?? FALSE)),
  );
  return {
    impossible: 0,
    open: openPerClass(world, reached.open | ahead.open),
    chance: [chance[0] ?? 0, chance[1] ?? 0, chance[2] ?? 0, chance[3] ?? 0],
    departures: cost.departures + ahead.departures,
    seconds: cost.seconds + ahead.seconds,
  };
}
