// What a procedure cannot do. Each problem is data; its words are made in words/. A step with a problem is still
// carried out as far as it goes, so that one fault does not hide the next.
export const PROBLEM_CODES = [
  'not-worn',
  'held-by',
  'already-worn',
  'no-glove-beneath',
  'still-fastened',
  'already-open',
  'helper-missing',
  'helper-elsewhere',
  'owner-elsewhere',
  'fixture-missing',
  'fixture-elsewhere',
  'not-a-seat',
  'not-seated',
  'not-standing',
  'dirty-seat',
  'product-unsuited',
  'technique-unclear',
  'nothing-to-clean',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

export interface Problem {
  readonly code: ProblemCode;
  /** Index of the step. */
  readonly step: number;
  readonly params: Readonly<Record<string, string>>;
}
