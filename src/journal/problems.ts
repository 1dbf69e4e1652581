// What a journal can refuse and how it can fail, as data; the sentence comes last. A refusal is about an entry: storing
// it would break a chain. A failure is about the store: nothing was acknowledged, and the same call may be made again.

export const REFUSALS = [
  'malformed',
  'too-large',
  'hash-wrong',
  'body-wrong',
  'other-unit',
  'fork',
  'gap',
  'chain-broken',
] as const;
export const FAILURES = [
  'full',
  'read-only',
  'busy',
  'damaged',
  'replaced',
  'newer-format',
  'unavailable',
] as const;
export type RefusalCode = (typeof REFUSALS)[number];
export type FailureCode = (typeof FAILURES)[number];

export interface Refusal {
  readonly code: RefusalCode;
  /** Place in what was given to `append`, from 0. */
  readonly index: number;
  readonly device: string;
  readonly number: number;
  /** What the entry has, and what it would need to have. */
  readonly found: string;
  readonly expected: string;
}

export interface Failure {
  readonly code: FailureCode;
  /** What the database or the disk said. */
  readonly detail: string;
}

export type Problem = Refusal | Failure;

export const isRefusal = (problem: Problem): problem is Refusal =>
  (REFUSALS as readonly string[]).includes(problem.code);

const REFUSED: Readonly<Record<RefusalCode, (one: Refusal) => string>> = {
  malformed: ({ found }) => `is no entry: ${found}`,
  'too-large': ({ found, expected }) => `is ${found} characters long; at most ${expected} are kept`,
  'hash-wrong': ({ found, expected }) => `was altered: it says hash ${found}, its content has ${expected}`,
  'body-wrong': ({ found }) => `has a body that its kind does not allow: ${found}`,
  'other-unit': ({ found, expected }) => `belongs to unit ${found}; this journal is ${expected}'s`,
  fork: ({ found, expected }) =>
    `is stored already with another content: hash ${expected} is stored, ${found} was given`,
  gap: ({ found, expected }) => `comes too early: number ${expected} is next, ${found} was given`,
  'chain-broken': ({ found, expected }) => `does not follow on: it names ${found} before it, ${expected} is`,
};

const FAILED: Readonly<Record<FailureCode, string>> = {
  full: 'There is no room left for the journal. Make room; nothing acknowledged is lost',
  'read-only': 'The journal may not be written to',
  busy: 'Another program is writing to the journal, and did not finish in time. Try again',
  damaged: 'The journal is damaged. Verify it, and restore a backup beside it',
  replaced: 'Another journal was put in this one’s place while it was open. Open it again',
  'newer-format': 'The journal was written by a newer release',
  unavailable: 'The journal cannot be reached',
};

export const sentenceOf = (problem: Problem): string =>
  isRefusal(problem)
    ? `Entry ${problem.number} of device ${problem.device} ${REFUSED[problem.code](problem)}.`
    : `${FAILED[problem.code]} (${problem.detail}).`;

export class JournalError extends Error {
  override readonly name = 'JournalError';
  readonly problem: Problem;

  constructor(problem: Problem, cause?: unknown) {
    super(sentenceOf(problem), { cause });
    this.problem = problem;
  }
}
