// Departures that the unit accepts in writing, by name and date. Only departures from practice and places left bare can
// be accepted; an open route or an impossible step cannot be signed away.
import type { Acceptance } from '../domain/procedure.ts';

const ACCEPTABLE = /^(practice|coverage)\./;

export const isAcceptable = (code: string): boolean => ACCEPTABLE.test(code);

/** The acceptance that covers a finding, if any. */
export function acceptanceFor(
  accepted: readonly Acceptance[],
  code: string,
  stepId?: string,
  surface?: string,
): Acceptance | undefined {
  if (!isAcceptable(code)) return undefined;
  return accepted.find(
    (candidate) =>
      candidate.finding === code &&
      (candidate.step === undefined || candidate.step === stepId) &&
      (candidate.surface === undefined || candidate.surface === surface),
  );
}

export const isAccepted = (accepted: readonly Acceptance[], code: string, stepId?: string): boolean =>
  acceptanceFor(accepted, code, stepId) !== undefined;
