// What comes back from the worker that compares: plain data only. It comes twice, first without moved and left-out steps,
// which take most of the time.
import type { Comparison } from '../../compare/compare.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Question } from '../check/result.ts';

export interface Compared {
  /** Whether variants have been tried: findings of that kind are there only then. */
  readonly complete: boolean;
  readonly a: Procedure;
  readonly b: Procedure;
  readonly comparison: Comparison;
}

/** Nothing to compare where a file has errors: which of the two. */
export type Answer = { readonly compared: Compared } | { readonly broken: readonly ('a' | 'b')[] };

/** What the worker offers. */
export interface Comparer {
  compare(a: Question, b: Question, answer: (answer: Answer) => void): Promise<void>;
}
