// The log of a day as a table, to be looked through and printed in black and white. Role and initials; the staff list's ids
// only where somebody asks for them.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { ROOM_ROLES } from '../../journal/kinds/rooms.ts';
import { type Sign, signsOf } from '../../journal/views/signs.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { memberText, type StaffState } from '../../versions/staff.ts';
import { Select } from '../compose/parts.tsx';
import { unitNamed, useBook } from '../journal/useBook.ts';
import { membersOf } from '../journal/Who.tsx';
import { Tick } from '../parts/Choices.tsx';
import { Scroll } from '../parts/Scroll.tsx';
import { today } from '../today.ts';
import { ASKED_TOLD, LOG, ROLE_NAMES } from './labels.ts';
import { procedureTitle } from '../model/titles.ts';
import { asked, type Asking, clock, itemsText, lasting, localOf, roomName, wornText } from './model.ts';
import { Typed } from './parts.tsx';
import { roomsIn } from './SignIn.tsx';
import { Signs } from './Signs.tsx';
import { History, roleText } from './StayCard.tsx';
import { boundsNow, useClock } from './useLogbook.ts';

type Set = (part: Partial<Asking>) => void;

interface FiltersProps {
  readonly asking: Asking;
  readonly set: Set;
  readonly stays: readonly Stay[];
}

function Filters({ asking, set, stays }: FiltersProps) {
  const { staff } = useBook();
  const people = membersOf(staff).map(({ person }) => ({ value: person, name: memberText(staff, person) }));
  const rooms = roomsIn(stays).map((room) => ({ value: room, name: roomName(room) }));
  const roles = ROOM_ROLES.map((role) => ({ value: role, name: ROLE_NAMES[role] }));
  return (
    <div className="fields no-print">
      <Typed label="Day" type="date" value={asking.day} set={(day) => set({ day })} />
      <Select label="Room" value={asking.room} none="All" choices={rooms} set={(room) => set({ room })} />
      <Select
        label="Person"
        value={asking.person}
        none="All"
        choices={people}
        set={(person) => set({ person })}
      />
      <Select label="Role" value={asking.role} none="All" choices={roles} set={(role) => set({ role })} />
      <Typed
        label="Ensemble, size or lot"
        value={asking.text}
        set={(text) => set({ text })}
        hint="A lot that is called back: leave the day empty."
      />
    </div>
  );
}

interface RowProps {
  readonly stay: Stay;
  readonly stays: readonly Stay[];
  readonly signs: readonly Sign[];
  readonly staff: StaffState;
  readonly ids: boolean;
  readonly now: number;
}

function Row({ stay, stays, signs, staff, ids, now }: RowProps) {
  const { texts } = useBook();
  const { entered, left, observers, limit, items, undone, drill, writtenIn, writtenOut } = stay;
  const named = (person: string | null): string =>
    ids && person !== null ? `${memberText(staff, person)} ${person}` : memberText(staff, person);
  const inside =
    entered === null ? null : Math.max(0, (left === null ? now : Date.parse(left)) - Date.parse(entered));
  const by = [...new Set([writtenIn, writtenOut].flatMap((written) => (written ? [named(written.by)] : [])))];
  return (
    <tr className={undone ? 'log-undone' : ''}>
      <th scope="row">
        {named(stay.person)}
        {drill && <b className="badge">DRILL</b>}
      </th>
      <td>{roleText(stay)}</td>
      <td>{roomName(stay.room)}</td>
      <td>{entered === null ? 'not written' : clock(entered, now)}</td>
      <td>{left === null ? 'still in' : clock(left, now)}</td>
      <td>
        {inside === null ? '' : lasting(inside)}
        {limit && <span className="quiet"> of {limit.minutes} min</span>}
      </td>
      <td>
        {[wornText(stay, (one) => procedureTitle(one, texts)), itemsText(items)]
          .filter((part) => part !== '')
          .join('; ')}
      </td>
      <td>
        {observers.map(({ observer, from }) => `${named(observer)} from ${clock(from, now)}`).join('; ')}
      </td>
      <td className="log-notes">
        {undone && <b>Taken back: never went in. </b>}
        <Signs signs={signs} stays={stays} />
        {stay.asked && <span className="log-late">{ASKED_TOLD[stay.asked]}</span>}
        <History stay={stay} staff={staff} now={now} />
      </td>
      <td>{by.join('; ')}</td>
      <td className="no-print">
        <Link href={`/logbook/correct/${stay.visit}`} className="inline-link">
          {LOG.acts.correct}
          <span className="visually-hidden"> {named(stay.person)}</span>
        </Link>
      </td>
    </tr>
  );
}

const HEADS = [
  'Who',
  'As',
  'Room',
  'In',
  'Out',
  'Inside',
  'Ensemble, sizes, lots',
  'Observer',
  'Notes',
  'By',
];

export function DayPage({ stays }: { readonly stays: readonly Stay[] }) {
  const state = useBook();
  const now = useClock();
  const [asking, setAsking] = useState<Asking>(() => ({
    day: today(),
    room: '',
    person: '',
    role: '',
    text: '',
    drills: true,
  }));
  const [ids, setIds] = useState(false);
  const shown = asked(stays, asking, now);
  const signs = signsOf(stays, now, boundsNow());
  return (
    <>
      <Filters asking={asking} set={(part) => setAsking({ ...asking, ...part })} stays={stays} />
      <div className="actions no-print">
        <Tick on={asking.drills} set={(drills) => setAsking({ ...asking, drills })}>
          Drills too
        </Tick>
        <Tick on={ids} set={setIds}>
          With ids of the staff list
        </Tick>
        <Button className="button log-press" isDisabled={shown.length === 0} onPress={() => window.print()}>
          {LOG.acts.print}
        </Button>
      </div>
      <p className="print-only">
        {unitNamed(state)?.title ?? ''}. Printed {localOf(now).replace('T', ' ')}. {LOG.printed}
      </p>
      <p>
        <b>{asking.day === '' ? 'All days' : asking.day}</b>: {shown.length}{' '}
        {shown.length === 1 ? 'visit' : 'visits'}. Times are this device’s local time.
      </p>
      {shown.length > 0 && (
        <Scroll label="The log" className="table-scroll log-table">
          <table>
            <thead>
              <tr>
                {HEADS.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
                <th scope="col" className="no-print">
                  Put right
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((stay) => (
                <Row
                  key={`${stay.visit} ${stay.entered}`}
                  stay={stay}
                  stays={stays}
                  signs={signs.filter(({ visit }) => visit === stay.visit)}
                  staff={state.staff}
                  ids={ids}
                  now={now}
                />
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </>
  );
}
