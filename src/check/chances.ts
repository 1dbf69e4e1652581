// From evidence to the chance of each basic event. The observer is credited only when the unit's own policy says how
// likely a visible slip is missed: no published detection rate was found, so there is no default.
import type { BasicEvent } from '../contacts/plan.ts';
import type { Policy } from '../domain/procedure.ts';
import { type CatchSetting, effectiveChance } from '../engine/dependence.ts';
import { type Distribution, mean } from '../engine/distributions.ts';
import { type EvidenceId, evidence, evidenceNumber } from '../evidence/index.ts';

/** The distribution of a prior's chance; a record without one is taken as its value exactly. */
export function distributionOf(prior: string): Distribution {
  const record = evidence(prior as EvidenceId);
  if (record.distribution && record.distribution.kind !== 'fixed') return record.distribution;
  return { kind: 'fixed', value: evidenceNumber(record.id) };
}

export function catchSetting(policy: Policy): CatchSetting | null {
  if (!policy.observer) return null;
  return { miss: evidenceNumber(policy.observer.misses as EvidenceId), level: policy.observer.dependence };
}

/** Mean chance of each event, in the order of the plan. */
export function eventChances(events: readonly BasicEvent[], policy: Policy): Float64Array {
  const means = new Map<string, number>();
  const setting = catchSetting(policy);
  return Float64Array.from(events, (event) => {
    const known = means.get(event.prior) ?? mean(distributionOf(event.prior));
    means.set(event.prior, known);
    return effectiveChance(event, known, setting);
  });
}
