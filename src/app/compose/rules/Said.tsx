// What is said where something is accepted in writing: why, by which role, since when and until when. Used where it is accepted and
// where it is looked at again.
import type { Acceptance } from '../../../domain/procedure.ts';
import { LONGEST } from '../../../domain/lengths.ts';
import { Day } from '../../parts/Day.tsx';
import { TextLine } from '../parts.tsx';

export type Said = Pick<Acceptance, 'reason' | 'by' | 'date' | 'review'>;

/** What still has to be said; undefined where nothing is. Nothing is accepted to be looked at again before today. */
export function lacks({ reason, by, date, review }: Said, today: string): string | undefined {
  if (reason.trim() === '') return 'Say why it is accepted.';
  if (by.trim() === '') return 'Say who accepts it, by role.';
  if (reason.trim().length > LONGEST.text || by.trim().length > LONGEST.label)
    return 'Say it in fewer characters.';
  if (date === '' || review === '') return 'Say when, and when it is looked at again.';
  if (review < date) return 'The review comes before the day it is accepted.';
  return review < today ? 'The day of review has passed already.' : undefined;
}

export const trimmed = (said: Said): Said => ({
  ...said,
  reason: said.reason.trim(),
  by: said.by.trim(),
});

export function SaidFields({ said, say }: { readonly said: Said; readonly say: (said: Said) => void }) {
  return (
    <>
      <TextLine
        label="Why"
        long
        most={LONGEST.text}
        value={said.reason}
        set={(reason) => say({ ...said, reason })}
      />
      <TextLine
        label="Who accepts it, by role (never a name)"
        most={LONGEST.label}
        value={said.by}
        set={(by) => say({ ...said, by })}
      />
      <Day label="Accepted on" value={said.date} set={(date) => say({ ...said, date })} />
      <Day
        label="To be looked at again on"
        value={said.review}
        least={said.date}
        set={(review) => say({ ...said, review })}
      />
    </>
  );
}
