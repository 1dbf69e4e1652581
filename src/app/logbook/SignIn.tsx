// Signing somebody in: who, as what, to which room, in what, watched by whom, for how long at most.
import { useState } from 'react';
import { ROOM_ROLES, type RoomRole } from '../../journal/kinds/rooms.ts';
import { isInside } from '../../journal/views/room.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { useBook } from '../journal/useBook.ts';
import { NotListed, Who } from '../journal/Who.tsx';
import { OneOf, Tick } from '../parts/Choices.tsx';
import { Equipment, type Equipped } from './Equipment.tsx';
import { LOG, ROLE_NAMES } from './labels.ts';
import { enteredOf, type LimitTyped, roomName, sizesOf } from './model.ts';
import { EntryForm, NOW, Typed, WhenField } from './parts.tsx';
import { freshVisit, keeper } from './useLogbook.ts';

const { forms } = LOG;

/** The unit's own limit, where it keeps one. */
function usualLimit(): LimitTyped {
  const wear = keeper.unit().wear;
  return wear ? { minutes: String(wear.limitMinutes), source: wear.source } : { minutes: '', source: '' };
}

interface LimitProps {
  readonly limit: LimitTyped;
  readonly set: (limit: LimitTyped) => void;
}

export function LimitFields({ limit, set }: LimitProps) {
  return (
    <div className="fields">
      <Typed
        label={forms.limit}
        type="number"
        value={limit.minutes}
        set={(minutes) => set({ ...limit, minutes })}
      />
      <Typed label={forms.limitSource} value={limit.source} set={(source) => set({ ...limit, source })} />
    </div>
  );
}

export const roomsIn = (stays: readonly Stay[]): readonly string[] =>
  [...new Set(stays.map(({ room }) => room))].toSorted();

const ROLES: readonly (RoomRole | '')[] = ROOM_ROLES;

interface RoleProps {
  readonly role: RoomRole | '';
  readonly set: (role: RoomRole | '') => void;
}

export function RoleField({ role, set }: RoleProps) {
  return (
    <OneOf
      label={forms.role}
      values={ROLES}
      chosen={role}
      set={set}
      nameOf={(one) => (one === '' ? '' : ROLE_NAMES[one])}
    />
  );
}

export function SignIn({ stays }: { readonly stays: readonly Stay[] }) {
  const { staff } = useBook();
  const rooms = roomsIn(stays);
  const inside = stays.filter(isInside);
  const [visit] = useState(freshVisit);
  const [person, setPerson] = useState('');
  const [role, setRole] = useState<RoomRole | ''>('');
  const [room, setRoom] = useState(() => (rooms.length === 1 ? roomName(rooms[0] ?? '') : ''));
  const [equipped, setEquipped] = useState<Equipped>({ worn: null, ensemble: '', items: [] });
  const [observer, setObserver] = useState('');
  const [limit, setLimit] = useState(usualLimit);
  const [drill, setDrill] = useState(false);
  const [when, setWhen] = useState(NOW);
  const already = inside.find((stay) => stay.person === person);
  return (
    <EntryForm
      title={LOG.acts.in}
      press={LOG.acts.in}
      kind="room.entered"
      listsAbove
      entry={(now) => {
        const typed = { person, role, room, ...equipped, observer, limit, drill, when };
        const body = enteredOf(typed, visit, now);
        return typeof body === 'string' ? body : { kind: 'room.entered', body };
      }}
    >
      <p className="quiet">{LOG.names}</p>
      <div className="fields">
        <Who label={forms.who} value={person} set={setPerson} />
        <Typed
          label={forms.room}
          value={room}
          set={setRoom}
          among={rooms.map(roomName)}
          hint={forms.roomHint}
        />
      </div>
      <NotListed open={Object.keys(staff).length === 0} />
      {already && <output className="log-sign">▲ {LOG.already(roomName(already.room))}</output>}
      <RoleField role={role} set={setRole} />
      <Equipment equipped={equipped} set={setEquipped} sizes={sizesOf(stays, person)} />
      <div className="fields">
        <Who label={forms.observer} value={observer} set={setObserver} but={[person]} />
      </div>
      <LimitFields limit={limit} set={setLimit} />
      {keeper.unit().wear === undefined && <p className="quiet">{forms.limitNone}</p>}
      <Tick on={drill} set={setDrill}>
        {forms.drill}
      </Tick>
      <WhenField when={when} set={setWhen} />
    </EntryForm>
  );
}
