// Another way on beside the rest as written: its steps in words, and which of them stand elsewhere or nowhere in it.
import type { Procedure, Step } from '../../../domain/procedure.ts';
import type { Words } from '../../../words/index.ts';

export interface WayStep {
  readonly id: string;
  readonly label: string;
  /** Not the step that would come at this place as written. */
  readonly fresh: boolean;
}

export function stepLabels(
  procedure: Procedure,
  done: number,
  steps: readonly Step[],
  words: Words,
): readonly WayStep[] {
  const setting = { ...procedure, steps: [...procedure.steps.slice(0, done), ...steps] };
  return steps.map((step, index) => ({
    id: step.id,
    label: words.stepLabel(setting, step),
    fresh: procedure.steps[done + index]?.id !== step.id,
  }));
}
