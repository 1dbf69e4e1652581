// Questions that a published claim asks of a procedure: how few slips and circumstances it takes to reach a surface, with
// which of them, and what is contaminated when a step ends. Read off the same analysis as every finding; each answer is
// held to the explicit-state reference engine.
import { type Analysis, analyse } from '../../src/check/analysis.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { leastEvents } from '../../src/engine/barriers.ts';
import { EMPTY_SET, type Families, type Family, NO_SET } from '../../src/engine/families.ts';
import { type CutSet, listOf, smallestFirst } from '../../src/engine/cutSets.ts';
import { conditionAt, judgedOf } from '../../src/engine/propagate.ts';
import { run } from '../../src/engine/reference.ts';
import { reachable, union } from '../../src/engine/walk.ts';

/** Slips and circumstances it takes at least; 0 is contaminated though nobody slips, `none` that nothing reaches it. */
export type Size = number | 'none';

interface Where {
  /** Id of a step: the surface as that step ends, not as it is judged. */
  readonly after?: string;
  /** The smallest minimal combination that holds this event, or any event of this step. */
  readonly with?: string;
}

interface Question {
  readonly analysis: Analysis;
  /** Of several surfaces, the first to be reached. */
  least(surfaces: string | readonly string[], where?: Where): Size;
  /** Keys of the events that alone reach the surface. */
  alone(surface: string): readonly string[];
  /** Whether exactly these events reach the surface, by the reference engine. */
  reaches(surface: string, ...events: readonly string[]): boolean;
}

const size = (least: number): Size => (least < 0 || !Number.isFinite(least) ? 'none' : least);

/** Size of the smallest set of the family that holds an event that matches. */
function smallestWith(families: Families, family: Family, matches: (event: number) => boolean): number {
  const any = new Map<Family, number>([
    [NO_SET, Infinity],
    [EMPTY_SET, 0],
  ]);
  const held = new Map<Family, number>([
    [NO_SET, Infinity],
    [EMPTY_SET, Infinity],
  ]);
  for (const id of reachable(families, [family])) {
    const [low, high] = [families.low[id]!, families.high[id]!];
    any.set(id, Math.min(any.get(low)!, 1 + any.get(high)!));
    const above = matches(families.variable[id]!) ? any : held;
    held.set(id, Math.min(held.get(low)!, 1 + above.get(high)!));
  }
  return held.get(family)!;
}

/** Whether exactly these events reach one of the surfaces, by the explicit-state reference engine. */
function reached(
  { compiled }: Analysis,
  targets: readonly number[],
  step: number | undefined,
  events: CutSet,
): boolean {
  const { ever, after } = run(compiled.plan, new Set(events));
  return targets.some((at) => {
    const watched = step === undefined && compiled.plan.surfaces[at]?.judged === 'ever';
    return (watched ? ever : after[step === undefined ? after.length - 1 : step + 1])?.[at] === true;
  });
}

interface Found {
  readonly family: Family;
  readonly matches: ReadonlySet<number> | undefined;
  readonly found: Size;
  readonly targets: readonly number[];
  readonly step: number | undefined;
}

/** Holds the answer to the reference engine: one such combination reaches a surface, and none of its events is spare. */
function agree(analysis: Analysis, { family, matches, found, targets, step }: Found): void {
  if (found === 'none') return;
  const { families } = analysis;
  for (const set of smallestFirst(families, family)) {
    if (set.length < found || (matches && !set.some((event) => matches.has(event)))) continue;
    const spare = set.filter((event) =>
      reached(
        analysis,
        targets,
        step,
        set.filter((other) => other !== event),
      ),
    );
    if (set.length > found || !reached(analysis, targets, step, set) || spare.length > 0)
      throw new Error(`the reference engine does not agree: ${set.join(' ')}`);
    return;
  }
  throw new Error('no combination of the size that was found');
}

function indexOf({ compiled }: Analysis, surface: string): number {
  const index = compiled.plan.surfaces.findIndex(({ id }) => id === surface);
  if (index < 0) throw new Error(`no such surface: ${surface}`);
  return index;
}

function stepIndex({ compiled }: Analysis, step: string): number {
  const index = compiled.procedure.steps.findIndex(({ id }) => id === step);
  if (index < 0) throw new Error(`no such step: ${step}`);
  return index;
}

function question(procedure: Procedure, agent: Agent): Question {
  const analysis = analyse(procedure, agent);
  const { diagram, families, conditions } = analysis;
  const { plan, problems } = analysis.compiled;
  if (problems.length > 0) {
    const [first] = problems;
    throw new Error(`step ${first?.step} of ${procedure.title} cannot be done: ${first?.code}`);
  }
  const judged = (surface: string): number => judgedOf(conditions, indexOf(analysis, surface));
  const matching = (event: string): ReadonlySet<number> => {
    const found = plan.events.flatMap(({ key }, at) =>
      key === event || (!event.includes(':') && key.startsWith(`${event}:`)) ? [at] : [],
    );
    if (found.length === 0) throw new Error(`no such event: ${event}`);
    return new Set(found);
  };
  const eventOf = (key: string): number => {
    const [event = -1, ...others] = matching(key);
    if (others.length > 0) throw new Error(`more than one event: ${key}`);
    return event;
  };
  return {
    analysis,
    least: (surfaces, { after, with: event } = {}) => {
      const step = after === undefined ? undefined : stepIndex(analysis, after);
      const targets = [surfaces].flat().map((surface) => indexOf(analysis, surface));
      const node = union(
        diagram,
        targets.map((at) =>
          step === undefined ? judgedOf(conditions, at) : conditionAt(conditions, step, at),
        ),
      );
      const family = families.minimal(node);
      const matches = event === undefined ? undefined : matching(event);
      const found = size(
        matches ? smallestWith(families, family, (at) => matches.has(at)) : leastEvents(diagram, [node])[0]!,
      );
      agree(analysis, { family, matches, found, targets, step });
      return found;
    },
    alone: (surface) =>
      listOf(families, families.minimal(judged(surface)), Infinity, 1).flatMap((set) =>
        set.map((event) => plan.events[event]?.key ?? ''),
      ),
    reaches: (surface, ...events) => {
      const index = indexOf(analysis, surface);
      const { ever, after } = run(plan, new Set(events.map(eventOf)));
      const { judged: when } = plan.surfaces[index]!;
      return (when === 'ever' ? ever[index] : after.at(-1)?.[index]) === true;
    },
  };
}

const ASKED = new Map<Procedure, Map<Agent, Question>>();

/** The question to one procedure and one agent; worked out once. Throws where a step cannot be done. */
export function ask(procedure: Procedure, agent: Agent): Question {
  const known = ASKED.get(procedure) ?? new Map<Agent, Question>();
  ASKED.set(procedure, known);
  const found = known.get(agent) ?? question(procedure, agent);
  known.set(agent, found);
  return found;
}

/** The first step that does this, to this item if one is named, after the step `after`. */
export function stepOf(procedure: Procedure, action: Step['action'], item?: string, after?: string): Step {
  const from = after === undefined ? 0 : procedure.steps.findIndex(({ id }) => id === after) + 1;
  const found = procedure.steps
    .slice(from)
    .find(
      (step) =>
        step.action === action && (item === undefined || (step.items as readonly string[]).includes(item)),
    );
  if (!found) throw new Error(`no step to ${action} ${item ?? ''} in ${procedure.title}`);
  return found;
}
