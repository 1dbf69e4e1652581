// From initials to ids of the staff list: those that are listed, or listed now with the role they have in this exit. Initials
// that two people share are not guessed.
import type { People } from '../../../guide/index.ts';
import type { StaffState } from '../../../versions/staff.ts';
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

function find(role: string, typed: string, staff: StaffState): Found | string {
  const initials = typed.trim().toLocaleUpperCase();
  if (!INITIALS.test(initials)) return `Initials of the ${role}: one to four letters.`;
  const same = Object.values(staff).filter((member) => member.initials === initials);
  if (same.length > 1) return `Two people have the initials ${initials}: list one of them with others first.`;
  const [known] = same;
  return { role, initials, person: known?.person ?? newPersonId(), fresh: known === undefined };
}

/** Who takes over as observer, newly listed by whoever hands over; or what is wrong, in words. */
export async function successorFrom(
  typed: string,
  staff: StaffState,
  { wearer, observer, assistants }: People,
): Promise<{ readonly person: string } | string> {
  const found = find('observer', typed, staff);
  if (typeof found === 'string') return found;
  const { person, role, initials, fresh } = found;
  if ([wearer, observer, ...assistants].includes(person))
    return `${initials} has a part in this exit already: another person takes over.`;
  if (fresh)
    await book.write({
      by: observer,
      entries: [{ kind: 'staff.listed', body: { person, role, initials } }],
    });
  return { person };
}

/** Who takes part, newly listed people written down first; or what is wrong, in words. */
export async function peopleFrom(filled: Filled, staff: StaffState): Promise<People | string> {
  const asked = [
    find('wearer', filled.wearer, staff),
    find('observer', filled.observer, staff),
    ...(filled.assistant.trim() === '' ? [] : [find('assistant', filled.assistant, staff)]),
  ];
  const wrong = asked.find((one) => typeof one === 'string');
  if (wrong !== undefined) return wrong;
  const found = asked as readonly Found[];
  if (new Set(found.map(({ initials }) => initials)).size < found.length)
    return 'Two roles have the same initials: one person cannot be both.';
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
