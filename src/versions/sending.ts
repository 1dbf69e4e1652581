// Whether a draft may go to review, and why not: the check must have run on exactly this text, errors are mended or accepted
// in writing where they may be, nothing is accepted past its day of review, and no version that was approved is written over.
// Data with codes; words come last. Today comes in as a value.
import { isAcceptable, isOverdue } from '../check/acceptance.ts';
import type { Finding } from '../check/finding.ts';
import type { Limit } from '../check/limits.ts';
import type { Acceptance } from '../domain/procedure.ts';
import type { ProcedureVersion } from '../journal/views/versions.ts';
import { MOST_VERSION } from './naming.ts';

/** Longest procedure file that the journal keeps, in UTF-16 code units. */
const MOST_TEXT = 128 * 1024;

export const HINDRANCES = [
  'not-finished',
  'not-checked',
  'not-worked-out',
  'to-mend',
  'to-accept',
  'review-past',
  'no-title',
  'no-version',
  'version-taken',
  'same-sent',
  'too-long',
] as const;
export type HindranceCode = (typeof HINDRANCES)[number];

export interface Hindrance {
  readonly code: HindranceCode;
  /** The findings that stand in the way; empty for the rest. */
  readonly findings: readonly Finding[];
  /** What is accepted past its day of review and so counts as not accepted; absent for the rest. */
  readonly overdue?: readonly Acceptance[];
}

export interface ToSend {
  readonly title: string;
  readonly version: string;
  readonly text: string;
  /** SHA-256 of the text. */
  readonly content: string;
  /** What the text accepts in writing. */
  readonly accepted: readonly Acceptance[];
  /** What the check of this very text found, against the procedure's own agents; undefined before it has run to its end. */
  readonly checked: { readonly findings: readonly Finding[]; readonly limits: readonly Limit[] } | undefined;
  /** The file has errors, so there is nothing to check. */
  readonly broken: boolean;
}

const isOpenError = ({ severity, accepted }: Finding): boolean => severity === 'error' && !accepted;

function fromCheck({ broken, checked }: ToSend): readonly Hindrance[] {
  if (broken) return [{ code: 'not-finished', findings: [] }];
  if (!checked) return [{ code: 'not-checked', findings: [] }];
  const errors = checked.findings.filter(isOpenError);
  const [mend, accept] = [
    errors.filter(({ code }) => !isAcceptable(code)),
    errors.filter(({ code }) => isAcceptable(code)),
  ];
  return [
    ...(checked.limits.some(({ code }) => code === 'exact')
      ? [{ code: 'not-worked-out', findings: [] } as const]
      : []),
    ...(mend.length > 0 ? [{ code: 'to-mend', findings: mend } as const] : []),
    ...(accept.length > 0 ? [{ code: 'to-accept', findings: accept } as const] : []),
  ];
}

/** What is accepted past its day of review, the longest overdue first. It holds to the end of that day. */
export const overdueIn = (accepted: readonly Acceptance[], today: string): readonly Acceptance[] =>
  accepted.filter((one) => isOverdue(one, today)).toSorted((a, b) => a.review.localeCompare(b.review, 'en'));

/** Whether a check found what it covers, or nothing: nobody is to send a promise that is past its day. */
function fromReviews({ accepted, checked }: ToSend, today: string): readonly Hindrance[] {
  const overdue = overdueIn(accepted, today);
  if (overdue.length === 0) return [];
  const findings = checked?.findings.filter((one) => one.accepted && isOverdue(one.accepted, today)) ?? [];
  return [{ code: 'review-past', findings, overdue }];
}

/** What the name of the version, its text and what is there already stand in the way of. */
function fromVersion(draft: ToSend, there: ProcedureVersion | undefined): readonly HindranceCode[] {
  const name = draft.version.trim();
  const kept = there?.stage === 'approved' || there?.stage === 'retired';
  const sent = there?.stage === 'review' && there.content === draft.content;
  return [
    ...(draft.title.trim() === '' ? (['no-title'] as const) : []),
    ...(name === '' || draft.version.length > MOST_VERSION ? (['no-version'] as const) : []),
    ...(kept ? (['version-taken'] as const) : []),
    ...(sent ? (['same-sent'] as const) : []),
    ...(draft.text.length > MOST_TEXT ? (['too-long'] as const) : []),
  ];
}

/** Everything that stands in the way, worst first; empty where it may be sent. `there`: the version of this name. */
export const hindrances = (
  draft: ToSend,
  there: ProcedureVersion | undefined,
  today: string,
): readonly Hindrance[] => [
  ...fromCheck(draft),
  ...fromReviews(draft, today),
  ...fromVersion(draft, there).map((code) => ({ code, findings: [] })),
];
