// What is known of an exit so far, and which surfaces are suspect for it. Slips that were recorded are true, visible ones
// of a step that was seen done as read are false, everything else stays open: 'may be contaminated' is what is said of
// it. The conditions are the check's own, with the known events put in; a contact that no slip of the plan covers is
// taken as contamination where the observer says it was.
import { LIMITS } from '../check/limits.ts';
import { ALWAYS, type Operation, type Plan, type SurfaceClass } from '../contacts/plan.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { leastEvents } from '../engine/barriers.ts';
import { Diagram, FALSE, type Node } from '../engine/diagram.ts';
import {
  type Conditions,
  conditionAt,
  everUntil,
  momentAfter,
  propagate,
  UNWATCHED,
} from '../engine/propagate.ts';
import { restrict } from '../engine/walk.ts';
import { compiledFor, eventsAt, eventsFor } from './plans.ts';

/** Contamination that the observer saw where no slip of the plan puts it. */
export interface Taint {
  /** Index of the step at whose end it counts. */
  readonly step: number;
  readonly surface: string;
}

/** Keys of events, and taints. `excluded` was looked for and did not happen. */
export interface Known {
  readonly happened: readonly string[];
  readonly excluded: readonly string[];
  readonly taints: readonly Taint[];
}

export const NOTHING_KNOWN: Known = { happened: [], excluded: [], taints: [] };

export interface Suspect {
  readonly surface: string;
  readonly class: SurfaceClass;
  readonly protected: boolean;
  /** How many more slips or circumstances that nobody saw it would take: 0 is contaminated by what was recorded. */
  readonly needs: number;
  /** The same, had nothing been recorded; null where nothing reached it then. */
  readonly asPlanned: number | null;
}

/** Visible slips of steps that were seen done as read, but for those that happened. */
export function excludedBy(
  procedure: Procedure,
  seen: readonly number[],
  happened: readonly string[],
): readonly string[] {
  return seen
    .flatMap((step) => eventsAt(procedure, step))
    .filter(({ kind, visible, key }) => kind === 'slip' && visible && !happened.includes(key))
    .map(({ key }) => key);
}

/** The plan with the taints put in at the end of their steps. */
function withTaints(plan: Plan, taints: readonly Taint[]): Plan {
  if (taints.length === 0) return plan;
  const numbers = new Map(plan.surfaces.map(({ id }, index) => [id, index]));
  const added = (step: number): readonly Operation[] =>
    taints.flatMap((taint): readonly Operation[] => {
      const surface = numbers.get(taint.surface);
      return taint.step === step && surface !== undefined ? [{ op: 'taint', a: surface, when: ALWAYS }] : [];
    });
  return {
    ...plan,
    start: [...plan.start, ...added(-1)],
    steps: plan.steps.map((step, index) => ({ ...step, operations: [...step.operations, ...added(index)] })),
  };
}

const CONDITIONS = new WeakMap<Plan, Map<string, Conditions>>();

function conditionsOf(plan: Plan, taints: readonly Taint[]): Conditions {
  const known = CONDITIONS.get(plan) ?? new Map<string, Conditions>();
  CONDITIONS.set(plan, known);
  const key = JSON.stringify(taints);
  const found = known.get(key);
  if (found) return found;
  const diagram = new Diagram(plan.events.length);
  diagram.allow(LIMITS.exactWork);
  const made = propagate(withTaints(plan, taints), diagram);
  known.set(key, made);
  return made;
}

/** Per surface: now, and where it is judged by all its past, whether it ever was. */
function nodesAfter(conditions: Conditions, step: number): readonly Node[] {
  const { plan, diagram } = conditions;
  const ever = everUntil(diagram, momentAfter(conditions, step));
  return plan.surfaces.map(({ judged }, surface) =>
    judged === 'ever' && ever[surface] !== UNWATCHED
      ? ever[surface]!
      : conditionAt(conditions, step, surface),
  );
}

/** Per surface the least number of unseen events; -1 where nothing reaches it. */
function needsAfter(plan: Plan, step: number, { happened, excluded, taints }: Known): Int32Array {
  const conditions = conditionsOf(plan, taints);
  const { diagram } = conditions;
  const told = new Map<number, boolean>();
  plan.events.forEach(({ key }, index) => {
    if (happened.includes(key)) told.set(index, true);
    else if (excluded.includes(key)) told.set(index, false);
  });
  const left = nodesAfter(conditions, step).map((node) =>
    restrict(diagram, node, (event) => told.get(event)),
  );
  return leastEvents(diagram, left);
}

const least = (one: number | undefined, other: number): number | undefined =>
  other < 0 ? one : one === undefined ? other : Math.min(one, other);

type Found = Map<string, { surface: Plan['surfaces'][number]; now?: number; planned?: number }>;

function judge(found: Found, plan: Plan, step: number, known: Known): void {
  const now = needsAfter(plan, step, known);
  const planned = needsAfter(plan, step, NOTHING_KNOWN);
  plan.surfaces.forEach((surface, index) => {
    const before = found.get(surface.id);
    const needs = least(before?.now, now[index] ?? FALSE);
    const asPlanned = least(before?.planned, planned[index] ?? FALSE);
    found.set(surface.id, {
      surface,
      ...(needs === undefined ? {} : { now: needs }),
      ...(asPlanned === undefined ? {} : { planned: asPlanned }),
    });
  });
}

/**
 * Surfaces that may be contaminated once `done` steps were done, against whichever agent is worse, the surest first. A
 * surface that is not among them is one that nothing known or unknown reaches; it is never called clean. `agents` narrows
 * it down to some. Throws `Tangled` where the procedure is too tangled for an exact answer.
 */
export function suspectsOf(
  procedure: Procedure,
  done: number,
  known: Known,
  agents: readonly Agent[] = procedure.agents,
): readonly Suspect[] {
  const found: Found = new Map();
  for (const { plan, agent } of compiledFor(procedure))
    if (agents.includes(agent)) judge(found, plan, done - 1, known);
  return [...found.values()]
    .flatMap(({ surface, now, planned }): readonly Suspect[] =>
      now === undefined
        ? []
        : [
            {
              surface: surface.id,
              class: surface.class,
              protected: surface.protected,
              needs: now,
              asPlanned: planned ?? null,
            },
          ],
    )
    .sort((a, b) => a.needs - b.needs);
}

/** Those that what was recorded made worse. */
export const isWorse = ({ needs, asPlanned }: Suspect): boolean => asPlanned === null || needs < asPlanned;

/** Whether a key names an event of the procedure. */
export const isEvent = (procedure: Procedure, key: string): boolean => eventsFor(procedure).has(key);
