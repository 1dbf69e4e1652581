// What two versions of a procedure ask of people differently, step by step: what somebody who knows the first has to
// learn for the second.
import type { Procedure, Role, Step } from '../domain/procedure.ts';

export const STEP_CHANGES = ['new', 'gone', 'changed', 'moved'] as const;
export type StepChange = (typeof STEP_CHANGES)[number];

export interface Change {
  readonly what: StepChange;
  /** The step as it is now, or as it was where it is gone. */
  readonly step: Step;
  /** As it was, where it changed. */
  readonly was?: Step;
}

/** What one person has to learn or unlearn. Observers watch every step, so every change is theirs. */
export interface Retraining {
  readonly person: string;
  readonly role: Role;
  readonly changes: readonly Change[];
}

const act = ({ who, action, of, side, items }: Step): string =>
  [who, action, of ?? who, side ?? '', ...items].join(' ');

/** Names and remarks are not what somebody does. */
const content = (step: Step): string =>
  JSON.stringify([
    act(step),
    step.part,
    step.place,
    step.technique,
    step.product,
    step.fixture,
    step.zone,
    step.helper,
  ]);

/** Ids that stay in order: a longest common run of both lists. */
function steady(before: readonly string[], after: readonly string[]): ReadonlySet<string> {
  const lengths = Array.from({ length: before.length + 1 }, () => new Int32Array(after.length + 1));
  const at = (i: number, j: number): number => lengths[i]?.[j] ?? 0;
  for (let i = before.length - 1; i >= 0; i -= 1)
    for (let j = after.length - 1; j >= 0; j -= 1)
      lengths[i]![j] = before[i] === after[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const kept = new Set<string>();
  for (let i = 0, j = 0; i < before.length && j < after.length; ) {
    if (before[i] === after[j]) {
      kept.add(before[i] ?? '');
      i += 1;
      j += 1;
    } else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return kept;
}

/** Per id after: the step it was. By its id, else the next step before that did the same. */
function origins(before: readonly Step[], after: readonly Step[]): ReadonlyMap<string, Step> {
  const byId = new Map(before.map((step) => [step.id, step]));
  const found = new Map(
    after.flatMap((step) => [byId.get(step.id)].flatMap((was) => (was ? [[step.id, was] as const] : []))),
  );
  const left = before.filter((step) => !after.some(({ id }) => id === step.id));
  for (const step of after) {
    const at = found.has(step.id) ? -1 : left.findIndex((was) => act(was) === act(step));
    const [was] = at < 0 ? [] : left.splice(at, 1);
    if (was) found.set(step.id, was);
  }
  return found;
}

/** Changes in the order of the steps after, those that are gone last. */
export function changesBetween(before: Procedure, after: Procedure): readonly Change[] {
  const old = origins(before.steps, after.steps);
  const used = new Set([...old.values()].map(({ id }) => id));
  const kept = steady(
    before.steps.map(({ id }) => id).filter((id) => used.has(id)),
    after.steps.flatMap(({ id }) => old.get(id)?.id ?? []),
  );
  const present = after.steps.flatMap((step): readonly Change[] => {
    const was = old.get(step.id);
    if (!was) return [{ what: 'new', step }];
    if (content(was) !== content(step)) return [{ what: 'changed', step, was }];
    return kept.has(was.id) ? [] : [{ what: 'moved', step }];
  });
  const gone = before.steps.filter(({ id }) => !used.has(id));
  return [...present, ...gone.map((step): Change => ({ what: 'gone', step }))];
}

/** The changes that each person takes part in. */
export function retrainingFor({ people }: Procedure, changes: readonly Change[]): readonly Retraining[] {
  const concerns = (id: string, { step, was }: Change): boolean =>
    [step, ...(was ? [was] : [])].some(({ who, helper, of }) => [who, helper, of].includes(id));
  return people
    .map(({ id, role }) => ({
      person: id,
      role,
      changes: changes.filter((change) => role === 'observer' || concerns(id, change)),
    }))
    .filter(({ changes: own }) => own.length > 0);
}
