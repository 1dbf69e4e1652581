// The strip over the line: drill or exit, where one is, who is who, what is saved, and what the device does and does not do.
import { Link } from 'wouter';
import type { NoticeId } from '../../../domain/guiding.ts';
import { memberText } from '../../../versions/staff.ts';
import { useBook } from '../../journal/useBook.ts';
import { turnLight, useLight } from '../shell/light.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { useAwake, useSpeech } from './useRun.ts';

function Saved({ desk }: { readonly desk: Desk }) {
  const { screen, words, run, press } = desk;
  const { saving, unsaved, stalled } = screen;
  return (
    <output className={unsaved > 0 ? 'g-saved bad' : 'g-saved'}>
      {saving
        ? words.guide.saving
        : unsaved > 0
          ? `${words.guide.unsaved(unsaved)}${stalled ? '' : `: ${run.trouble()}`}`
          : 'Saved'}
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
      Voice off
    </Act>
  );
}

/** What stands over every line; the other notices stand below it. */
const URGENT: readonly NoticeId[] = ['unapproved', 'invented', 'does-not-fit', 'left-bare'];

export function Notices({ desk }: { readonly desk: Desk }) {
  const { screen, words } = desk;
  const below = screen.notices.filter((notice) => notice !== 'drill' && !URGENT.includes(notice));
  return (
    <ul className="plain g-notices" aria-label="More notices">
      {below.map((notice) => (
        <li key={notice}>{words.guide.notices[notice]}</li>
      ))}
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
  const roles = [
    ['Wearer', people.wearer],
    ['Observer', people.observer],
    ...people.assistants.map((person) => ['Assistant', person] as const),
  ] as const;
  return (
    <header className="g-strip">
      <div className="g-strip-text">
        {screen.drill && <p className="g-drill">{words.guide.notices.drill}</p>}
        <h1>
          {script.setup.procedure.title} <span className="g-room">Room {room}</span>
        </h1>
        <p className="g-step">
          Step {screen.step} of {screen.steps}
        </p>
        <Saved desk={desk} />
        <p className="g-people">
          {roles.map(([role, person]) => (
            <span key={role + person}>
              {role}: {memberText(staff, person)}{' '}
            </span>
          ))}
        </p>
        {speech === 'no-voice' && (
          <p className="g-missing">No voice for this language here: read it yourself.</p>
        )}
        {!held && !state.shown.ended && <p className="g-missing">This screen may go dark by itself.</p>}
        <ul className="plain g-notices" aria-label="Notices">
          {screen.notices
            .filter((notice) => URGENT.includes(notice))
            .map((notice) => (
              <li key={notice}>{words.guide.notices[notice]}</li>
            ))}
        </ul>
      </div>
      <div className="g-acts">
        <Act pressed={light === 'night'} press={turnLight}>
          Night
        </Act>
        <Voice desk={desk} />
        <Act press={() => open('more')}>More</Act>
        <Link href="/guide">All exits</Link>
      </div>
    </header>
  );
}
