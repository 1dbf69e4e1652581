// The line that is on, or the one before it to look at: large, for whom, and what is answered.
import { useRef } from 'react';
import type { Language } from '../../../words/index.ts';
import { keeper } from '../shell/rooms.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { OWN_SCREEN } from './labels.ts';
import { actorsOf, Rows, shownTo } from './Large.tsx';
import { type Largest, useLargest } from './useLargest.ts';

/** What was read before a line; what is only watched has no words of its own. */
export function lineBefore(lines: Desk['state']['shown']['script']['lines'], at: number): number {
  const found = lines.findLastIndex(({ kind }, index) => index < at && kind !== 'look');
  return Math.max(0, found);
}

/** The line that is read again, before the one that is on: to look at, never to undo. */
export function Before({
  desk,
  at,
  on,
}: {
  readonly desk: Desk;
  readonly at: number;
  readonly on: () => void;
}) {
  const { state, words } = desk;
  const line = state.shown.script.lines[at];
  const rows = line?.texts[words.language as Language] ?? Object.values(line?.texts ?? {})[0] ?? [];
  return (
    <section className="g-before" aria-label="The line before">
      <p className="g-who">The line before, to read only. Nothing is undone.</p>
      <Rows rows={rows} language={words.language} />
      <Act press={on}>Back to the line that is on</Act>
    </section>
  );
}

/** Said plainly where capitals are lower than the distance asks for: from how far they are read. */
function TooLow({ largest, wanted }: { readonly largest: Largest; readonly wanted: number }) {
  return (
    <p className="g-missing g-short">
      {OWN_SCREEN.short(largest.capital, largest.metres, wanted)}{' '}
      {keeper.screen().widthMillimetres === undefined && OWN_SCREEN.unmeasured}{' '}
      <span className="g-source">(legibility.capital-angle)</span>
    </p>
  );
}

export function Line({ desk }: { readonly desk: Desk }) {
  const { screen, state, words } = desk;
  const { procedure } = state.shown.script.setup;
  const { phase, line, large, hold } = screen;
  const actors = actorsOf(screen, state.shown);
  const texts = phase === 'stopped' || phase === 'emergency' ? large.slice(0, 1) : shownTo(large, actors);
  const reader = large.find(({ person }) =>
    procedure.people.some((one) => one.id === person && one.role === 'observer'),
  );
  const answer = texts[0]?.answer ?? reader?.answer;
  const watched = line.kind === 'look' && phase === 'reading';
  const isHold = line.kind === 'hold' && phase === 'reading';
  const element = useRef<HTMLElement>(null);
  const largest = useLargest(element);
  return (
    <section
      ref={element}
      className={isHold ? 'g-line hold' : 'g-line'}
      aria-label="The line"
      aria-live="polite"
    >
      <p className="g-who">{roleText(desk, actors)}</p>
      {largest?.wanted !== undefined && <TooLow largest={largest} wanted={largest.wanted} />}
      {texts.map(({ person, rows, language }) => (
        <Rows key={person} rows={rows} language={language} />
      ))}
      {watched && reader && <p className="g-who">{reader.rows.join('. ')}.</p>}
      {answer !== undefined && phase === 'reading' && (
        <p className="g-answer">
          Answer: <b>“{answer}”</b>
        </p>
      )}
      {isHold && hold && (
        <p className="g-source">{words.guide.holdWhy(hold.rank, words.percent(hold.share))} (guide.holds)</p>
      )}
      {screen.signals && (
        <ul className="plain g-signals" aria-label="Hand signals">
          {Object.entries(words.guide.signals).map(([id, { shows, says }]) => (
            <li key={id}>
              <b>{says}</b>: {shows}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** What the observer does with the line, and for whom it is. */
function roleText({ screen, state, words }: Desk, actors: readonly string[]): string {
  const { procedure } = state.shown.script.setup;
  const names = actors.map((person) => words.person(procedure, person)).join(', ');
  const { phase, line } = screen;
  if (phase === 'stopped') return 'Stopped. Only you say when to go on.';
  if (phase === 'emergency') return 'Emergency: read each action aloud.';
  if (phase === 'recap') return `${words.guide.lastConfirmed}. Read again to: ${names}`;
  if (phase === 'ended') return '';
  switch (line.kind) {
    case 'look':
      return `Watch: ${names}`;
    case 'hold':
      return 'Hold: everybody still';
    case 'back':
      return `Says it back: ${names}`;
    case 'question':
      return `Ask: ${names}`;
    case 'all-round':
    case 'inside':
    case 'finish':
      return 'For you';
    default:
      return `Read aloud to: ${names}`;
  }
}
