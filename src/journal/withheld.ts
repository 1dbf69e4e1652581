// What a device or person has no need of is withheld from them where entries are handed on: the field says so, and everything
// else stays, the hash too, so that the device's chain can still be followed. The entry's own content can then not be held to
// its hash; only a device that received it so may keep it so, never the store that others read from. A salt goes with
// the field: few answers are possible, and without it each could be tried against the hash.
import type { Content, Entry } from './entry.ts';

/** Stands where the field's value was. */
export const WITHHELD = 'withheld';

/** What is wrong with an entry that was written so: a device could hide with it what was answered. */
export const MARK_FAULT = `only the unit’s server writes "${WITHHELD}", on what it hands on`;

/** Fields by kind: what is told, and what makes it impossible to guess. */
const FIELDS: Readonly<Record<string, { readonly told: string; readonly salt: string }>> = {
  'exit.question-answered': { told: 'answer', salt: 'salt' },
};

const fieldsOf = (kind: string) => (Object.hasOwn(FIELDS, kind) ? FIELDS[kind] : undefined);

/** Whether entries of a kind carry a salt, which whoever writes one draws at random: 32 hexadecimal digits. */
export const isSalted = (kind: string): boolean => fieldsOf(kind) !== undefined;

/** The entry as somebody gets it who has no need of the field; any other entry as it is. */
export function withhold(entry: Entry): Entry {
  const fields = fieldsOf(entry.kind);
  if (!fields) return entry;
  const { told, salt } = fields;
  const body = Object.hasOwn(entry.body, salt) ? { ...entry.body, [salt]: null } : entry.body;
  return { ...entry, body: { ...body, [told]: WITHHELD } };
}

/** Whether something of an entry was withheld, so that its content has another hash. */
export function isWithheld({ kind, body }: Pick<Content, 'kind' | 'body'>): boolean {
  const fields = fieldsOf(kind);
  return fields !== undefined && body[fields.told] === WITHHELD;
}
