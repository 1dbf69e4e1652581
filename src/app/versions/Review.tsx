// What the reviewer decides: approve with a day to look again, or send back with the reason. Nobody approves what they sent
// themselves.
import { useState } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import type { ProcedureVersion } from '../../journal/views/versions.ts';
import { daysBetween, isDay, yearLater } from '../../versions/days.ts';
import type { Hindrance } from '../../versions/sending.ts';
import { memberText } from '../../versions/staff.ts';
import { TextLine } from '../compose/parts.tsx';
import { useBar } from '../journal/useBar.ts';
import { book, useBook } from '../journal/useBook.ts';
import { membersOf, NotListed, Who } from '../journal/Who.tsx';
import { Ticks, Tick } from '../parts/Choices.tsx';
import { Confirm } from '../parts/Confirm.tsx';
import { Day } from '../parts/Day.tsx';
import { today as todayNow } from '../today.ts';
import { counted, HINDERS } from './labels.ts';
import { approving, sendingBack } from './model.ts';
import { Told } from './Told.tsx';

export interface DecideProps {
  readonly procedure: string;
  readonly version: ProcedureVersion;
  readonly file: Procedure;
  readonly inForce: ProcedureVersion | undefined;
  /** What the check says against it; empty where nothing does. */
  readonly hinders: readonly Hindrance[];
  readonly today: string;
  readonly written: (what: string) => void;
}

function lacks(people: number, on: string, reviewOn: string, today: string): string | undefined {
  if (people === 0) return 'Choose who approves.';
  if (!isDay(on) || !isDay(reviewOn)) return 'Say the day, and the day to look at it again.';
  // It would be in force from now on, and say that it is approved on a day to come.
  if (daysBetween(today, on) > 0) return 'The day of approval has not come yet.';
  return daysBetween(on, reviewOn) > 0 ? undefined : 'It is looked at again after the day of approval.';
}

/** Why nobody can approve it as it is. */
function Hinders({ file, hinders, today }: Pick<DecideProps, 'file' | 'hinders' | 'today'>) {
  if (hinders.length === 0) return null;
  return (
    <ul className="hinders plain">
      {hinders.map((hindrance) => (
        <li key={hindrance.code}>
          {hindrance.code === 'not-checked'
            ? 'It can be approved once the check has run on it to its end.'
            : HINDERS[hindrance.code]}
          <Told file={file} hindrance={hindrance} today={today} />
          {hindrance.code === 'review-past' && <p>Send it back, so that this can be done in the draft.</p>}
        </li>
      ))}
    </ul>
  );
}

function Approve({ procedure, version, file, inForce, hinders, today, written }: DecideProps) {
  const { staff } = useBook();
  const bar = useBar('procedure.approved');
  const [chosen, choose] = useState<ReadonlySet<string>>(new Set());
  const [on, setOn] = useState(today);
  const [reviewOn, setReviewOn] = useState(yearLater(today));
  const [replace, setReplace] = useState(true);
  const members = membersOf(staff).filter(({ person }) => person !== version.sent?.by);
  const people = members.flatMap(({ person }) => (chosen.has(person) ? [person] : []));
  const missing = lacks(people.length, on, reviewOn, today);
  const replaced = replace ? inForce : undefined;
  const names = people.map((one) => memberText(staff, one)).join(' and ');
  const and = [
    ...(file.accepted.length > 0 ? [`${counted(file.accepted.length, 'departure')} accepted with it`] : []),
    ...(replaced ? [`version ${replaced.version} retired`] : []),
  ];
  const also = and.length > 0 ? `, ${and.join(', ')}` : '';
  const write = async (): Promise<void> => {
    const acts = approving({
      procedure,
      version,
      file,
      people,
      on,
      reviewOn,
      today: todayNow(),
      ...(replaced ? { replaced } : {}),
    });
    await book.write(acts);
    written(`Version ${version.version} is approved and in force.`);
  };
  return (
    <section aria-labelledby="approve-title">
      <h3 id="approve-title">Approve it</h3>
      <Hinders file={file} hinders={hinders} today={today} />
      {members.length === 0 ? (
        <p className="quiet">Whoever sent it cannot approve it, and nobody else is in the staff list.</p>
      ) : (
        <Ticks
          label="Who approves (never whoever sent it)"
          values={members.map(({ person }) => person)}
          chosen={chosen}
          set={choose}
          nameOf={(person) => memberText(staff, person)}
        />
      )}
      <div className="fields">
        <Day label="Day of approval" value={on} set={setOn} />
        <Day label="To be looked at again by" value={reviewOn} least={on} set={setReviewOn} />
      </div>
      {inForce && (
        <Tick on={replace} set={setReplace}>
          Retire version {inForce.version}, which is in force now
        </Tick>
      )}
      <p className="actions">
        <Confirm
          label={`Approve version ${version.version} …`}
          title={`Approve version ${version.version}`}
          sentence={`The journal will say that ${names} approved version ${version.version} of “${file.title}” on ${on}, to be looked at again by ${reviewOn}${also}.`}
          isDisabled={hinders.length > 0 || missing !== undefined}
          bar={bar}
          write={write}
        />
        <output className="quiet">{bar ? '' : missing}</output>
      </p>
    </section>
  );
}

function SendBack({ procedure, version, file, written }: DecideProps) {
  const { staff } = useBook();
  const bar = useBar('procedure.sent-back');
  const [who, setWho] = useState('');
  const [reason, setReason] = useState('');
  const missing = who === '' ? 'Choose who sends it back.' : reason.trim() === '' ? 'Say why.' : undefined;
  const write = async (): Promise<void> => {
    await book.write(sendingBack(procedure, version, who, reason.trim()));
    written(`Version ${version.version} was sent back.`);
  };
  return (
    <section aria-labelledby="back-title">
      <h3 id="back-title">Send it back</h3>
      <div className="fields">
        <Who label="Who sends it back" value={who} set={setWho} />
        <TextLine long label="Why, and what is to be changed" value={reason} set={setReason} />
      </div>
      <p className="actions">
        <Confirm
          main={false}
          label="Send it back …"
          title={`Send version ${version.version} back`}
          sentence={`The journal will say that ${memberText(staff, who)} sent version ${version.version} of “${file.title}” back, because: ${reason.trim()}`}
          isDisabled={missing !== undefined}
          bar={bar}
          write={write}
        />
        <output className="quiet">{bar ? '' : missing}</output>
      </p>
    </section>
  );
}

export function Decide(props: DecideProps) {
  const bar = useBar('procedure.approved');
  return (
    <section aria-labelledby="decide-title" className="decide">
      <h2 id="decide-title">Decide</h2>
      {bar && (
        <p className="notice" role="note">
          {bar}
        </p>
      )}
      <Approve {...props} />
      <SendBack {...props} />
      <NotListed />
    </section>
  );
}
