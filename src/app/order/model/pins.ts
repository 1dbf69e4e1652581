// Steps that a search keeps: they are a matter of the file, so that whoever reads it sees them.
import type { Procedure, Step } from '../../../domain/procedure.ts';

export const pinnedIn = ({ steps }: Pick<Procedure, 'steps'>): ReadonlySet<string> =>
  new Set(steps.filter(({ pinned }) => pinned === true).map(({ id }) => id));

function freed(step: Step): Step {
  const { pinned: _, ...rest } = step;
  return rest;
}

/** With exactly these steps pinned; the procedure itself where they are already. */
export function withPins(procedure: Procedure, ids: ReadonlySet<string>): Procedure {
  const same = procedure.steps.every(({ id, pinned }) => (pinned === true) === ids.has(id));
  if (same) return procedure;
  const steps = procedure.steps.map((step): Step => {
    if ((step.pinned === true) === ids.has(step.id)) return step;
    return ids.has(step.id) ? { ...step, pinned: true } : freed(step);
  });
  return { ...procedure, steps };
}
