// What is written of a visit that has begun: the way out, another observer, what was wrong. Nothing is altered by any of them.
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { QUESTIONS } from '../../domain/guiding.ts';
import { ASKED, type Asked } from '../../journal/kinds/rooms.ts';
import { observerOf, type Stay } from '../../journal/views/stay.ts';
import { exitsNow } from '../guide/shell/rooms.ts';
import type { ExitHead } from '../guide/log/exits.ts';
import { Who } from '../journal/Who.tsx';
import { OneOf, Tick } from '../parts/Choices.tsx';
import { TextLine } from '../compose/parts.tsx';
import { words } from '../words.ts';
import { Equipment } from './Equipment.tsx';
import { ASKED_NAMES, LOG } from './labels.ts';
import {
  clock,
  type CorrectTyped,
  correctedOf,
  leftOf,
  localOf,
  roomName,
  statedOf,
  typedItems,
} from './model.ts';
import { EntryForm, NOW, Typed, WhenField } from './parts.tsx';
import { LimitFields, RoleField } from './SignIn.tsx';
import { useClock } from './useLogbook.ts';

const { forms } = LOG;

interface VisitProps {
  readonly stay: Stay;
}

interface Exits {
  /** Of this person, the last that was begun since they went in, and has ended. */
  readonly ended?: ExitHead | undefined;
  /** The donning read aloud that this visit began with, or the exit by which it is known, while it goes on. */
  readonly open?: ExitHead | undefined;
}

