// Who may sign: the staff as the unit's devices know them, by role and initials. A fold over the journal; a later line
// about the same person holds.
import type { View } from '../journal/fold.ts';

export type Member = { readonly person: string; readonly role: string; readonly initials: string };

export type StaffState = Readonly<Record<string, Member>>;

export const staffView: View<StaffState> = {
  name: 'staff',
  version: 1,
  start: {},
  next: (state, entry) => {
    if (entry.kind !== 'staff.listed') return state;
    const { person, role, initials } = entry.body;
    return { ...state, [person]: { person, role, initials } };
  },
};

/** 'IL'; the id alone of somebody who was never listed here. */
export const initialsOf = (staff: StaffState, person: string): string =>
  (Object.hasOwn(staff, person) ? staff[person]?.initials : undefined) ?? person;

/** 'infection-prevention lead (IL)'; the id alone of somebody who was never listed here. */
export function memberText(staff: StaffState, person: string | null): string {
  if (person === null) return 'the device';
  const member = Object.hasOwn(staff, person) ? staff[person] : undefined;
  return member ? `${member.role} (${member.initials})` : person;
}
