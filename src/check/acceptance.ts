// Departures that the unit accepts in writing, by name and date. Only departures from practice and places left bare can
// be accepted; an open route or an impossible step cannot be signed away.
import type { Acceptance, Procedure } from '../domain/procedure.ts';
import type { Finding, FindingCode } from './finding.ts';

const ACCEPTABLE = /^(practice|coverage)\./;

export const isAcceptable = (code: string): boolean => ACCEPTABLE.test(code);

const covers = (accepted: Acceptance, code: string, stepId?: string, surface?: string): boolean =>
  accepted.finding === code &&
  (accepted.step === undefined || accepted.step === stepId) &&
  (accepted.surface === undefined || accepted.surface === surface);

/** The acceptance that covers a finding, if any. */
export function acceptanceFor(
  accepted: readonly Acceptance[],
  code: string,
  stepId?: string,
  surface?: string,
): Acceptance | undefined {
  if (!isAcceptable(code)) return undefined;
  return accepted.find((candidate) => covers(candidate, code, stepId, surface));
}

export const isAccepted = (accepted: readonly Acceptance[], code: string, stepId?: string): boolean =>
  acceptanceFor(accepted, code, stepId) !== undefined;

/** Whether a whole check found nothing that it could be about: it was written for other steps, or is needed no more. */
export const isUnmatched = (
  one: Acceptance,
  { steps }: Pick<Procedure, 'steps'>,
  findings: readonly Pick<Finding, 'code' | 'steps' | 'surface'>[],
): boolean =>
  !findings.some(
    ({ code, steps: [at = -1], surface }) => isAcceptable(code) && covers(one, code, steps[at]?.id, surface),
  );

/** Whether the day on which it must be looked at again has passed. Days are written so that their order is that of texts. */
export const isOverdue = ({ review }: Pick<Acceptance, 'review'>, day: string): boolean => review < day;

/** What is wrong with one, in the order in which it is to be told: what can never hold need not be looked at again. */
function wrongWith(
  one: Acceptance,
  procedure: Procedure,
  findings: readonly Finding[],
  day: string | undefined,
): FindingCode | undefined {
  if (!isAcceptable(one.finding)) return 'acceptance.void';
  if (isUnmatched(one, procedure, findings)) return 'acceptance.unmatched';
  return day !== undefined && isOverdue(one, day) ? 'acceptance.overdue' : undefined;
}

/**
 * What stands in writing and does not hold what a reader takes it to hold: a committee would go by it. Judged against all
 * other findings; overdue only on a day that is given, so that the same file gives the same answer on every day.
 */
export const acceptanceFindings = (
  procedure: Procedure,
  findings: readonly Finding[],
  day?: string,
): readonly Finding[] =>
  procedure.accepted.flatMap((one, index): readonly Finding[] => {
    const code = wrongWith(one, procedure, findings, day);
    if (code === undefined) return [];
    const { finding, step, surface, by, date, review } = one;
    const at = procedure.steps.findIndex(({ id }) => id === step);
    return [
      {
        code,
        kind: 'acceptance',
        severity: 'note',
        steps: at < 0 ? [] : [at],
        ...(surface === undefined ? {} : { surface }),
        surfaces: surface === undefined ? [] : [surface],
        params: {
          finding,
          ...(step === undefined ? {} : { step }),
          ...(surface === undefined ? {} : { surface }),
          by,
          date,
          review,
          entry: String(index + 1),
        },
        events: [],
        route: [],
        mends: [],
        evidence: [],
      },
    ];
  });
