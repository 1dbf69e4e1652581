// The order search: from people and what they wear, room, products and policy to the best admissible doffing order under the
// measure of the check, with proof or the gap (docs/decisions/0008-order-search.md says what is admissible and why
// the proof holds).
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { boundsAsNeeded } from './asNeeded.ts';
import { boundsOf } from './bounds.ts';
import { type Choice, choicesOf } from './choices.ts';
import { type Clock, clockFor } from './clock.ts';
import { type World, worldOf } from './conditions.ts';
import { type Difference, firstDifference } from './figures.ts';
import { type Graph, graphOf, growWhole } from './graph.ts';
import { type Best, dive, leastAtStart, type Searched, search } from './search.ts';
import { isEquipment, type Setting, settingOf } from './setting.ts';
import { blocksOf, measureOf, withoutIdle, withSteps } from './written.ts';

export { type Choice, CHOICE_KINDS, OUTCOMES } from './choices.ts';
export { type Difference, FIGURES, type FigureName } from './figures.ts';

export interface OrderOptions {
  /** The procedure's first when absent. */
  readonly agent?: Agent;
  /**
   * Everything ends in this time, as far as it came: the best order so far, or the given one, with its gap. Without it only
   * `tried` counts and the answer is the same on every machine.
   */
  readonly milliseconds?: number;
  /** Partial orders tried before the search goes on narrowly. */
  readonly tried?: number;
  /** Ids of steps kept as they are, beside those that the file pins. */
  readonly pinned?: readonly string[];
  /** Pairs of fresh gloves allowed; what the given steps use, one at least, when absent. */
  readonly gloveChanges?: number;
  /** Departures from practice that the given procedure does not make are admissible too. */
  readonly free?: boolean;
}

export interface OrderResult {
  readonly agent: Agent;
  readonly procedure: Procedure;
  /** Of the steps as given. */
  readonly before: Measure;
  readonly measure: Measure;
  /** Nothing admissible is better than the given steps: `procedure` is the given one. */
  readonly kept: boolean;
  /** No admissible order is better. */
  readonly proved: boolean;
  /** Where not proved: the weightiest figure in which an order that was not followed could be better, and how far. */
  readonly gap?: Difference;
  /** No admissible order is below this. */
  readonly lowerBound: Measure;
  readonly explored: { readonly scenes: number; readonly tried: number; readonly dropped: number };
  /** Whether departures that the given procedure does not make had to be admitted. */
  readonly free: boolean;
  /** As many reasons as there was time for, in the order of the steps. */
  readonly choices: readonly Choice[];
}

const MOST_SCENES = 20_000;
const MOST_TRIED = 60_000;
/** Pairs of conditions worked out for the first dive at most: it carries along what never matters again. */
const FIRST_WORK = 1_000_000;

/** Below every measure. */
const NOTHING: Measure = {
  impossible: 0,
  open: [0, 0, 0, 0],
  chance: [0, 0, 0, 0],
  departures: 0,
  seconds: 0,
};

/** Why there is no order to search; undefined where there is. */
export function whyNot({ kind, people }: Procedure): 'donning' | 'nothing-worn' | undefined {
  if (kind !== 'doffing') return 'donning';
  const worn = people.some(({ role, wears }) => role === 'wearer' && wears.some(isEquipment));
  return worn || people.some(({ wears }) => wears.length > 0) ? undefined : 'nothing-worn';
}

interface Found extends Searched {
  readonly setting: Setting;
  readonly scenes: number;
}

/** Share of all time for the search; the rest is for measuring what was found and for its reasons. */
const SEARCHING = 0.88;
/** Shares of what is left of it: for the first dive, the graph, a dive once more, bounds, the proof and the last dive. */
const SHARES = { first: 0.2, graph: 0.6, again: 0.7, bounds: 0.6, proof: 0.8, dive: 0.9 } as const;

/** Runs it; `none` where the conditions grew past what can be worked out. */
function untangled<Result>(none: Result, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    if (error instanceof Tangled) return none;
    throw error;
  }
}

/** The least that a graph says of all orders; below everything where there is no time to work it out. */
const leastOf = (world: World, graph: Graph, stop: () => boolean): Measure =>
  untangled(NOTHING, () => {
    const bounds = boundsOf(world, graph, stop);
    return (bounds && leastAtStart(world, bounds)) ?? NOTHING;
  });

/** Some good order, before the whole graph is known. */
const firstDive = (graph: Graph, beat: Measure | undefined, stop: () => boolean): Best | undefined =>
  untangled(undefined, () => {
    const world = worldOf(graph);
    world.diagram.allow(FIRST_WORK);
    return dive(world, boundsAsNeeded(world, graph), beat, stop);
  });

/** Some order, the first if there was time for it, and what the known part of the graph says of all. */
function unproved(graph: Graph, first: Best | undefined, beat: Measure | undefined, clock: Clock): Searched {
  const best = first ?? firstDive(graph, beat, clock.part(SHARES.again));
  const left = leastOf(worldOf(graph), graph, clock.part(SHARES.bounds));
  return { ...(best ? { best } : {}), proved: false, left, tried: 0, dropped: 0 };
}

