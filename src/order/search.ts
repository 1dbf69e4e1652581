// The search: partial orders scene by scene, the ones that need not be followed dropped (front.ts), the ones that cannot end better
// than what is known cut off (bounds.ts). A dive or two first, for something good to compare with; then the whole,
// which proves. At its limits it dives on from the best and says what it left: the least that the rest could have been.
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { type Bounds, leastMeasure } from './bounds.ts';
import { beginningOf, ended, type Held, openPerClass, reach, sweep, type World } from './conditions.ts';
import { corridorTo } from './corridor.ts';
import { type Begun, join, type Link } from './front.ts';
import type { Graph } from './graph.ts';
import type { Arc, Node } from './nodes.ts';

export interface SearchLimits {
  /** Partial orders tried in the pass that proves; the same answer on every machine. */
  readonly tried: number;
  /** When the proof has to stop, and when everything has. */
  readonly late: () => boolean;
  readonly over: () => boolean;
}

export interface Best {
  readonly measure: Measure;
  readonly arcs: readonly Arc[];
}

export interface Searched {
  /** Absent where nothing is better than what was to be beaten. */
  readonly best?: Best;
  /** No admissible order is better. */
  readonly proved: boolean;
  /** The least that any order which was not followed could have ended with; absent where all were. */
  readonly left?: Measure;
  /** Partial orders that were tried, and of these, cut off or dominated. */
  readonly tried: number;
  readonly dropped: number;
}

/** Partial orders kept per move in the dives that only look for something good. */
const DIVES = [4] as const;
/** The same before the whole graph is known. */
const FIRST_DIVES = [1, 4] as const;
/** And in the last of them, where a better order can still lie: as many as this, fewer where little may be tried. */
const WITHIN = 48;
/** How often it is narrowed down at most: again where the dive within found something better to compare with. */
const ROUNDS = 2;
/** Conditions after which the diagram is swept. */
const SWEEP_AT = 1 << 20;

/** Before the first move; nothing where no way leads to an end. */
function startOf(world: World, bounds: Bounds): readonly Begun[] {
  const [first] = bounds.inOrder;
  const ahead = first && bounds.ahead(first);
  if (!ahead) return [];
  const reached = beginningOf(world, bounds.live(first));
  const cost = { seconds: 0, departures: 0 };
  return [{ ...reached, ...cost, link: undefined, least: leastMeasure(world, reached, cost, ahead) }];
}

/** The least that any order by these bounds can end with. */
export const leastAtStart = (world: World, bounds: Bounds): Measure | undefined =>
  startOf(world, bounds)[0]?.least;

/** One search over a graph: what it knows and has left. */
class Course {
  tried = 0;
  dropped = 0;
  left: Measure | undefined;
  best: Best | undefined;
  readonly #world: World;
  #bounds: Bounds;
  readonly #beat: Measure | undefined;

  constructor(world: World, bounds: Bounds, beat: Measure | undefined) {
    this.#world = world;
    this.#bounds = bounds;
    this.#beat = beat;
  }

  /** From here on only these moves are followed. */
  narrow(keeps: (arc: Arc) => boolean): void {
    const bounds = this.#bounds;
    const kept = new Map(bounds.inOrder.map((node) => [node, bounds.arcs(node).filter(keeps)]));
    this.#bounds = { ...bounds, arcs: (node) => kept.get(node) ?? [] };
  }

  /** The measure that a better order has to beat. */
  goal(): Measure | undefined {
    return this.best?.measure ?? this.#beat;
  }

