// What a paired device may not write, by the very table that the server goes by. The server refuses such an entry, and takes
// nothing that comes behind it in this device's chain: so it is never written. A device alone is not limited.
import { mayRecord } from '../../api/access.ts';
import { type Role, ROLES } from '../../api/roles.ts';
import type { KindName } from '../../journal/kinds/index.ts';

const WHOSE: Readonly<Record<Role, string>> = {
  observer: 'an observer’s',
  lead: 'a lead’s',
  stores: 'stores’',
  'occupational-health': 'occupational health’s',
  reader: 'a reader’s',
};

/** Families of kinds, by what stands before the dot (src/api/access.ts): what their entries say. */
export const FAMILIES: Readonly<Record<string, string>> = {
  exit: 'exits',
  room: 'who is in the room',
  emergency: 'emergencies',
  note: 'notes',
  staff: 'the staff list',
  product: 'times on products’ labels',
  procedure: 'versions of procedures',
  departure: 'departures',
  language: 'sign-offs of languages',
};

const EITHER = new Intl.ListFormat('en-GB', { type: 'disjunction' });

function writersOf(kind: KindName): string {
  const roles = ROLES.filter((role) => mayRecord(role, kind, true));
  if (roles.length === 0) return 'The unit’s server alone writes this.';
  const whose = EITHER.format(roles.map((role) => WHOSE[role]));
  const what = FAMILIES[kind.split('.')[0] ?? ''] ?? 'this';
  return `${whose[0]?.toUpperCase()}${whose.slice(1)} device writes ${what}.`;
}

/** Why a device of this role may not write a kind, and whose device does; undefined where it may, or its role is not known. */
export const barOf = (role: Role | undefined, kind: KindName): string | undefined =>
  role === undefined || mayRecord(role, kind, true)
    ? undefined
    : `This device is paired as ${WHOSE[role]}. ${writersOf(kind)}`;

/** The unit's server would refuse it, and everything behind it. */
export class NotOfRole extends Error {
  override readonly name = 'NotOfRole';
}
