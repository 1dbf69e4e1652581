// The line that is on, or the one before it to look at: large, for whom, and what is answered.
import { useRef } from 'react';
import type { Language, Words } from '../../../words/index.ts';
import { keeper } from '../shell/rooms.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { actorsOf, Rows, rowsIn, shownTo } from './Large.tsx';
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
  const rows = rowsIn(line, words.language as Language);
  const { labels } = words.guide;
  return (
    <section className="g-before" aria-label={labels.line.before}>
      <p className="g-who">{labels.line.beforeSays}</p>
      <Rows rows={rows} language={words.language} />
      <Act press={on}>{labels.line.backToLineOn}</Act>
    </section>
  );
}

interface TooLowProps {
  readonly largest: Largest;
  readonly wanted: number;
  readonly words: Words;
}

/** Said plainly where capitals are lower than the distance asks for: from how far they are read. */
function TooLow({ largest, wanted, words }: TooLowProps) {
  const { line } = words.guide.labels;
  const tenths = new Intl.NumberFormat(words.language, {
    minimumFractionDigits: 1,
    maximumFractionDigits: 1,
  });
  const [capital, metres] = [tenths.format(largest.capital), tenths.format(largest.metres)];
  return (
    <p className="g-missing g-short">
      {line.tooLow(capital, metres, new Intl.NumberFormat(words.language).format(wanted))}{' '}
      {keeper.screen().widthMillimetres === undefined && line.unmeasured}{' '}
      <span className="g-source">(legibility.capital-angle)</span>
    </p>
  );
}

export function Line({ desk }: { readonly desk: Desk }) {
  const { screen, state, words } = desk;
  const { procedure } = state.shown.script.setup;
  const { phase, line, large, hold } = screen;
  const { labels } = words.guide;
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
      aria-label={labels.line.line}
      aria-live="polite"
    >
      <p className="g-who">{roleText(desk, actors)}</p>
      {largest?.wanted !== undefined && <TooLow largest={largest} wanted={largest.wanted} words={words} />}
      {texts.map(({ person, rows, language }) => (
        <Rows key={person} rows={rows} language={language} />
      ))}
      {watched && reader && <p className="g-who">{reader.rows.join('. ')}.</p>}
      {answer !== undefined && phase === 'reading' && (
        <p className="g-answer">
          {labels.line.colon(labels.line.answer)} <b>{labels.line.spoken(answer)}</b>
        </p>
      )}
      {isHold && hold && (
        <p className="g-source">{words.guide.holdWhy(hold.rank, words.percent(hold.share))} (guide.holds)</p>
      )}
      {screen.signals && (
        <ul className="plain g-signals" aria-label={labels.line.signals}>
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
  const { lastConfirmed, labels } = words.guide;
  const { duty } = labels;
  if (phase === 'stopped') return duty.stopped;
  if (phase === 'emergency') return duty.emergency;
  if (phase === 'recap') return `${lastConfirmed}. ${duty.again(names)}`;
  if (phase === 'ended') return '';
  switch (line.kind) {
    case 'look':
      return duty.watch(names);
    case 'hold':
      return duty.hold;
    case 'back':
      return duty.back(names);
    case 'question':
      return duty.ask(names);
    case 'all-round':
    case 'inside':
    case 'finish':
      return duty.own;
    default:
      return duty.read(names);
  }
}
