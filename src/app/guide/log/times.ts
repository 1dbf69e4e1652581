// The unit's own times as the guide keeps them: what somebody wrote down from a label, with which label, who and when.
import type { UnitSettings } from '../../../guide/index.ts';
import type { LabelTime, TimesState } from '../../../journal/views/times.ts';
import { memberText, type StaffState } from '../../../versions/staff.ts';

export const SPANS = ['contactSeconds', 'rubSeconds', 'drySeconds'] as const;
export type Span = (typeof SPANS)[number];

/** 'the unit's label: ..., written down by charge nurse (CN), 2026-11-25'. */
export const sourceOf = ({ label, by, at }: LabelTime, staff: StaffState): string =>
  `the unit’s label: ${label}, written down by ${memberText(staff, by)}, ${at.slice(0, 'YYYY-MM-DD'.length)}`;

/** Only products of which the unit has written down a time. */
export function unitTimes(times: TimesState, staff: StaffState): NonNullable<UnitSettings['times']> {
  const entries = Object.values(times).flatMap((one) => {
    const spans = SPANS.flatMap((span) => (one[span] === null ? [] : [[span, one[span]] as const]));
    return spans.length === 0
      ? []
      : [[one.product, { ...Object.fromEntries(spans), source: sourceOf(one, staff) }] as const];
  });
  return Object.fromEntries(entries);
}
