// What no continuation can avoid, per scene: an admissible bound. Forwards, the conditions that hold on every way to a scene
// (their intersection); from them, what each move adds at least; backwards, what every way to the end adds. Operations are
// monotone, so a real order is never below. The same passes say from which scenes there is an end at all.
import type { Measure } from '../check/finding.ts';
import { FALSE, TRUE } from '../engine/diagram.ts';
import {
  type Classes,
  ended,
  type Held,
  only,
  openPerClass,
  type Reached,
  type World,
} from './conditions.ts';
import type { Operation } from '../contacts/plan.ts';
import { type Flow, type Flows, flowsOf, owedOf } from './flow.ts';
import { both, type Shadows, shadowsOf, stepShadows } from './shadow.ts';
import type { Graph } from './graph.ts';
import type { Arc, Node } from './nodes.ts';

export interface Ahead {
  readonly ever: Classes;
  readonly open: bigint;
  readonly seconds: number;
  readonly departures: number;
}

export interface Bounds {
  /** Nodes by rank, so that every arc leads further. */
  readonly inOrder: readonly Node[];
  /** Undefined where no way leads to an end. */
  readonly ahead: (node: Node) => Ahead | undefined;
  /** Arcs of a node that lead to an end. */
  readonly arcs: (node: Node) => readonly Arc[];
  /** Undefined for an arc that does not. */
  readonly flow: (arc: Arc) => Flow | undefined;
  /** Surfaces that matter at a node. */
  readonly live: (node: Node) => Int32Array;
  /** Conditions that must survive a sweep. */
  readonly held: readonly Held[];
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

/** Nodes from which an end is reached, as far as is known. */
function ending(inOrder: readonly Node[], { grown }: Graph): ReadonlySet<Node> {
  const good = new Set<Node>();
  for (const node of inOrder.toReversed())
    if (node.done || !grown.has(node) || node.arcs.some(({ to }) => good.has(to))) good.add(node);
  return good;
}

const NOTHING: Classes = [FALSE, FALSE, FALSE, FALSE];

interface Added {
  readonly ever: Classes;
  readonly open: bigint;
}

/** What holds on every way to a scene. */
interface Standing {
  readonly state: Int32Array;
  /**
   * The same once the hygiene that is owed there is done without fault. Ways on which something else is dirty meet before
   * it in less: what the hands left on a dispenser is told only after it.
   */
  readonly rubbed: Int32Array;
}

/** Hygiene without fault. */
function rubbed(shadows: Shadows, state: Int32Array, hygiene: readonly Operation[]): Int32Array {
  const after = state.slice();
  const perfect = hygiene.map((one): Operation => (one.op === 'sanitise' ? { op: 'fresh', a: one.a } : one));
  stepShadows(shadows, after, () => {}, perfect);
  return after;
}

function join({ diagram }: World, state: Int32Array, other: Int32Array): void {
  for (let at = 0; at < state.length; at += 1) state[at] = diagram.or(state[at]!, other[at]!);
}

/** What a move adds to each class, and the state it leaves, from where it stands. */
function added(
  world: World,
  shadows: Shadows,
  from: Standing,
  { operations, owed, judged, live }: Flow,
): Added & { readonly state: Int32Array } {
  const { work } = world;
  work.set(from.state);
  const ever: Classes = [...NOTHING];
  let open = 0n;
  const note = (surface: number, was: number): void => {
    const at = world.group[surface]!;
    if (at < 0) return;
    if (was === TRUE) open |= 1n << BigInt(surface);
    ever[at] = world.diagram.or(ever[at]!, was);
  };
  stepShadows(shadows, work, note, operations.slice(0, owed));
  if (owed > 0) join(world, work, from.rubbed);
  stepShadows(shadows, work, note, operations.slice(owed));
  for (const surface of judged) note(surface, work[surface]!);
  return { ever, open, state: only(work, live) };
}

interface Least {
  readonly state: readonly (Int32Array | undefined)[];
  readonly added: ReadonlyMap<Arc, Added>;
}

function meet(shadows: Shadows, known: Int32Array, other: Int32Array, live: Int32Array): void {
  for (const at of live) if (known[at] !== other[at]) known[at] = both(shadows, known[at]!, other[at]!);
}

interface Ways {
  readonly inOrder: readonly Node[];
  readonly arcs: (node: Node) => readonly Arc[];
  readonly flows: Flows;
}

/** What holds on every way to a scene, node by node, and what each arc adds to that; undefined where it had to stop. */
function leastStates(
  world: World,
  shadows: Shadows,
  { inOrder, arcs, flows }: Ways,
  stop: () => boolean,
): Least | undefined {
  const standing: Standing[] = [];
  const adds = new Map<Arc, Added>();
  const arrive = (node: Node, state: Int32Array): void => {
    const [next] = arcs(node);
    const clean = next ? rubbed(shadows, state, owedOf(next)) : state.slice();
    const known = standing[node.index];
    const live = flows.live[node.index] ?? new Int32Array();
    if (!known) standing[node.index] = { state, rubbed: only(clean, live) };
    else {
      meet(shadows, known.state, state, live);
      meet(shadows, known.rubbed, clean, live);
    }
  };
  const [first] = inOrder;
  if (first) arrive(first, atStart(world, shadows, flows.live[first.index] ?? new Int32Array()));
  for (const node of inOrder) {
    const from = standing[node.index];
    if (!from) continue;
    if (stop()) return undefined;
    for (const arc of arcs(node)) {
      const flow = flows.of.get(arc);
      if (!flow) continue;
      const { state, ...more } = added(world, shadows, from, flow);
      adds.set(arc, more);
      arrive(arc.to, state);
    }
  }
  return { state: standing.map(({ state }) => state), added: adds };
}

function atStart(world: World, shadows: Shadows, live: Int32Array): Int32Array {
  const nothing = new Int32Array(world.width);
  const { operations } = world.setting.machine.start;
  const start: Flow = { operations, owed: 0, judged: new Int32Array(), live };
  return added(world, shadows, { state: nothing, rubbed: nothing }, start).state;
}

function endAhead(world: World, state: Int32Array): Ahead {
  const { ever, open } = ended(world, { state, ever: NOTHING, open: 0n });
  return { ever, open, seconds: 0, departures: 0 };
}

/** By this arc at least this. */
const throughArc = (world: World, arc: Arc, { ever, open }: Added, then: Ahead): Ahead => ({
  ever: joined(world, ever, then.ever),
  open: open | then.open,
  seconds: arc.seconds + then.seconds,
  departures: arc.departures + then.departures,
});

/** Whatever way is taken. */
function leastOf(shadows: Shadows, ways: readonly Ahead[]): Ahead | undefined {
  const [first, ...others] = ways;
  return (
    first &&
    others.reduce(
      (all, one) => ({
        ever: met(shadows, all.ever, one.ever),
        open: all.open & one.open,
        seconds: Math.min(all.seconds, one.seconds),
        departures: Math.min(all.departures, one.departures),
      }),
      first,
    )
  );
}

/** Two events: a soiled strap and a reach for the face is the usual unavoidable way to mucosa. */
const SHADOW_ORDER = 2;

const UNKNOWN: Ahead = { ever: NOTHING, open: 0n, seconds: 0, departures: 0 };

/** Both passes over the graph; what follows a node that was not grown may be nothing. Undefined where it had to stop. */
export function boundsOf(world: World, graph: Graph, stop: () => boolean = () => false): Bounds | undefined {
  const inOrder = graph.nodes.toSorted((a, b) => a.rank - b.rank || a.index - b.index);
  const good = ending(inOrder, graph);
  const kept = new Map(graph.nodes.map((node) => [node, node.arcs.filter(({ to }) => good.has(to))]));
  const arcs = (node: Node): readonly Arc[] => kept.get(node) ?? [];
  const shadows = shadowsOf(world.diagram, SHADOW_ORDER);
  const flows = flowsOf(world, inOrder, arcs, graph.grown);
  const least = leastStates(world, shadows, { inOrder, arcs, flows }, stop);
  if (!least) return undefined;
  const ahead: (Ahead | undefined)[] = [];
  for (const node of inOrder.toReversed()) {
    const state = least.state[node.index];
    if (!state || !good.has(node)) continue;
    const ways = arcs(node).flatMap((arc) => {
      const [adds, then] = [least.added.get(arc), ahead[arc.to.index]];
      return adds && then ? [throughArc(world, arc, adds, then)] : [];
    });
    if (node.done) ahead[node.index] = endAhead(world, state);
    else ahead[node.index] = graph.grown.has(node) ? leastOf(shadows, ways) : UNKNOWN;
  }
  return {
    inOrder,
    arcs,
    ahead: ({ index }) => ahead[index],
    flow: (arc) => flows.of.get(arc),
    live: ({ index }) => flows.live[index] ?? new Int32Array(),
    held: ahead.flatMap((one) => (one ? [one.ever] : [])),
  };
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
