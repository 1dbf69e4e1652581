// Edits of the list of steps. Each takes a draft and gives a new one; a step keeps its id wherever it goes.
import { freshId } from '../../../check/edit.ts';
import type { Procedure, Step } from '../../../domain/procedure.ts';

export type NewStep = Omit<Step, 'id'>;
export type Ids = ReadonlySet<string>;

const withSteps = (procedure: Procedure, steps: readonly Step[]): Procedure => ({ ...procedure, steps });

/** Steps with ids of their own, in the procedure's manner. */
function named(taken: readonly Step[], drafts: readonly NewStep[]): readonly Step[] {
  const made: Step[] = [];
  for (const draft of drafts) made.push({ ...draft, id: freshId([...taken, ...made], draft.action) });
  return made;
}

export interface Inserted {
  readonly procedure: Procedure;
  /** Ids of the new steps. */
  readonly ids: readonly string[];
}

/** New steps before the one that is now at `at`. */
export function insertSteps(procedure: Procedure, at: number, drafts: readonly NewStep[]): Inserted {
  const steps = named(procedure.steps, drafts);
  return {
    procedure: withSteps(procedure, procedure.steps.toSpliced(at, 0, ...steps)),
    ids: steps.map(({ id }) => id),
  };
}

/** Without these steps; what was accepted in writing of one of them goes with it. */
export function removeSteps(procedure: Procedure, ids: Ids): Procedure {
  const steps = procedure.steps.filter(({ id }) => !ids.has(id));
  if (steps.length === procedure.steps.length) return procedure;
  const accepted = procedure.accepted.filter(({ step }) => step === undefined || !ids.has(step));
  return {
    ...withSteps(procedure, steps),
    accepted: accepted.length === procedure.accepted.length ? procedure.accepted : accepted,
  };
}

const sameOrder = (a: readonly Step[], b: readonly Step[]): boolean =>
  a.every((step, index) => step === b[index]);

/** These steps, in their order, before or after another one. */
export function moveSteps(
  procedure: Procedure,
  ids: Ids,
  target: string,
  where: 'before' | 'after',
): Procedure {
  const moving = procedure.steps.filter(({ id }) => ids.has(id));
  const at = procedure.steps.findIndex(({ id }) => id === target);
  if (at < 0 || moving.length === 0) return procedure;
  const edge = where === 'before' ? at : at + 1;
  const steps = [
    ...procedure.steps.slice(0, edge).filter(({ id }) => !ids.has(id)),
    ...moving,
    ...procedure.steps.slice(edge).filter(({ id }) => !ids.has(id)),
  ];
  return sameOrder(steps, procedure.steps) ? procedure : withSteps(procedure, steps);
}

/** Each of these one place earlier or later; those at the edge stay, and hold up those behind them. */
export function shiftSteps(procedure: Procedure, ids: Ids, by: -1 | 1): Procedure {
  const steps = by === -1 ? [...procedure.steps] : procedure.steps.toReversed();
  for (const [index, step] of steps.entries()) {
    const before = steps[index - 1];
    if (before && ids.has(step.id) && !ids.has(before.id)) {
      steps[index - 1] = step;
      steps[index] = before;
    }
  }
  const ordered = by === -1 ? steps : steps.reverse();
  return sameOrder(ordered, procedure.steps) ? procedure : withSteps(procedure, ordered);
}

function withoutId({ id: _id, ...rest }: Step): NewStep {
  return rest;
}

/** Copies of these steps, after the last of them. */
export function duplicateSteps(procedure: Procedure, ids: Ids): Inserted {
  const chosen = procedure.steps.filter(({ id }) => ids.has(id));
  const last = procedure.steps.findLastIndex(({ id }) => ids.has(id));
  return insertSteps(procedure, last + 1, chosen.map(withoutId));
}

/** Another step in the place and under the id of this one. */
export function replaceStep(procedure: Procedure, id: string, step: NewStep): Procedure {
  const at = procedure.steps.findIndex((candidate) => candidate.id === id);
  return at < 0 ? procedure : withSteps(procedure, procedure.steps.with(at, { ...step, id }));
}
