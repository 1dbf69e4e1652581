// What every part of the writing page is given: the draft, and the one way to change it.
import type { Procedure, Step } from '../../domain/procedure.ts';
import { words } from '../words.ts';
import type { NewStep } from './model/steps.ts';
import { capital } from '../../words/capital.ts';

export interface Editing {
  readonly draft: Procedure;
  /** `done` says in a few words what was done; edits with the same `merge` one after the other are undone as one. */
  readonly edit: (procedure: Procedure, done: string, merge?: string) => void;
}

/** The sentence of a step, with its doer where that is not the wearer. */
export function sentenceOf(procedure: Procedure, step: NewStep): string {
  const doer = procedure.people.find(({ id }) => id === step.who);
  const sentence = words.step(procedure, { id: '', ...step });
  return doer?.role === 'wearer' ? sentence : `${capital(words.person(procedure, step.who))}: ${sentence}`;
}

/** Number and label, to say which step is meant. */
export function labelOf(procedure: Procedure, step: Step): string {
  const at = procedure.steps.findIndex(({ id }) => id === step.id);
  return `step ${at + 1} (${words.stepLabel(procedure, step)})`;
}

/** 'step 3', 'steps 3 and 5', 'steps 3, 5 and 9'. */
export function stepNumbers(numbers: readonly number[]): string {
  const last = numbers.at(-1) ?? 0;
  if (numbers.length < 2) return `step ${last}`;
  return `steps ${numbers.slice(0, -1).join(', ')} and ${last}`;
}
