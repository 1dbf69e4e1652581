// Where a better order can still lie. The whole search once more, on shadows and for the weightiest figures only: open routes, and
// the chance of reaching mucosa by combinations of few events. Shadows merge where exact conditions differ by what hardly ever
// happens, so this ends where the exact search would not; and a real order is never below its shadow. What it says is a
// lower bound, and every move by which no order can be as good as one that is known need not be followed.
import type { Measure } from '../check/finding.ts';
import { FALSE, TRUE } from '../engine/diagram.ts';
import type { Bounds } from './bounds.ts';
import { only, openPerClass, type World } from './conditions.ts';
import { type Flow, flowsOf } from './flow.ts';
import { implies } from './front.ts';
import type { Graph } from './graph.ts';
import type { Arc, Node } from './nodes.ts';
import { type Shadows, shadowsOf, stepShadows } from './shadow.ts';

/** The weightiest figures of a measure. */
export interface Weightiest {
  readonly open: Measure['open'];
  readonly mucosa: number;
}

export interface Corridor {
  /** No order is below this; absent where it did not come to an end. */
  readonly least?: Weightiest;
  /** Whether an order by this move can be as good as the goal. */
  readonly keeps: (arc: Arc) => boolean;
  readonly tried: number;
}

/** Mucosa: the first of the classes. */
const MUCOSA = 0;
/** Events in a combination at most: with three it takes several times as long. */
const ORDER = 2;
/** After so many tries it gives up where hardly any was cut off: the graph is too wide for it. */
const PATIENCE = 5000;
const CUT_SHARE = 0.02;

const SAME = 1e-9;

function compare(a: Weightiest, b: Weightiest): number {
  for (const [at, open] of a.open.entries()) if (open !== b.open[at]) return open - (b.open[at] ?? 0);
  return Math.abs(a.mucosa - b.mucosa) > SAME ? a.mucosa - b.mucosa : 0;
}

/** A partial order in shadows. */
interface Shade {
  readonly state: Int32Array;
  readonly mucosa: number;
  readonly open: bigint;
  readonly least: Weightiest;
  /** Where its moves lead, for the way back. */
  readonly on: { readonly arc: Arc; readonly to: Shade }[];
  /** What came later and is no worse. */
  by?: Shade;
}

interface Ground {
  readonly world: World;
  readonly bounds: Bounds;
  readonly shadows: Shadows;
  readonly orders: Uint8Array;
}

/** Combinations count only where they can reach mucosa; elsewhere it is asked whether a route is open. */
function ordersOf(world: World, bounds: Bounds, graph: Graph): Uint8Array {
  const isMucosa = (group: number): number => (group === MUCOSA ? group : -1);
  const { width } = world;
  const judged = { width, group: world.group.map(isMucosa), endGroup: world.endGroup.map(isMucosa) };
  const { live } = flowsOf(judged, bounds.inOrder, bounds.arcs, graph.grown);
  const orders = Uint8Array.from(judged.group, (group) => (group < 0 ? 0 : ORDER));
  for (const list of live) for (const surface of list ?? []) orders[surface] = ORDER;
  return orders;
}

const leastFrom = ({ world, bounds }: Ground, mucosa: number, open: bigint, node: Node): Weightiest => {
  const ahead = bounds.ahead(node);
  const ever = world.diagram.or(mucosa, ahead?.ever[MUCOSA] ?? FALSE);
  return { open: openPerClass(world, open | (ahead?.open ?? 0n)), mucosa: world.chances.of(ever) };
};

type From = Pick<Shade, 'state' | 'mucosa' | 'open'>;

function shaded(ground: Ground, from: From, { operations, judged, live }: Flow, node: Node): Shade {
  const { world, shadows, orders } = ground;
  const { work, group, diagram } = world;
  work.fill(0).set(from.state);
  let { mucosa, open } = from;
  const note = (surface: number, was: number): void => {
    const at = group[surface]!;
    if (at >= 0 && was === TRUE) open |= 1n << BigInt(surface);
    if (at === MUCOSA) mucosa = diagram.or(mucosa, was);
  };
  stepShadows(shadows, work, note, operations, orders);
  for (const surface of judged) note(surface, work[surface]!);
  return { state: only(work, live), mucosa, open, least: leastFrom(ground, mucosa, open, node), on: [] };
}

function dominates(world: World, a: Shade, b: Shade, live: Int32Array): boolean {
  if ((a.open & ~b.open) !== 0n || !implies(world, a.mucosa, b.mucosa)) return false;
  for (const surface of live) if (!implies(world, a.state[surface]!, b.state[surface]!)) return false;
  return true;
}