function useExits({ visit, person, entered, exit, guided }: Stay): Exits {
  const begunWith = guided ?? visit;
  const [found, setFound] = useState<Exits>({});
  useEffect(() => {
    let current = true;
    exitsNow().then(
      (exits) => {
        const theirs = Object.values(exits)
          .filter((head) => head.wearer === person && head.ended !== null && head.at >= (entered ?? ''))
          .filter((head) => head.exit !== exit)
          .toSorted((a, b) => b.from - a.from);
        const own = Object.hasOwn(exits, begunWith) ? exits[begunWith] : undefined;
        if (current) setFound({ ended: theirs[0], open: own?.ended === null ? own : undefined });
      },
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [begunWith, person, entered, exit]);
  return found;
}

const ASKEDS: readonly (Asked | '')[] = ASKED;

interface AskedProps {
  readonly asked: Asked | '';
  readonly set: (asked: Asked | '') => void;
}

/** That somebody was asked is written; what they answered is of their health, and is not. */
function AskedField({ asked, set }: AskedProps) {
  return (
    <OneOf
      label={forms.asked}
      values={ASKEDS}
      chosen={asked}
      set={set}
      nameOf={(one) => (one === '' ? '' : ASKED_NAMES[one])}
    />
  );
}

export function SignOut({ stay }: VisitProps) {
  const { ended: exit, open } = useExits(stay);
  const now = useClock();
  const [goesWith, setGoesWith] = useState(true);
  const [asked, setAsked] = useState<Asked | ''>('');
  const [when, setWhen] = useState(NOW);
  return (
    <EntryForm
      title={LOG.acts.out}
      press={LOG.acts.out}
      kind="room.left"
      entry={(at) => {
        const linked = goesWith && exit ? exit.exit : null;
        const body = leftOf(stay, { asked, exit: linked, when }, at);
        return typeof body === 'string' ? body : { kind: 'room.left', body };
      }}
    >
      {open && (
        <output className="log-sign">
          ▲ {stay.guided === null ? LOG.open(words.guide.presses.leave) : LOG.guidedOpen}{' '}
          <Link href={`/guide/${open.exit}`} className="inline-link">
            {LOG.openGo}
          </Link>
        </output>
      )}
      <section aria-labelledby="questions" className="log-questions">
        <h2 id="questions">{forms.ask}</h2>
        <ul>
          {QUESTIONS.map(({ id }) => (
            <li key={id}>{words.guide.questions[id]}</li>
          ))}
        </ul>
        <p>
          <b>{LOG.yes}</b> <Link href="/guide/unit">Plan, phones, limits</Link>
        </p>
      </section>
      <AskedField asked={asked} set={setAsked} />
      {exit && (
        <Tick on={goesWith} set={setGoesWith}>
          {forms.exit(clock(exit.at, now))}
        </Tick>
      )}
      <WhenField when={when} set={setWhen} />
    </EntryForm>
  );
}

export function ChangeObserver({ stay }: VisitProps) {
  const [observer, setObserver] = useState('');
  const [when, setWhen] = useState(NOW);
  const known = observerOf(stay);
  return (
    <EntryForm
      title={LOG.acts.observer}
      press={LOG.acts.observer}
      kind="room.observer-changed"
      entry={(now) => {
        if (observer === '') return LOG.mistakes.observer;
        const stated = statedOf(when, now);
        if (typeof stated === 'string') return stated;
        return { kind: 'room.observer-changed', body: { visit: stay.visit, observer, ...stated } };
      }}
    >
      <div className="fields">
        <Who
          label={forms.observer}
          value={observer}
          set={setObserver}
          but={known === null ? [stay.person] : [stay.person, known]}
        />
      </div>
      <WhenField when={when} set={setWhen} />
    </EntryForm>
  );
}

const WHATS = ['change', 'way-out', 'visit'] as const;

const local = (instant: string | null): string => (instant === null ? '' : localOf(Date.parse(instant)));

const typedOf = (stay: Stay): CorrectTyped => ({
  what: 'change',
  person: stay.person,
  role: stay.role ?? '',
  room: roomName(stay.room),
  worn: stay.worn,
  ensemble: stay.ensemble ?? '',
  items: typedItems(stay.items),
  limit: { minutes: String(stay.limit?.minutes ?? ''), source: stay.limit?.source ?? '' },
  entered: local(stay.entered),
  left: local(stay.left),
  asked: stay.asked ?? '',
  reason: '',
});

interface FieldsProps {
  readonly typed: CorrectTyped;
  readonly set: (part: Partial<CorrectTyped>) => void;
}

function ChangeFields({ typed, set }: FieldsProps) {
  return (
    <>
      <div className="fields log-times">
        <Who label={forms.who} value={typed.person} set={(person) => set({ person })} />
        <Typed label={forms.room} value={typed.room} set={(room) => set({ room })} />
        <Typed label="In" type="datetime-local" value={typed.entered} set={(entered) => set({ entered })} />
        <Typed label="Out" type="datetime-local" value={typed.left} set={(left) => set({ left })} />
      </div>
      <RoleField role={typed.role} set={(role) => set({ role })} />
      <Equipment equipped={typed} set={set} sizes={new Map()} />
      <LimitFields limit={typed.limit} set={(limit) => set({ limit })} />
      <AskedField asked={typed.asked} set={(asked) => set({ asked })} />
    </>
  );
}

export function Correct({ stay }: VisitProps) {
  const [typed, setTyped] = useState(() => typedOf(stay));
  const set = (part: Partial<CorrectTyped>): void => setTyped((before) => ({ ...before, ...part }));
  const whats = WHATS.filter((what) => what !== 'way-out' || stay.left !== null);
  return (
    <EntryForm
      title={LOG.acts.correct}
      press={LOG.acts.correct}
      kind="room.corrected"
      entry={(now) => {
        const body = correctedOf(stay, typed, now);
        return typeof body === 'string' ? body : { kind: 'room.corrected', body };
      }}
    >
      <OneOf
        label={forms.correct}
        values={whats}
        chosen={typed.what}
        set={(what) => set({ what })}
        nameOf={(what) => LOG.corrections[what]}
      />
      {typed.what === 'change' && <ChangeFields typed={typed} set={set} />}
      <TextLine label={forms.reason} value={typed.reason} set={(reason) => set({ reason })} long />
    </EntryForm>
  );
}
