// The search: partial orders scene by scene, the ones that need not be followed dropped (front.ts), the ones that cannot end better
// than what is known cut off (bounds.ts). A narrow pass or two first, for something good to compare with; then the whole,
// which proves. Past its limits it goes on narrowly and says what it left: the least that the dropped could have been.
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { type Bounds, leastMeasure } from './bounds.ts';
import { beginningOf, ended, type Held, openPerClass, reach, sweep, type World } from './conditions.ts';
import { type Begun, join, type Link } from './front.ts';
import type { Arc, Node } from './nodes.ts';

export interface SearchLimits {
  /** Partial orders tried in the pass that proves; the same answer on every machine. */
  readonly tried: number;
  /** Milliseconds in all; a limit by the clock. */
  readonly milliseconds: number;
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

/** Widths of the passes that only look for something good. */
const NARROW = [2, 12] as const;
/** How it goes on past its limits. */
const NARROW_ON = 4;
/** Conditions after which the diagram is swept. */
const SWEEP_AT = 1 << 20;

interface PassOptions {
  readonly best?: Best | undefined;
  readonly beat: Measure | undefined;
  /** Whether it is time to go on narrowly. */
  readonly stop: (tried: number) => boolean;
}

class Pass {
  tried = 0;
  dropped = 0;
  left: Measure | undefined;
  best: Best | undefined;
  readonly #world: World;
  readonly #bounds: Bounds;
  readonly #options: PassOptions;
  readonly #fronts = new Map<Node, Begun[]>();

  constructor(world: World, bounds: Bounds, options: PassOptions) {
    this.#world = world;
    this.#bounds = bounds;
    this.#options = options;
    this.best = options.best;
  }

  /** What an order has to be better than. */
  get #goal(): Measure | undefined {
    return this.best?.measure ?? this.#options.beat;
  }

  #hopeless(least: Measure): boolean {
    const goal = this.#goal;
    return goal !== undefined && compareMeasures(least, goal) >= 0;
  }

  /** Not followed, though it might have been better. */
  #leave(least: Measure): void {
    if (!this.left || compareMeasures(least, this.left) < 0) this.left = least;
  }

  run(width: number): void {
    try {
      this.#open();
      for (const node of this.#bounds.inOrder) this.#visit(node, width);
    } catch (error) {
      if (!(error instanceof Tangled)) throw error;
      for (const front of this.#fronts.values()) for (const { least } of front) this.#leave(least);
    }
    if (this.left && this.#hopeless(this.left)) this.left = undefined;
  }

  #open(): void {
    const [first] = this.#bounds.inOrder;
    const ahead = first && this.#bounds.ahead[first.index];
    if (!first || !ahead) return;
    const reached = beginningOf(this.#world);
    const cost = { seconds: 0, departures: 0 };
    const least = leastMeasure(this.#world, reached, cost, ahead);
    this.#fronts.set(first, [{ ...reached, ...cost, link: undefined, least }]);
  }

  #visit(node: Node, width: number): void {
    const front = this.#fronts.get(node);
    if (!front) return;
    const hopeful = front.filter(({ least }) => !this.#hopeless(least));
    this.dropped += front.length - hopeful.length;
    const sorted = hopeful.sort((a, b) => compareMeasures(a.least, b.least));
    for (const [at, begun] of sorted.entries()) {
      if (at >= width || (at >= NARROW_ON && this.#options.stop(this.tried))) this.#leave(begun.least);
      else if (node.done) this.#end(begun);
      else for (const arc of this.#bounds.arcs(node)) this.#follow(begun, arc);
    }
    this.#fronts.delete(node);
    if (this.#world.diagram.count > SWEEP_AT) this.#sweep();
  }

  #follow(begun: Begun, arc: Arc): void {
    const [world, bounds] = [this.#world, this.#bounds];
    const ahead = bounds.ahead[arc.to.index];
    if (!ahead) return;
    this.tried += 1;
    const reached = reach(world, begun, arc.operations);
    const cost = {
      seconds: begun.seconds + arc.seconds,
      departures: begun.departures + arc.departures,
    };
    const least = leastMeasure(world, reached, cost, ahead);
    const link: Link = { arc, before: begun.link };
    const front = this.#fronts.get(arc.to) ?? [];
    this.#fronts.set(arc.to, front);
    if (this.#hopeless(least) || !join(world, front, { ...reached, ...cost, link, least }, ahead.live))
      this.dropped += 1;
  }

  #end(begun: Begun): void {
    const world = this.#world;
    const { ever, open } = ended(world, begun);
    const [a, b, c, d] = ever.map((condition) => world.chances.of(condition));
    const measure: Measure = {
      impossible: 0,
      open: openPerClass(world, open),
      chance: [a ?? 0, b ?? 0, c ?? 0, d ?? 0],
      departures: begun.departures,
      seconds: begun.seconds,
    };
    if (!this.#hopeless(measure)) this.best = { measure, arcs: arcsOf(begun.link) };
  }

  #sweep(): void {
    const begun = [...this.#fronts.values()].flat();
    const ahead: Held[] = this.#bounds.ahead.flatMap((one) => (one ? [one.ever] : []));
    sweep(this.#world, [...ahead, ...begun.flatMap(({ state, ever }): Held[] => [state, ever])]);
  }
}

function arcsOf(link: Link | undefined): readonly Arc[] {
  const arcs: Arc[] = [];
  for (let one = link; one; one = one.before) arcs.push(one.arc);
  return arcs.reverse();
}

/** The best order by the arcs of the bounds' graph that beats `beat`, and whether that is proved. */
export function search(
  world: World,
  bounds: Bounds,
  beat: Measure | undefined,
  limits: SearchLimits,
): Searched {
  const until = Date.now() + limits.milliseconds;
  const late = (): boolean => Date.now() > until;
  let best: Best | undefined;
  for (const width of NARROW) {
    const pass = new Pass(world, bounds, { best, beat, stop: late });
    pass.run(width);
    best = pass.best;
  }
  const whole = new Pass(world, bounds, { best, beat, stop: (tried) => tried > limits.tried || late() });
  whole.run(Infinity);
  const { left, tried, dropped } = whole;
  return {
    ...(whole.best ? { best: whole.best } : {}),
    proved: left === undefined,
    ...(left ? { left } : {}),
    tried,
    dropped,
  };
}