/** What is known at one node: the shades that need to be followed, and which shade stands for one like it. */
interface Front {
  readonly shades: Shade[];
  readonly known: Map<string, Shade>;
}

const keyOf = ({ state, mucosa, open }: Shade, live: Int32Array): string =>
  `${Array.from(live, (surface) => state[surface]).join(',')}|${mucosa}|${open}`;

/** The shade that stands for this one from here on; itself where none was as good. */
function joined(world: World, { shades, known }: Front, added: Shade, live: Int32Array): Shade {
  const key = keyOf(added, live);
  const same = known.get(key) ?? shades.find((one) => dominates(world, one, added, live));
  known.set(key, same ?? added);
  if (same) return same;
  let kept = 0;
  for (const one of shades) {
    if (dominates(world, added, one, live)) one.by = added;
    else shades[kept++] = one;
  }
  shades.length = kept;
  shades.push(added);
  return added;
}

const lasting = (shade: Shade): Shade => {
  let now = shade;
  while (now.by) now = now.by;
  return now;
};

const EVERYTHING: Corridor = { keeps: () => true, tried: 0 };

class Walk {
  tried = 0;
  cut = 0;
  /** Every shade that was followed, in order. */
  readonly all: { readonly node: Node; readonly shade: Shade }[] = [];
  readonly #fronts = new Map<Node, Front>();
  readonly #ground: Ground;
  readonly #goal: Weightiest;

  constructor(ground: Ground, goal: Weightiest) {
    this.#ground = ground;
    this.#goal = goal;
  }

  at(node: Node): Front {
    const front = this.#fronts.get(node) ?? { shades: [], known: new Map<string, Shade>() };
    this.#fronts.set(node, front);
    return front;
  }

  /** False where it is too wide to be walked. */
  whole(stop: () => boolean): boolean {
    const { bounds } = this.#ground;
    for (const node of bounds.inOrder) {
      for (const shade of this.at(node).shades) {
        if (stop() || (this.tried > PATIENCE && this.cut < CUT_SHARE * this.tried)) return false;
        this.all.push({ node, shade });
        if (!node.done) for (const arc of bounds.arcs(node)) this.#follow(shade, arc);
      }
    }
    return true;
  }

  #follow(shade: Shade, arc: Arc): void {
    const { world, bounds } = this.#ground;
    const flow = bounds.flow(arc);
    if (!flow) return;
    this.tried += 1;
    const next = shaded(this.#ground, shade, flow, arc.to);
    if (compare(next.least, this.#goal) > 0) this.cut += 1;
    else shade.on.push({ arc, to: joined(world, this.at(arc.to), next, flow.live) });
  }
}

/** From the ends back: the least that an order by each shade and by each move comes to. */
function back({ all }: Walk): { readonly least: Weightiest | undefined; readonly kept: ReadonlySet<Arc> } {
  const values = new Map<Shade, Weightiest>();
  const kept = new Set<Arc>();
  for (const { node, shade } of all.toReversed()) {
    let value = node.done ? shade.least : undefined;
    for (const { arc, to } of shade.on) {
      const then = values.get(lasting(to));
      if (!then) continue;
      kept.add(arc);
      if (!value || compare(then, value) < 0) value = then;
    }
    if (value) values.set(shade, value);
  }
  const [first] = all;
  return { least: first && values.get(first.shade), kept };
}

/**
 * The moves by which an order can be as good as `goal` in the weightiest figures; all of them where it has to stop, by `stop`
 * or after `most` tries.
 */
export function corridorTo(
  world: World,
  bounds: Bounds,
  graph: Graph,
  goal: Weightiest,
  limits: { readonly most: number; readonly stop: () => boolean },
): Corridor {
  const [first] = bounds.inOrder;
  if (!first) return EVERYTHING;
  const shadows = shadowsOf(world.diagram, ORDER);
  const ground: Ground = { world, bounds, shadows, orders: ordersOf(world, bounds, graph) };
  const walk = new Walk(ground, goal);
  const { operations } = world.setting.machine.start;
  const judged = Int32Array.from(world.group.keys()).filter((surface) => world.group[surface]! >= 0);
  const start: Flow = { operations, owed: 0, judged, live: bounds.live(first) };
  const nothing: From = { state: new Int32Array(world.width), mucosa: FALSE, open: 0n };
  walk.at(first).shades.push(shaded(ground, nothing, start, first));
  const whole = walk.whole(() => walk.tried > limits.most || limits.stop());
  if (!whole) return { ...EVERYTHING, tried: walk.tried };
  const { least, kept } = back(walk);
  return { ...(least ? { least } : {}), keeps: (arc) => kept.has(arc), tried: walk.tried };
}
