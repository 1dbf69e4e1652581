// An order beside the one that was given: every step with what happened to it, those that are gone, and the reasons that
// belong to each. Alignment is that of comparing two procedures, so that both pages say the same.
import { alignSteps, type Happening, happenedTo, HAPPENINGS } from '../../../compare/align.ts';
import { matchOf } from '../../../compare/match.ts';
import type { ComparedField } from '../../../compare/steps.ts';
import type { Procedure, Step } from '../../../domain/procedure.ts';
import type { Change } from '../../../order/changes.ts';
import type { Choice } from '../../../order/index.ts';

export interface Row {
  readonly what: Happening;
  /** As it is now; as it was where it is gone. */
  readonly step: Step;
  /** As it was, where it is not new. */
  readonly before?: Step;
  /** Number from 1 in the order that was given. */
  readonly was?: number;
  /** Number from 1 in the order found. */
  readonly now?: number;
  /** What is done otherwise; a note is not something that is done. */
  readonly fields: readonly ComparedField[];
  /** It had a note, and has none now. */
  readonly noteLost: boolean;
}

/** Every step of both, in the order of the second; what is gone stands after what it stood behind. */
export function rowsOf(before: Procedure, after: Procedure): readonly Row[] {
  return alignSteps(before, after, matchOf(before, after)).flatMap((row): readonly Row[] => {
    const old = row.a === null ? undefined : before.steps[row.a];
    const step = row.b === null ? old : after.steps[row.b];
    if (!step) return [];
    const changed = row.changed.filter((field) => field !== 'note');
    return [
      {
        what: happenedTo({ ...row, changed }),
        step,
        fields: changed,
        noteLost: row.b !== null && old?.note !== undefined && step.note === undefined,
        ...(old ? { before: old } : {}),
        ...(row.a === null ? {} : { was: row.a + 1 }),
        ...(row.b === null ? {} : { now: row.b + 1 }),
      },
    ];
  });
}

/** What somebody who knows the first order has to learn: one change for each row that is not as it was. */
export function changesOf(rows: readonly Row[]): readonly Change[] {
  return rows.flatMap(({ what, step, before }): readonly Change[] => {
    if (what === 'same') return [];
    const changed = what === 'changed' || what === 'moved-and-changed';
    if (changed) return [{ what: 'changed', step, ...(before ? { was: before } : {}) }];
    return [{ what, step }];
  });
}

/** How many steps each thing happened to; what happened to none is left out. */
export const countsOf = (rows: readonly Row[]): readonly (readonly [Happening, number])[] =>
  HAPPENINGS.map((what) => [what, rows.filter((row) => row.what === what).length] as const).filter(
    ([, count]) => count > 0,
  );

/** Reasons by the id of their step. */
export function reasonsOf(choices: readonly Choice[]): ReadonlyMap<string, readonly Choice[]> {
  const reasons = new Map<string, readonly Choice[]>();
  for (const choice of choices) reasons.set(choice.step, [...(reasons.get(choice.step) ?? []), choice]);
  return reasons;
}
