// What each role may do, in words, from the table that the server goes by: a word here never promises what it would refuse.
import { ACCESS, mayReadAnswers, mayRecord, type RouteName } from '../../api/access.ts';
import type { Role } from '../../api/roles.ts';
import { FAMILIES } from '../journal/roleLimit.ts';

const mayAsk = (role: Role, name: RouteName): boolean =>
  (ACCESS[name].people as readonly Role[]).includes(role);

const ABILITIES: readonly { readonly says: string; readonly may: (role: Role) => boolean }[] = [
  { says: 'read the unit’s entries', may: (role) => mayAsk(role, 'read-entries') },
  { says: 'have papers set', may: (role) => mayAsk(role, 'set-paper') },
  { says: 'make accounts, pair tablets and take them out', may: (role) => mayAsk(role, 'offer-pairing') },
  { says: 'read what a wearer answered at the end of an exit', may: mayReadAnswers },
  { says: 'read and write health records of staff', may: (role) => mayAsk(role, 'read-health-records') },
];

export const abilitiesOf = (role: Role): readonly string[] =>
  ABILITIES.filter(({ may }) => may(role)).map(({ says }) => says);

/** What a device of this role may record; nothing for one that only reads. */
export const recordsOf = (role: Role): string => {
  const families = Object.keys(FAMILIES).filter((family) => mayRecord(role, `${family}.any`, true));
  return families.map((family) => FAMILIES[family]).join(', ') || 'nothing, it only reads';
};
