// Departures that the unit accepts in writing, by name and date. Only departures from practice and places left bare can
// be accepted; an open route or an impossible step cannot be signed away.
import type { Acceptance } from '../domain/procedure.ts';
import type { Finding } from './finding.ts';

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
export const isUnmatched = (one: Acceptance, findings: readonly Pick<Finding, 'accepted'>[]): boolean =>
  !findings.some(
    ({ accepted }) => accepted && covers(one, accepted.finding, accepted.step, accepted.surface),
  );