  /** Move by move, only the most promising. */
  dive(from: readonly Begun[], width: number, stop: () => boolean): void {
    let layer = [...from];
    while (layer.length > 0 && !stop()) {
      const next: Begun[] = [];
      for (const begun of layer) {
        if (stop()) return;
        if (nodeOf(this.#bounds, begun).done) this.#end(begun);
        else
          for (const arc of this.#bounds.arcs(nodeOf(this.#bounds, begun)))
            next.push(...this.#follow(begun, arc));
      }
      const hopeful = next.filter(({ least }) => !this.#hopeless(least));
      layer = foremost(this.#bounds, hopeful, width);
      this.#sweep(layer);
    }
  }

  /** Scene by scene, everything that may be best; what is left when it has to stop. */
  prove(stop: () => boolean): readonly Begun[] {
    const fronts = new Map<Node, Begun[]>(
      this.start().map((begun) => [nodeOf(this.#bounds, begun), [begun]]),
    );
    for (const node of this.#bounds.inOrder) {
      const front = fronts.get(node) ?? [];
      const hopeful = front.filter(({ least }) => !this.#hopeless(least));
      this.dropped += front.length - hopeful.length;
      hopeful.sort((a, b) => compareMeasures(a.least, b.least));
      for (const [at, begun] of hopeful.entries()) {
        if (stop()) {
          fronts.set(node, hopeful.slice(at));
          return this.#unfinished(fronts);
        }
        if (node.done) this.#end(begun);
        else this.#spread(fronts, node, begun);
      }
      fronts.delete(node);
      this.#sweep([...fronts.values()].flat());
    }
    return [];
  }

  start(): readonly Begun[] {
    return startOf(this.#world, this.#bounds);
  }

  /** Notes what these could have ended with. */
  leave(begun: readonly Begun[]): void {
    for (const { least } of begun)
      if (!this.#hopeless(least) && (!this.left || compareMeasures(least, this.left) < 0)) this.left = least;
  }

  #unfinished(fronts: ReadonlyMap<Node, readonly Begun[]>): readonly Begun[] {
    const rest = [...fronts.values()].flat();
    return rest
      .filter(({ least }) => !this.#hopeless(least))
      .sort((a, b) => compareMeasures(a.least, b.least));
  }

  #hopeless(least: Measure): boolean {
    const goal = this.goal();
    return goal !== undefined && compareMeasures(least, goal) >= 0;
  }

  #spread(fronts: Map<Node, Begun[]>, node: Node, begun: Begun): void {
    for (const arc of this.#bounds.arcs(node)) {
      const live = this.#bounds.live(arc.to);
      const front = fronts.get(arc.to) ?? [];
      fronts.set(arc.to, front);
      this.tried += 1;
      const followed = this.#follow(begun, arc);
      const kept = followed.filter((one) => join(this.#world, front, one, live));
      if (kept.length === 0) this.dropped += 1;
    }
  }

  /** One move further; nothing where that cannot be best any more. */
  #follow(begun: Begun, arc: Arc): readonly Begun[] {
    const ahead = this.#bounds.ahead(arc.to);
    const flow = this.#bounds.flow(arc);
    if (!ahead || !flow) return [];
    const reached = reach(this.#world, begun, flow);
    const cost = { seconds: begun.seconds + arc.seconds, departures: begun.departures + arc.departures };
    const least = leastMeasure(this.#world, reached, cost, ahead);
    if (this.#hopeless(least)) return [];
    return [{ ...reached, ...cost, link: { arc, before: begun.link }, least }];
  }

  #end(begun: Begun): void {
    const { ever, open } = ended(this.#world, begun);
    const [a = 0, b = 0, c = 0, d = 0] = ever.map((condition) => this.#world.chances.of(condition));
    const measure: Measure = {
      impossible: 0,
      open: openPerClass(this.#world, open),
      chance: [a, b, c, d],
      departures: begun.departures,
      seconds: begun.seconds,
    };
    if (!this.#hopeless(measure)) this.best = { measure, arcs: arcsOf(begun.link) };
  }

  #sweep(held: readonly Begun[]): void {
    if (this.#world.diagram.count <= SWEEP_AT) return;
    sweep(this.#world, [...this.#bounds.held, ...held.flatMap(({ state, ever }): Held[] => [state, ever])]);
  }
}

/** Partial orders kept at one scene by a dive: more of them are mostly the same in another order. */
const ALIKE = 3;

/** The most promising ones, not too many of them at one scene. */
function foremost(bounds: Bounds, all: readonly Begun[], width: number): Begun[] {
  const taken = new Map<Node, number>();
  return all
    .toSorted((a, b) => compareMeasures(a.least, b.least))
    .filter((begun) => {
      const node = nodeOf(bounds, begun);
      const count = (taken.get(node) ?? 0) + 1;
      taken.set(node, count);
      return count <= ALIKE;
    })
    .slice(0, width);
}

/** Where a partial order stands. */
function nodeOf({ inOrder }: Bounds, { link }: Begun): Node {
  const node = link ? link.arc.to : inOrder[0];
  if (!node) throw new RangeError('a graph without a scene');
  return node;
}

function arcsOf(link: Link | undefined): readonly Arc[] {
  const arcs: Arc[] = [];
  for (let one = link; one; one = one.before) arcs.push(one.arc);
  return arcs.reverse();
}

/** Runs it; false where the conditions grew past what can be worked out. */
function untangled(work: () => void): boolean {
  try {
    work();
    return true;
  } catch (error) {
    if (error instanceof Tangled) return false;
    throw error;
  }
}

/** Cuts the search down to where a better order can lie; says below what no order is. */
function narrowed(
  course: Course,
  world: World,
  bounds: Bounds,
  graph: Graph,
  most: number,
  stop: () => boolean,
): Measure | undefined {
  const goal = course.goal();
  const root = leastAtStart(world, bounds);
  if (!goal || !root) return root;
  const weightiest = { open: goal.open, mucosa: goal.chance[0] };
  const { least, keeps } = corridorTo(world, bounds, graph, weightiest, { most, stop });
  course.narrow(keeps);
  const [, ...others] = root.chance;
  return least ? { ...root, open: least.open, chance: [least.mucosa, ...others] } : root;
}

const higher = (a: Measure | undefined, b: Measure): Measure => (a && compareMeasures(a, b) > 0 ? a : b);

/** The best order over a graph that beats `beat`, and whether that is proved. */
export function search(
  world: World,
  bounds: Bounds,
  graph: Graph,
  beat: Measure | undefined,
  { tried: most, late, over }: SearchLimits,
): Searched {
  const course = new Course(world, bounds, beat);
  const shades = Math.min(MOST_SHADES, most * SHADES_EACH);
  let least: Measure | undefined;
  const whole = untangled(() => {
    for (const width of DIVES) course.dive(course.start(), width, late);
    let goal: Measure | undefined;
    for (let round = 0; round < ROUNDS && (round === 0 || course.goal() !== goal); round += 1) {
      goal = course.goal();
      least = narrowed(course, world, bounds, graph, shades, late);
      course.dive(course.start(), Math.min(WITHIN, 4 + (most >> 3)), late);
    }
    const rest = course.prove(() => course.tried > most || late());
    course.dive(rest.slice(0, REST), REST, over);
    course.leave(rest);
  });
  if (!whole) course.leave(course.start());
  const { best, tried, dropped } = course;
  const left = course.left && higher(least, course.left);
  return { ...(best ? { best } : {}), proved: left === undefined, ...(left ? { left } : {}), tried, dropped };
}

/** Shades tried at most where the corridor is looked for: for each partial order that may be tried, and in all. */
const SHADES_EACH = 50;
const MOST_SHADES = 20_000;

/** Some order that beats `beat`, by dives alone: narrow first, then wider while there is time. */
export function dive(
  world: World,
  bounds: Bounds,
  beat: Measure | undefined,
  over: () => boolean,
): Best | undefined {
  const course = new Course(world, bounds, beat);
  untangled(() => {
    for (const width of FIRST_DIVES) course.dive(course.start(), width, over);
  });
  return course.best;
}

/** Partial orders from which it dives on when it has to stop. */
const REST = 2;