/** What the search over a graph finds and proves, `first` being known; undefined where no order comes to an end. */
function searched(
  graph: Graph,
  first: Best | undefined,
  beat: Measure | undefined,
  tried: number,
  clock: Clock,
): Searched | undefined {
  const whole = growWhole(graph, MOST_SCENES, clock.part(SHARES.graph));
  if (!whole) return unproved(graph, first, beat, clock);
  const world = worldOf(graph);
  const bounds = untangled(undefined, () => boundsOf(world, graph, clock.part(SHARES.bounds)));
  if (!bounds) return unproved(graph, first, beat, clock);
  const [start] = graph.nodes;
  if (!start || !bounds.ahead(start)) return undefined;
  const limits = { tried, late: clock.part(SHARES.proof), over: clock.part(SHARES.dive) };
  const found = search(world, bounds, graph, first?.measure ?? beat, limits);
  return found.best || !first ? found : { ...found, best: first };
}

/** Undefined where no admissible order comes to an end. */
function attempt(
  procedure: Procedure,
  agent: Agent,
  options: OrderOptions,
  beat: Measure | undefined,
  free: boolean,
  clock: Clock,
): Found | undefined {
  const { pinned = [], gloveChanges, tried = MOST_TRIED } = options;
  const setting = settingOf(procedure, {
    agent,
    pinned,
    free,
    ...(gloveChanges === undefined ? {} : { gloveChanges }),
  });
  const graph = graphOf(setting);
  const first = firstDive(graph, beat, clock.part(SHARES.first));
  const found = searched(graph, first, beat, tried, clock);
  return found && { setting, scenes: graph.nodes.length, ...found };
}

const standsOpen = ({ open }: Measure): boolean => open.some((count) => count > 0);

/** With the given departures only; with any where that leads to no end, or leaves a route open that others may close. */
function attempted(
  procedure: Procedure,
  agent: Agent,
  options: OrderOptions,
  beat: Measure | undefined,
  clock: Clock,
): { readonly found: Found | undefined; readonly free: boolean } {
  const strict = options.free ? undefined : attempt(procedure, agent, options, beat, false, clock);
  const enough = strict && !(strict.best && standsOpen(strict.best.measure));
  if (enough || (strict && clock.over())) return { found: strict, free: false };
  const free = attempt(procedure, agent, options, strict?.best?.measure ?? beat, true, clock);
  return strict && !free?.best ? { found: strict, free: false } : { found: free, free: true };
}

function givenMeasure(procedure: Procedure, agent: Agent): Measure {
  try {
    return measureOf(procedure, agent);
  } catch (error) {
    // Steps too many or too tangled to be measured are worse than any that can be.
    if (error instanceof Tangled) return { ...NOTHING, impossible: procedure.steps.length + 1 };
    throw error;
  }
}

/** Whether everybody who is to be undressed is so at the end: an order that leaves things on is none. */
function completes(procedure: Procedure, { machine, subjects }: Setting): boolean {
  let { scene } = machine.start;
  for (const [at, step] of procedure.steps.entries()) scene = machine.perform(scene, step, at).after;
  return subjects.every(
    ({ id }) => scene.bodies[id]?.layers.every(({ item }) => !isEquipment(item)) === true,
  );
}

type Common = Pick<OrderResult, 'agent' | 'before' | 'free' | 'explored'>;

/** Nothing better was found than what was given. */
function asGiven(procedure: Procedure, common: Common, found: Found | undefined): OrderResult {
  const measure = common.before;
  const lowerBound = found?.left ?? measure;
  const gap = found?.proved === false ? firstDifference(lowerBound, measure) : undefined;
  const proof = { proved: gap === undefined, ...(gap ? { gap } : {}) };
  return { ...common, procedure, measure, kept: true, ...proof, lowerBound, choices: [] };
}

function improved(
  procedure: Procedure,
  common: Common,
  { setting, left }: Found,
  best: Best,
  over: () => boolean,
): OrderResult {
  const blocks = blocksOf(setting, best.arcs);
  const written = withSteps(
    procedure,
    blocks.flatMap(({ steps }) => steps),
  );
  const result = withoutIdle(written, common.agent, setting.pinned, over);
  const measure = measureOf(result, common.agent);
  const gap = left && compareMeasures(left, measure) < 0 ? firstDifference(left, measure) : undefined;
  return {
    ...common,
    procedure: result,
    measure,
    kept: false,
    proved: gap === undefined,
    ...(gap ? { gap } : {}),
    lowerBound: gap && left ? left : measure,
    choices: choicesOf(setting, result, blocks, over),
  };
}

/**
 * The best admissible doffing order for what a procedure's people wear. The given steps are the one to beat, so the result is
 * never worse on the measure; chances are 0 to 1, times seconds. Ask `whyNot` first.
 */
export function searchOrder(procedure: Procedure, options: OrderOptions = {}): OrderResult {
  const { milliseconds = Infinity } = options;
  const clock = clockFor(milliseconds);
  const searching = clockFor(milliseconds * SEARCHING);
  const agent = options.agent ?? procedure.agents[0] ?? 'enveloped';
  const before = givenMeasure(procedure, agent);
  const whole = completes(procedure, settingOf(procedure, { agent }));
  const beat = before.impossible === 0 && whole ? before : undefined;
  const { found, free } = attempted(procedure, agent, options, beat, searching);
  const explored = { scenes: found?.scenes ?? 0, tried: found?.tried ?? 0, dropped: found?.dropped ?? 0 };
  const common = { agent, before, free, explored };
  return found?.best
    ? improved(procedure, common, found, found.best, clock.over)
    : asGiven(procedure, common, found);
}
