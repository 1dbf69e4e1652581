// Carrying conditions along an arc: the state of every surface, and for each class of protected surfaces the condition under
// which one of them was ever reached. Where routes end in one class they count together, as in the measure.
import type { Operation } from '../contacts/plan.ts';
import { CLASS_GROUPS } from '../check/analysis.ts';
import { eventChances } from '../check/chances.ts';
import { Diagram, FALSE, TRUE } from '../engine/diagram.ts';
import { PairCache } from '../engine/nodeTable.ts';
import { stepOnce, UNWATCHED } from '../engine/propagate.ts';
import { ChanceTable } from '../engine/chanceTable.ts';
import type { Flow } from './flow.ts';
import type { Graph } from './graph.ts';
import type { Setting } from './setting.ts';

/** One condition per class: mucosa, skin, clothes and shoes, clean side. A sweep renumbers them in place. */
export type Classes = [number, number, number, number];

/** What a partial order has come to. */
export interface Reached {
  /** Per surface. */
  readonly state: Int32Array;
  /** Per class: some surface that is judged at any moment was reached. */
  readonly ever: Classes;
  /** Bit per protected surface that is contaminated though nobody slips. */
  readonly open: bigint;
}

export interface World {
  readonly setting: Setting;
  /** These three change together when the diagram is swept. */
  diagram: Diagram;
  chances: ChanceTable;
  /** What was asked before: whether one condition lies below another. */
  implied: PairCache;
  /** Chance of each event. */
  p: Float64Array;
  /** The rest grows together with the surfaces. */
  width: number;
  /** Per surface: its class group where it is judged at any moment, -1 elsewhere. */
  group: Int8Array;
  /** The same for surfaces judged at the end (shoes). */
  endGroup: Int8Array;
  /** Room to work in: UNWATCHED throughout between uses. */
  scratch: Int32Array;
  work: Int32Array;
}

const groupOf = (surfaceClass: string): number =>
  CLASS_GROUPS.findIndex((group) => (group as readonly string[]).includes(surfaceClass));

const eventsIn = (operation: Operation): readonly number[] =>
  operation.op === 'sanitise' ? operation.failure.flat() : 'when' in operation ? operation.when : [];

/** Per event: its place in the diagram, by the last use that any order makes of it (engine/order.ts says why). */
function ranksOf({ setting, nodes }: Graph): Int32Array {
  const { events } = setting.machine.registry;
  const place = new Float64Array(events.length).fill(-Infinity);
  for (const { arcs, rank } of nodes)
    for (const { operations } of arcs)
      for (const event of operations.flatMap(eventsIn)) place[event] = Math.max(place[event]!, rank);
  const order = events.map((_, event) => event).sort((a, b) => place[a]! - place[b]! || a - b);
  const ranks = new Int32Array(events.length);
  order.forEach((event, at) => {
    ranks[event] = at;
  });
  return ranks;
}

type Sized = Pick<World, 'width' | 'group' | 'endGroup' | 'scratch' | 'work'>;

function sized({ machine }: Setting): Sized {
  const { surfaces } = machine.registry;
  const groups = (judged: 'ever' | 'end'): Int8Array =>
    Int8Array.from(surfaces, (one) => (one.protected && one.judged === judged ? groupOf(one.class) : -1));
  return {
    width: surfaces.length,
    group: groups('ever'),
    endGroup: groups('end'),
    scratch: new Int32Array(surfaces.length).fill(UNWATCHED),
    work: new Int32Array(surfaces.length),
  };
}

/** A diagram over all events of the graph. */
export function worldOf(graph: Graph): World {
  const { setting } = graph;
  const { events } = setting.machine.registry;
  const diagram = new Diagram(events.length);
  diagram.order(ranksOf(graph));
  const p = eventChances(events, setting.procedure.policy);
  return {
    setting,
    diagram,
    chances: new ChanceTable(diagram, p),
    p,
    implied: new PairCache(diagram),
    ...sized(setting),
  };
}

