// Edits of a procedure: what a mend proposes and what a variant changes. Each makes a new list of steps; none
// changes the one it is given.
import { numberedName } from '../domain/lengths.ts';
import type { Procedure, Step } from '../domain/procedure.ts';

export type Edit =
  /** These steps go in before the step that is now at `at`. */
  | { readonly do: 'insert'; readonly at: number; readonly steps: readonly Step[] }
  | { readonly do: 'remove'; readonly at: number }
  /** The step at `from` is taken out and stands at `to` afterwards. */
  | { readonly do: 'move'; readonly from: number; readonly to: number }
  | { readonly do: 'replace'; readonly at: number; readonly step: Step };

/** The steps after the edit. */
export function edited(steps: readonly Step[], edit: Edit): readonly Step[] {
  if (edit.do === 'insert') return steps.toSpliced(edit.at, 0, ...edit.steps);
  if (edit.do === 'remove') return steps.toSpliced(edit.at, 1);
  if (edit.do === 'replace') return steps.with(edit.at, edit.step);
  const step = steps[edit.from];
  return step ? steps.toSpliced(edit.from, 1).toSpliced(edit.to, 0, step) : steps;
}

export const applyEdit = (procedure: Procedure, edit: Edit): Procedure => ({
  ...procedure,
  steps: edited(procedure.steps, edit),
});

/** Index of the first step that differs. */
export function firstChanged(edit: Edit): number {
  return edit.do === 'move' ? Math.min(edit.from, edit.to) : edit.at;
}

/** A step id not in use, made from `base`. */
export function freshId(steps: readonly Step[], base: string): string {
  const taken = new Set(steps.map((step) => step.id));
  for (let n = 1; ; n += 1) {
    const id = numberedName(base, n);
    if (!taken.has(id)) return id;
  }
}
