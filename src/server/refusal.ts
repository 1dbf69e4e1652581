// Saying no: a refusal is thrown where it is found and becomes an answer at the edge (interface.ts). What the stores refuse
// or fail at is translated here, so that every answer has one form.
import { type ApiProblem, type ProblemCode, PROBLEMS } from '../api/problems.ts';
import { isRefusal, JournalError, type RefusalCode } from '../journal/problems.ts';

export type Details = Omit<ApiProblem, 'code' | 'todo' | 'says' | 'request'>;

export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly code: ProblemCode;
  readonly details: Details;

  constructor(code: ProblemCode, details: Details = {}, cause?: unknown) {
    super(code, { cause });
    this.code = code;
    this.details = details;
  }
}

/** The journal's words for what an entry is refused for; the same here but for one that would not say what is too large. */
const ENTRY_CODES: Readonly<Partial<Record<RefusalCode, ProblemCode>>> = { 'too-large': 'entry-too-large' };

/** Hashes and numbers help a device to see what is wrong; a body's fault may hold what was typed, and is left out. */
const TOLD: ReadonlySet<RefusalCode> = new Set(['hash-wrong', 'other-unit', 'fork', 'gap', 'chain-broken']);

function fromJournal({ problem }: JournalError): Refusal {
  if (!isRefusal(problem)) return new Refusal(problem.code);
  const { code, index, device, number, found, expected } = problem;
  const told = TOLD.has(code) ? { found, expected } : {};
  const placed = { index, ...(device === '?' ? {} : { device }), number };
  return new Refusal(ENTRY_CODES[code] ?? code, { ...placed, ...told });
}

/** Whatever was thrown, as a refusal. */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof Refusal) return error;
  if (error instanceof JournalError) return fromJournal(error);
  return new Refusal('fault', {}, error);
}

export const bodyOf = ({ code, details }: Refusal, request: string): ApiProblem => ({
  code,
  todo: PROBLEMS[code].todo,
  says: PROBLEMS[code].says,
  request,
  ...details,
});
