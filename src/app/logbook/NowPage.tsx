// Who is in each room now. Rooms stand beside one another, each with whoever is in it, the longest first.
import { Link } from 'wouter';
import { isInside } from '../../journal/views/room.ts';
import { type Sign, signsOf } from '../../journal/views/signs.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { EvidenceLine } from '../parts/EvidenceLine.tsx';
import { LOG } from './labels.ts';
import { clock, lasting, roomName } from './model.ts';
import { roomsIn } from './SignIn.tsx';
import { Signs } from './Signs.tsx';
import { StayCard } from './StayCard.tsx';
import { boundsNow, useClock } from './useLogbook.ts';

/** Rooms in which somebody was within so long still stand there, empty. */
const LATELY = 24 * 3_600_000;

function roomsNow(stays: readonly Stay[], now: number): readonly string[] {
  return roomsIn(
    stays.filter((stay) => !stay.undone && (isInside(stay) || now - Date.parse(stay.left ?? '') < LATELY)),
  );
}

interface RoomProps {
  readonly room: string;
  readonly stays: readonly Stay[];
  readonly signs: readonly Sign[];
  readonly now: number;
}

function Room({ room, stays, signs, now }: RoomProps) {
  const { staff } = useBook();
  const inside = stays.filter((stay) => stay.room === room && isInside(stay));
  const id = `room-${room}`;
  return (
    <section className="log-room" aria-labelledby={id}>
      <h2 id={id}>
        {roomName(room)}: {inside.length} in
      </h2>
      {inside.length === 0 && <p>{LOG.nobodyIn(roomName(room))}</p>}
      <ul className="plain log-cards">
        {inside.map((stay) => (
          <StayCard
            key={stay.visit}
            stay={stay}
            stays={stays}
            signs={signs.filter(({ visit }) => visit === stay.visit)}
            staff={staff}
            now={now}
          />
        ))}
      </ul>
    </section>
  );
}

/** Ways out without a way in: until it is put right, nobody knows how long they were inside, nor with whom. */
function Unopened({ stays, signs, now }: Omit<RoomProps, 'room'>) {
  const { staff } = useBook();
  const unopened = stays.filter(({ entered, undone }) => entered === null && !undone);
  if (unopened.length === 0) return null;
  return (
    <section aria-labelledby="unopened">
      <h2 id="unopened">Came out, never signed in</h2>
      <ul className="plain">
        {unopened.map((stay) => (
          <li key={stay.visit} className="log-card">
            <b>{memberText(staff, stay.person)}</b>, {roomName(stay.room)}, out {clock(stay.left ?? '', now)}
            <Signs signs={signs.filter(({ visit }) => visit === stay.visit)} stays={stays} />
            <p className="actions">
              <Link href={`/logbook/correct/${stay.visit}`} className="button log-press">
                {LOG.acts.correct}
              </Link>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function NowPage({ stays }: { readonly stays: readonly Stay[] }) {
  const now = useClock();
  const bounds = boundsNow();
  const signs = signsOf(stays, now, bounds);
  const rooms = roomsNow(stays, now);
  return (
    <>
      <p className="lead">{LOG.lead}</p>
      <p className="actions">
        <Link href="/logbook/in" className="button main log-press">
          {LOG.acts.in}
        </Link>
      </p>
      {rooms.length === 0 && <p>{LOG.nobody}</p>}
      <div className="log-rooms">
        {rooms.map((room) => (
          <Room key={room} room={room} stays={stays} signs={signs} now={now} />
        ))}
      </div>
      <Unopened stays={stays} signs={signs} now={now} />
      <details>
        <summary>When a sign comes</summary>
        <p>
          “The limit is near” comes {lasting(bounds.warn * 60_000)} before the limit. The limit itself is the
          unit’s, written with each visit.
        </p>
        <EvidenceLine id="guide.wear-warning" />
        <EvidenceLine id="logbook.past-limit" />
        <EvidenceLine id="logbook.no-limit" />
      </details>
    </>
  );
}
