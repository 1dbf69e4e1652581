// Who was with somebody between two times: everybody who was in the same room then, with the minutes together, through which
// room, and what of it rests on an entry that is missing.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Stay } from '../../journal/views/stay.ts';
import { companyOf, type Meeting, type Met } from '../../journal/views/together.ts';
import { memberText, type StaffState } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { Who } from '../journal/Who.tsx';
import { Tick } from '../parts/Choices.tsx';
import { Scroll } from '../parts/Scroll.tsx';
import { LOG } from './labels.ts';
import { clock, lasting, localOf, millisecondsOf, roomName } from './model.ts';
import { Typed } from './parts.tsx';
import { roleText } from './StayCard.tsx';
import { useClock } from './useLogbook.ts';

/** Always with its day: the list is printed and read later. */
const dated = (milliseconds: number): string => localOf(milliseconds).replace('T', ' ');

const at = (milliseconds: number, now: number): string => clock(new Date(milliseconds).toISOString(), now);

function notesOf({ open, atMost, stay }: Meeting): string {
  const { writtenIn, writtenOut, corrections } = stay;
  return [
    ...(open ? [LOG.with.open] : []),
    ...(atMost ? [LOG.with.atMost] : []),
    ...(writtenIn?.late || writtenOut?.late ? ['late entry'] : []),
    ...(corrections.length > 0 ? ['corrected'] : []),
    ...(stay.drill ? ['drill'] : []),
  ].join('; ');
}

interface RowsProps {
  readonly met: Met;
  readonly staff: StaffState;
  readonly now: number;
}

function Rows({ met: { person, meetings, together }, staff, now }: RowsProps) {
  return (
    <tbody>
      {meetings.map((meeting, index) => (
        <tr key={`${meeting.stay.visit} ${meeting.span.from}`}>
          {index === 0 && (
            <>
              <th scope="row" rowSpan={meetings.length}>
                {memberText(staff, person)}
              </th>
              <td rowSpan={meetings.length}>
                <b>{lasting(together)}</b>
              </td>
            </>
          )}
          <td>{roomName(meeting.room)}</td>
          <td>{roleText(meeting.stay)}</td>
          <td>
            {at(meeting.span.from, now)} to {at(meeting.span.to, now)}
          </td>
          <td>{notesOf(meeting)}</td>
        </tr>
      ))}
    </tbody>
  );
}

const HEADS = ['Who', 'Together', 'Room', 'As', 'From, to', 'Notes'];

interface AnswerProps {
  readonly stays: readonly Stay[];
  readonly person: string;
  readonly from: number;
  readonly to: number;
  readonly drills: boolean;
}

function Answer({ stays, person, from, to, drills }: AnswerProps) {
  const { staff } = useBook();
  const now = useClock();
  const { met, stays: own, onlyNamed } = companyOf(stays, person, { window: { from, to }, now, drills });
  if (own.length === 0) return <p>{LOG.with.notIn}</p>;
  return (
    <section aria-label="Answer">
      <h2>
        With {memberText(staff, person)}, {dated(from)} to {dated(to)}
      </h2>
      <p>
        Their own stays:{' '}
        {own
          .map(
            ({ room, entered, left }) =>
              `${roomName(room)} ${entered === null ? '(way in not written)' : clock(entered, now)} to ${left === null ? 'now (still in)' : clock(left, now)}`,
          )
          .join('; ')}
      </p>
      {met.length === 0 && <p>{LOG.with.none}</p>}
      {met.length > 0 && (
        <Scroll label="Who was there" className="table-scroll log-table">
          <table>
            <thead>
              <tr>
                {HEADS.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            {met.map((one) => (
              <Rows key={one.person} met={one} staff={staff} now={now} />
            ))}
          </table>
        </Scroll>
      )}
      {onlyNamed.length > 0 && (
        <p>
          ▲ {LOG.with.named} {onlyNamed.map((one) => memberText(staff, one)).join(', ')}
        </p>
      )}
      <p className="quiet">{LOG.with.minutesNote}</p>
      <p>
        <b>{LOG.with.judged}</b>
      </p>
      <p className="actions no-print">
        <Button className="button log-press" onPress={() => window.print()}>
          {LOG.acts.print}
        </Button>
      </p>
    </section>
  );
}

const DAY = 24 * 3_600_000;

export function WithPage({ stays }: { readonly stays: readonly Stay[] }) {
  const [person, setPerson] = useState('');
  const [from, setFrom] = useState(() => localOf(Date.now() - DAY));
  const [to, setTo] = useState(() => localOf(Date.now() + 60_000));
  const [drills, setDrills] = useState(false);
  const [start, end] = [millisecondsOf(from), millisecondsOf(to)];
  const asked = person !== '' && start !== undefined && end !== undefined;
  return (
    <>
      <p className="lead">{LOG.with.lead}</p>
      <div className="fields log-times no-print">
        <Who label="With whom" value={person} set={setPerson} />
        <Typed label="From" type="datetime-local" value={from} set={setFrom} />
        <Typed label="To" type="datetime-local" value={to} set={setTo} />
      </div>
      <div className="no-print">
        <Tick on={drills} set={setDrills}>
          Drills too
        </Tick>
      </div>
      {asked && start <= end && (
        <Answer stays={stays} person={person} from={start} to={end} drills={drills} />
      )}
      {asked && start > end && <p role="alert">“To” lies before “From”.</p>}
    </>
  );
}
