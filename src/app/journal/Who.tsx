// Who acts: somebody of the unit's staff, by role and initials of their own choosing. A name is never asked for. Chosen anew
// for every act: on a shared device, whoever acted last is not whoever acts now.
import { type RefObject, useRef, useState } from 'react';
import { Confirm } from '../parts/Confirm.tsx';
import { Select, TextLine } from '../compose/parts.tsx';
import { type Member, memberText } from '../../versions/staff.ts';
import { useBar } from './useBar.ts';
import { book, nameThisUnit, newPersonId, unitNamed, useBook } from './useBook.ts';

const INITIALS = /^\p{Lu}{1,4}$/u;

function lacks(unit: string, role: string, initials: string): string | undefined {
  if (unit.trim() === '') return 'Say what the unit is called.';
  if (role.trim() === '') return 'Say what they do here: their role.';
  return INITIALS.test(initials) ? undefined : 'Initials are one to four capital letters.';
}

/** Takes somebody into the staff list. The first of all also names the unit that the journal belongs to. */
function AddMember({
  added,
  then,
}: {
  readonly added: (person: string) => void;
  readonly then: RefObject<HTMLElement | null>;
}) {
  const state = useBook();
  const named = unitNamed(state);
  const bar = useBar('staff.listed');
  const [unit, setUnit] = useState('');
  const [role, setRole] = useState('');
  const [initials, setInitials] = useState('');
  const missing = lacks(named?.title ?? unit, role, initials);
  const write = async (): Promise<void> => {
    if (!named) nameThisUnit(unit);
    const person = newPersonId();
    await book.write({
      by: person,
      entries: [{ kind: 'staff.listed', body: { person, role: role.trim(), initials } }],
    });
    added(person);
    setRole('');
    setInitials('');
  };
  return (
    <div className="fields add-member">
      {!named && (
        <TextLine
          label="Name of the unit"
          value={unit}
          set={setUnit}
          hint="The journal of this device will be this unit’s. It cannot be renamed once there is an entry."
        />
      )}
      <TextLine label="Role (never a name)" value={role} set={setRole} />
      <TextLine
        label="Initials, 1 to 4 capital letters"
        value={initials}
        set={(typed) => setInitials(typed.toUpperCase())}
      />
      <p className="actions whole-line">
        <Confirm
          main={false}
          label="Add to the staff list …"
          title="Add to the staff list"
          sentence={`The journal will say that somebody with the role “${role.trim()}” and the initials ${initials} belongs to ${named?.title ?? unit.trim()}.`}
          isDisabled={missing !== undefined}
          bar={bar}
          write={write}
          then={then}
        />
        <output className="quiet">{bar ? '' : missing}</output>
      </p>
    </div>
  );
}

export const membersOf = (staff: Readonly<Record<string, Member>>): readonly Member[] =>
  Object.values(staff).toSorted(
    (a, b) => a.role.localeCompare(b.role, 'en') || a.initials.localeCompare(b.initials, 'en'),
  );

/** The way in, and who was added last: it is said, and the focus goes there. */
function Add({ open, summary }: { readonly open: boolean; readonly summary: string }) {
  const { staff } = useBook();
  const [last, setLast] = useState('');
  // Whoever has begun to list people lists more of them: it closes when they close it.
  const [chosen, choose] = useState<boolean>();
  const isOpen = chosen ?? open;
  const told = useRef<HTMLOutputElement>(null);
  return (
    <>
      <details
        className="not-listed"
        open={isOpen}
        onInput={() => choose(true)}
        onToggle={({ currentTarget }) => {
          if (currentTarget.open !== isOpen) choose(currentTarget.open);
        }}
      >
        <summary>{summary}</summary>
        <AddMember added={setLast} then={told} />
      </details>
      <output ref={told} tabIndex={-1} className="quiet told">
        {last && `${memberText(staff, last)} is in the staff list.`}
      </output>
    </>
  );
}

export function StaffList() {
  const { staff } = useBook();
  const members = membersOf(staff);
  return (
    <>
      {members.length === 0 && <p className="quiet">Nobody is listed yet.</p>}
      <ul className="plain">
        {members.map(({ person }) => (
          <li key={person}>
            {memberText(staff, person)} <code className="quiet">{person}</code>
          </li>
        ))}
      </ul>
      <Add open={members.length === 0} summary="Add somebody" />
    </>
  );
}

interface WhoProps {
  readonly label: string;
  readonly value: string;
  readonly set: (person: string) => void;
  /** Who may not be chosen here, and is not offered. */
  readonly but?: readonly string[];
}

export function Who({ label, value, set, but = [] }: WhoProps) {
  const { staff } = useBook();
  const members = membersOf(staff).filter(({ person }) => !but.includes(person));
  return (
    <Select
      label={label}
      value={members.some(({ person }) => person === value) ? value : ''}
      none="(choose)"
      choices={members.map(({ person }) => ({ value: person, name: memberText(staff, person) }))}
      set={set}
    />
  );
}

/** Beside a form that asks who acts: the way into the list for those who are not in it. */
export function NotListed({ open = false }: { readonly open?: boolean }) {
  return <Add open={open} summary="Somebody is not in the staff list" />;
}
