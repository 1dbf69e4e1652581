// What is suspect as an exit stands: for its screen only what was made worse by what was recorded, for its picture every surface
// that may be contaminated. Worked out once per exit, step and record.
import { isTangled } from '../check/limits.ts';
import type { Procedure } from '../domain/procedure.ts';
import { knownOf } from './effects.ts';
import { isWorse, type Known, type Suspect, suspectsOf } from './known.ts';
import { type Core, doneOf } from './state.ts';

const SUSPECTS = new WeakMap<Procedure, Map<string, readonly Suspect[] | null>>();

const isRecorded = ({ happened, taints }: Core): boolean => happened.length > 0 || taints.length > 0;

/** Null where the plan is too tangled for an exact answer. */
function suspectsAfter(procedure: Procedure, done: number, told: Known): readonly Suspect[] | null {
  const known = SUSPECTS.get(procedure) ?? new Map<string, readonly Suspect[] | null>();
  SUSPECTS.set(procedure, known);
  const key = JSON.stringify([done, told]);
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = workedOut(procedure, done, told);
  known.set(key, made);
  return made;
}

function workedOut(procedure: Procedure, done: number, known: Known): readonly Suspect[] | null {
  try {
    return suspectsOf(procedure, done, known);
  } catch (error) {
    if (isTangled(error)) return null;
    throw error;
  }
}

/** What was recorded made these worse; nothing before anything was recorded. */
export function worsened(core: Core): readonly Suspect[] | null {
  if (!isRecorded(core)) return [];
  const { procedure } = core.script.setup;
  return suspectsAfter(procedure, suspectStep(core), knownOf(core))?.filter(isWorse) ?? null;
}

/** What the first so many deviations alone mean for the same moment. */
export function worsenedBy(core: Core, deviations: number): readonly Suspect[] | null {
  const first = core.deviations.slice(0, deviations);
  const early: Core = {
    ...core,
    happened: core.happened.filter((event) => first.some(({ slip }) => slip === event)),
    taints: first.flatMap(({ step, surfaces }) => surfaces.map((surface) => ({ step, surface }))),
  };
  if (!isRecorded(early)) return [];
  const { procedure } = core.script.setup;
  return suspectsAfter(procedure, suspectStep(core), knownOf(early))?.filter(isWorse) ?? null;
}

/**
 * All that may be contaminated after so many steps with what was recorded, whatever was seen done as read: in doubt it may.
 * Undefined where nothing was recorded, and where it cannot be worked out: then the plan's own holds.
 */
export function reachedAfter(core: Core, done: number): readonly Suspect[] | undefined {
  if (!isRecorded(core)) return undefined;
  const { happened, taints } = core;
  return suspectsAfter(core.script.setup.procedure, done, { happened, taints, excluded: [] }) ?? undefined;
}

/** Steps whose contacts count: those done, and the one read now once something was recorded of it. */
export function suspectStep(core: Core): number {
  const recorded = core.deviations.map(({ step }) => step + 1);
  return Math.min(core.script.setup.procedure.steps.length, Math.max(doneOf(core), ...recorded));
}
