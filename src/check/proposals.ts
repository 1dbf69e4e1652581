// What candidate edits are made from: the procedure as it was worked out, where people stand in it, and steps to put in.
import type { Performed } from '../contacts/interpret.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { freshId } from './edit.ts';

export interface CandidateContext {
  readonly procedure: Procedure;
  readonly agent: Agent;
  readonly performed: readonly Performed[];
}

/** A step to put in, with an id that is not in use. */
export const stepWith = (context: CandidateContext, base: string, rest: Omit<Step, 'id'>): Step => ({
  id: freshId(context.procedure.steps, base),
  ...rest,
});

/** Where who does the step stands as step `at` begins. */
export const zoneAt = (
  { performed, procedure }: CandidateContext,
  at: number,
  who: string,
): string | undefined =>
  (performed[at]?.before ?? performed[procedure.steps.length - 1]?.after)?.bodies[who]?.zone;
