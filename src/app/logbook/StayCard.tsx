// One person in a room, to be read at arm's length: who, as what, since when, for how long, how much of the limit is left.
import { Link } from 'wouter';
import { leftOfLimit, type Sign } from '../../journal/views/signs.ts';
import { observerOf, type Stay } from '../../journal/views/stay.ts';
import { initialsOf, memberText, type StaffState } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { procedureTitle } from '../model/titles.ts';
import { LOG, NO_ROLE, ROLE_NAMES } from './labels.ts';
import { clock, itemsText, lasting, wornText } from './model.ts';
import { Signs } from './Signs.tsx';

export const roleText = ({ role }: Stay): string => (role === null ? NO_ROLE : ROLE_NAMES[role]);

interface CardProps {
  readonly stay: Stay;
  readonly stays: readonly Stay[];
  readonly signs: readonly Sign[];
  readonly staff: StaffState;
  readonly now: number;
}

function Limit({ stay, now }: { readonly stay: Stay; readonly now: number }) {
  const left = leftOfLimit(stay, now);
  if (stay.limit === null || left === null) return <dd>No limit written</dd>;
  return (
    <dd>
      <b>{left >= 0 ? `${lasting(left)} left` : `${lasting(-left)} OVER`}</b> of {stay.limit.minutes} min{' '}
      <span className="quiet">{stay.limit.source}</span>
    </dd>
  );
}

/** What was written afterwards, and what was put right. */
export function History({ stay, staff, now }: Pick<CardProps, 'stay' | 'staff' | 'now'>) {
  const { writtenIn, writtenOut, corrections, observers, guided } = stay;
  const late = [
    ...(guided === null ? [] : [LOG.guided]),
    ...(writtenIn?.late ? [`In: late entry, written ${clock(writtenIn.at, now)}. ${writtenIn.late}`] : []),
    ...(writtenOut?.late
      ? [`Out: late entry, written ${clock(writtenOut.at, now)}. ${writtenOut.late}`]
      : []),
    ...observers.flatMap((watch) =>
      watch.late && watch.late !== writtenIn?.late ? [`Observer: late entry. ${watch.late}`] : [],
    ),
    ...corrections.map(
      ({ at, by, reason }) => `Corrected ${clock(at, now)} by ${memberText(staff, by)}: ${reason}`,
    ),
  ];
  return (
    <>
      {late.map((line) => (
        <span key={line} className="log-late">
          ✎ {line}
        </span>
      ))}
    </>
  );
}

export function StayCard({ stay, stays, signs, staff, now }: CardProps) {
  const { visit, person, entered, items, drill } = stay;
  const observer = observerOf(stay);
  const { texts } = useBook();
  const worn = wornText(stay, (one) => procedureTitle(one, texts));
  const [who, role] = [memberText(staff, person), roleText(stay)];
  return (
    <li className="log-card" aria-label={`${who}, ${role}`}>
      <div className="log-head">
        <h3>
          {initialsOf(staff, person)} <span className="log-role">{role}</span>
        </h3>
        {drill && <b className="badge">DRILL</b>}
      </div>
      <p className="quiet">{who}</p>
      <Signs signs={signs} stays={stays} />
      <dl className="log-facts">
        <dt>In since</dt>
        <dd>
          <b>{clock(entered ?? '', now)}</b>, for{' '}
          <b>{lasting(Math.max(0, now - Date.parse(entered ?? '')))}</b>
        </dd>
        <dt>Limit</dt>
        <Limit stay={stay} now={now} />
        {(observer !== null || stay.role === 'wearer') && (
          <>
            <dt>Observer</dt>
            <dd>{observer === null ? 'none named' : <b>{memberText(staff, observer)}</b>}</dd>
          </>
        )}
        <dt>Wears</dt>
        <dd>{worn === '' ? 'not written' : worn}</dd>
        {items.length > 0 && (
          <>
            <dt>Sizes, lots</dt>
            <dd>{itemsText(items)}</dd>
          </>
        )}
      </dl>
      <History stay={stay} staff={staff} now={now} />
      <p className="actions">
        <Link href={`/logbook/out/${visit}`} className="button main log-press" aria-label={`Sign out ${who}`}>
          {LOG.acts.out}
        </Link>
        {stay.role !== 'observer' && (
          <Link
            href={`/logbook/observer/${visit}`}
            className="button log-press"
            aria-label={`Change observer of ${who}`}
          >
            {LOG.acts.observer}
          </Link>
        )}
        <Link href={`/logbook/correct/${visit}`} className="button log-press" aria-label={`Correct ${who}`}>
          {LOG.acts.correct}
        </Link>
      </p>
    </li>
  );
}