/** Takes in surfaces and events that came up since. */
export function widen(world: World): void {
  const { setting, diagram, chances } = world;
  const { surfaces, events } = setting.machine.registry;
  if (events.length > world.p.length) {
    world.p = eventChances(events, setting.procedure.policy);
    chances.know(world.p);
    diagram.extend(events.length);
  }
  if (surfaces.length > world.width) Object.assign(world, sized(setting));
}

/** What is reached once the operations of a move are done. */
export function reach(world: World, from: Reached, { operations, judged, live }: Flow): Reached {
  const { diagram, scratch } = world;
  const { work } = world;
  work.fill(0).set(from.state);
  for (const surface of judged) scratch[surface] = FALSE;
  stepOnce(diagram, { state: work, ever: scratch }, operations);
  const ever: Classes = [...from.ever];
  let { open } = from;
  for (const surface of judged) {
    const was = diagram.or(scratch[surface]!, work[surface]!);
    scratch[surface] = UNWATCHED;
    if (was === TRUE) open |= 1n << BigInt(surface);
    const at = world.group[surface]!;
    ever[at] = diagram.or(ever[at]!, was);
  }
  return { state: only(work, live), ever, open };
}

/** Only these surfaces; what is forgotten counts as clean. */
export function only(state: Int32Array, live: Int32Array): Int32Array {
  const kept = new Int32Array(state.length);
  for (const surface of live) kept[surface] = state[surface]!;
  return kept;
}

/** Before the first move, where these surfaces matter. */
export function beginningOf(world: World, live: Int32Array): Reached {
  const { operations } = world.setting.machine.start;
  const nothing: Reached = {
    state: new Int32Array(world.width),
    ever: [FALSE, FALSE, FALSE, FALSE],
    open: 0n,
  };
  const judged = Int32Array.from(world.group.keys()).filter((surface) => world.group[surface]! >= 0);
  return reach(world, nothing, { operations, owed: 0, judged, live });
}

/** Adds the surfaces that are judged as they leave. */
export function ended(world: World, { state, ever, open }: Reached): Reached {
  const all: Classes = [...ever];
  let stands = open;
  for (let surface = 0; surface < world.width; surface += 1) {
    const at = world.endGroup[surface]!;
    if (at < 0) continue;
    all[at] = world.diagram.or(all[at]!, state[surface] ?? FALSE);
    if (state[surface] === TRUE) stands |= 1n << BigInt(surface);
  }
  return { state, ever: all, open: stands };
}

/** Open routes per class. */
export function openPerClass(world: World, open: bigint): Classes {
  const counts: Classes = [0, 0, 0, 0];
  if (open === 0n) return counts;
  for (let surface = 0; surface < world.width; surface += 1) {
    if ((open & (1n << BigInt(surface))) === 0n) continue;
    const at = Math.max(world.group[surface]!, world.endGroup[surface]!);
    counts[at]! += 1;
  }
  return counts;
}

/** Lists of conditions that are still needed; a sweep renumbers them in place. */
export type Held = Int32Array | number[];

/** Forgets every condition that nobody holds, in a diagram of its own. */
export function sweep(world: World, held: readonly Held[]): void {
  const { diagram } = world;
  const wanted = new Uint8Array(diagram.count);
  for (const list of held) for (const condition of list) wanted[condition] = 1;
  for (let node = diagram.count - 1; node > TRUE; node -= 1) {
    if (wanted[node] === 0) continue;
    wanted[diagram.low[node]!] = 1;
    wanted[diagram.high[node]!] = 1;
  }
  const next = new Diagram(diagram.variables);
  next.order(diagram.ranks);
  next.allow(diagram.enough - diagram.work);
  const moved = new Int32Array(diagram.count);
  moved[TRUE] = TRUE;
  for (let node = 2; node < moved.length; node += 1)
    if (wanted[node] === 1)
      moved[node] = next.choice(
        diagram.variable[node]!,
        moved[diagram.low[node]!]!,
        moved[diagram.high[node]!]!,
      );
  for (const list of held) for (let at = 0; at < list.length; at += 1) list[at] = moved[list[at]!]!;
  world.diagram = next;
  world.chances = new ChanceTable(next, world.p);
  world.implied = new PairCache(next);
}
