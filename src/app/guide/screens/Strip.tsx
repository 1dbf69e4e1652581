// The strip over the line: drill or exit, where one is, who is who, what is saved, what the device does and does not do, and times.
import { Link } from 'wouter';
import type { NoticeId } from '../../../domain/guiding.ts';
import { capital } from '../../../words/capital.ts';
import type { Language } from '../../../words/index.ts';
import { initialsOf } from '../../../versions/staff.ts';
import { useBook } from '../../journal/useBook.ts';
import { roomAfterWord } from '../../logbook/model.ts';
import { heldBack, statusOf } from '../../../sync/status.ts';
import { useSync } from '../../sync/useSync.ts';
import { turnLight, useLight } from '../shell/light.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { Reviewed } from './Reviewed.tsx';
import { Times } from './Timers.tsx';
import { useAwake, useSpeech } from './useRun.ts';

function Saved({ desk }: { readonly desk: Desk }) {
  const { screen, words, run, press } = desk;
  const { saving, unsaved, stalled } = screen;
  const { line } = words.guide.labels;
  const sync = useSync();
  const waiting = sync ? heldBack(statusOf(sync.state, sync.written)) : 0;
  return (
    <output className={unsaved > 0 ? 'g-saved bad' : 'g-saved'} data-saving={saving ? 'yes' : 'no'}>
      {saving
        ? words.guide.saving
        : unsaved > 0
          ? `${words.guide.unsaved(unsaved)}${stalled ? '' : `: ${run.trouble()}`}`
          : waiting > 0
            ? line.savedHere(String(waiting))
            : line.saved}
      {unsaved > 0 && !saving && !stalled && (
        <Act press={() => press({ is: 'retry' })}>{words.guide.presses.retry}</Act>
      )}
    </output>
  );
}

function Voice({ desk }: { readonly desk: Desk }) {
  const speech = useSpeech(desk.run);
  return (
    <Act pressed={speech === 'off'} press={() => desk.run.mute(speech !== 'off')}>
      {desk.words.guide.labels.line.voiceOff}
    </Act>
  );
}

/** What stands over every line; the other notices stand below it. */
const URGENT: readonly NoticeId[] = ['unapproved', 'invented', 'does-not-fit', 'left-bare'];

export function Notices({ desk }: { readonly desk: Desk }) {
  const { screen, words, state } = desk;
  const below = screen.notices.filter((notice) => notice !== 'drill' && !URGENT.includes(notice));
  return (
    <ul className="plain g-notices" aria-label={words.guide.labels.line.moreNotices}>
      {below.map((notice) => (
        <li key={notice}>{words.guide.notices[notice]}</li>
      ))}
      <li>
        <Reviewed language={words.language as Language} wording={state.shown.script.setup.unit.wording} />
      </li>
    </ul>
  );
}

export function Strip({ desk }: { readonly desk: Desk }) {
  const { screen, state, words, open } = desk;
  const { staff } = useBook();
  const light = useLight();
  const held = useAwake();
  const speech = useSpeech(desk.run);
  const { people, room, script } = state.shown;
  const { line } = words.guide.labels;
  const roles = [
    ['wearer', people.wearer],
    ['observer', people.observer],
    ...people.assistants.map((person) => ['assistant', person] as const),
  ] as const;
  return (
    <header className="g-strip">
      <div className="g-strip-text">
        {screen.drill && <p className="g-drill">{words.guide.notices.drill}</p>}
        <h1>
          {script.setup.procedure.title} <span className="g-room">{line.room(roomAfterWord(room))}</span>
        </h1>
        <p className="g-step">{line.step(String(screen.step), String(screen.steps))}</p>
        <Saved desk={desk} />
        <p className="g-people">
          {roles.map(([role, person]) => (
            <span key={role + person}>
              {line.colon(capital(words.role(role)))} {initialsOf(staff, person)}{' '}
            </span>
          ))}
        </p>
        {speech === 'no-voice' && <p className="g-missing">{line.noVoice}</p>}
        {!held && !state.shown.ended && <p className="g-missing">{line.goesDark}</p>}
        <ul className="plain g-notices" aria-label={line.notices}>
          {screen.notices
            .filter((notice) => URGENT.includes(notice))
            .map((notice) => (
              <li key={notice}>{words.guide.notices[notice]}</li>
            ))}
        </ul>
      </div>
      <div className="g-acts">
        <Act pressed={light === 'night'} press={turnLight}>
          {line.night}
        </Act>
        <Voice desk={desk} />
        <Act press={() => open('more')}>{line.more}</Act>
        <Link href="/guide">{line.allExits}</Link>
      </div>
      <Times timers={screen.timers} guide={words.guide} />
    </header>
  );
}
