// From initials to ids of the staff list: those that are listed, or listed now with the role they have in this exit. Initials
// that two people share are not guessed.
import type { People } from '../../../guide/index.ts';
import { type Role, ROLES } from '../../../domain/procedure.ts';
import { memberText, type StaffState } from '../../../versions/staff.ts';
import type { Words } from '../../../words/index.ts';
import { book, newPersonId } from '../../journal/useBook.ts';

const INITIALS = /^\p{Lu}{1,4}$/u;

interface Filled {
  readonly wearer: string;
  readonly observer: string;
  readonly assistant: string;
}

interface Found {
  readonly role: string;
  readonly initials: string;
  readonly person: string;
  readonly fresh: boolean;
}

/** 'observer (CD)' in a language, where the role is one of an exit; a role of the unit's own words stays as it is. */
export function memberIn(words: Pick<Words, 'role'>, staff: StaffState, person: string): string {
  const member = Object.hasOwn(staff, person) ? staff[person] : undefined;
  const role = ROLES.find((one) => one === member?.role);
  return memberText(member && role ? { [person]: { ...member, role: words.role(role) } } : staff, person);
}

function find(role: Role, typed: string, staff: StaffState, words: Words): Found | string {
  const initials = typed.trim().toLocaleUpperCase();
  const { handover } = words.guide.labels;
  if (!INITIALS.test(initials)) return handover.initials(words.role(role));
  const same = Object.values(staff).filter((member) => member.initials === initials);
  if (same.length > 1) return handover.shared(initials);
  const [known] = same;
  return { role, initials, person: known?.person ?? newPersonId(), fresh: known === undefined };
}

/** Who takes over as observer, newly listed by whoever hands over; or what is wrong, in words. */
export async function successorFrom(
  typed: string,
  staff: StaffState,
  { wearer, observer, assistants }: People,
  words: Words,
): Promise<{ readonly person: string } | string> {
  const found = find('observer', typed, staff, words);
  if (typeof found === 'string') return found;
  const { person, role, initials, fresh } = found;
  if ([wearer, observer, ...assistants].includes(person))
    return words.guide.labels.handover.hasPart(initials);
  if (fresh)
    await book.write({
      by: observer,
      entries: [{ kind: 'staff.listed', body: { person, role, initials } }],
    });
  return { person };
}

/** Who takes part, newly listed people written down first; or what is wrong, in words. */
export async function peopleFrom(filled: Filled, staff: StaffState, words: Words): Promise<People | string> {
  const asked = [
    find('wearer', filled.wearer, staff, words),
    find('observer', filled.observer, staff, words),
    ...(filled.assistant.trim() === '' ? [] : [find('assistant', filled.assistant, staff, words)]),
  ];
  const wrong = asked.find((one) => typeof one === 'string');
  if (wrong !== undefined) return wrong;
  const found = asked as readonly Found[];
  if (new Set(found.map(({ initials }) => initials)).size < found.length)
    return words.guide.labels.handover.twice;
  const fresh = found.filter((one) => one.fresh);
  const [wearer, observer, assistant] = found.map(({ person }) => person);
  if (fresh.length > 0)
    await book.write({
      by: observer!,
      entries: fresh.map(({ person, role, initials }) => ({
        kind: 'staff.listed',
        body: { person, role, initials },
      })),
    });
  return { wearer: wearer!, observer: observer!, assistants: assistant === undefined ? [] : [assistant] };
}
