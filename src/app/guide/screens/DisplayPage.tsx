// The second display, for the wearer or the assistant, in a window of its own: the line in capitals as high as they must be to be
// read from where people stand, the same picture as on the observer's screen, the time, and STOP. It only shows what the
// observer's window sends.
import { type CSSProperties, useEffect, useMemo, useRef, useState } from 'react';
import type { Procedure } from '../../../domain/procedure.ts';
import { type Words, wordsFor } from '../../../words/index.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { Picture } from '../../picture/Picture.tsx';
import { words as pageWords } from '../../words.ts';
import { linkOf } from '../shell/link.ts';
import type { DisplayView, LinkMessage } from '../shell/view.ts';
import { Act } from './Act.tsx';
import { PictureKey } from './PictureKey.tsx';
import { withRecorded } from './recorded.ts';
import { Times } from './Timers.tsx';
import { useBoard } from './useBoard.ts';

/** Nothing heard for so long: the observer's window is gone, or asleep. */
const SILENT = 10_000;

function useView(exit: string): { readonly view: DisplayView | undefined; readonly silent: boolean } {
  const [view, setView] = useState<DisplayView>();
  const [silent, setSilent] = useState(false);
  const heard = useRef(0);
  useEffect(() => {
    const link = linkOf<LinkMessage>(exit);
    const deaf = link.listen((message) => {
      if (message.is !== 'shown' && message.is !== 'here') return;
      heard.current = Date.now();
      setSilent(false);
      if (message.is === 'shown') setView(message.view);
    });
    heard.current = Date.now();
    link.post({ is: 'hello' });
    const watch = setInterval(() => setSilent(Date.now() - heard.current > SILENT), 1000);
    return () => {
      deaf();
      clearInterval(watch);
    };
  }, [exit]);
  return { view, silent };
}

type DisplayRole = 'wearer' | 'assistant';

const theirs = ({ people }: Procedure, role: DisplayRole): readonly string[] =>
  people.filter((person) => person.role === role).map(({ id }) => id);

/** What is read to those whose display it is; a procedure may name nobody of them. */
function textFor({ screen: { large }, procedure }: DisplayView, role: DisplayRole) {
  const mine = theirs(procedure, role);
  return large.find(({ person }) => mine.includes(person)) ?? large[0];
}

interface LineProps {
  readonly view: DisplayView;
  readonly role: DisplayRole;
  readonly words: Words;
}

function Line({ view, role, words }: LineProps) {
  const { screen, procedure, display, actors } = view;
  const mine = theirs(procedure, role);
  const text = textFor(view, role);
  const isMine = actors.some((person) => mine.includes(person));
  const style = { '--capitals': `${(100 * screen.fit.size) / display.widthMillimetres}vw` } as CSSProperties;
  const calm = screen.phase === 'reading' || screen.phase === 'recap';
  return (
    <section
      className={`d-line ${calm && isMine ? 'mine' : ''} ${screen.phase}`}
      aria-live="polite"
      aria-label={words.guide.labels.line.line}
    >
      {calm && (
        <p className="d-for">
          {isMine ? '▶ ' : ''}
          {actors.map((person) => words.person(procedure, person)).join(', ')}
        </p>
      )}
      <p className="d-rows" style={style} lang={text?.language}>
        {text?.rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are never reordered, and two may say the same
          <span key={`${index}-${row}`}>{row}</span>
        ))}
      </p>
      {calm && text?.answer !== undefined && isMine && (
        <p className="d-answer">{words.guide.labels.line.spoken(text.answer)}</p>
      )}
      <Times timers={screen.timers} guide={words.guide} />
    </section>
  );
}

/** The plan's board is worked out here, from the same procedure; only where the exit is worse than that is told. */
function StepPicture({ view, words }: Omit<LineProps, 'role'>) {
  const { procedure, pictured } = view;
  const planned = useBoard(procedure);
  const board = useMemo(() => planned && pictured && withRecorded(planned, pictured), [planned, pictured]);
  if (!board || !pictured) return null;
  const { step, moment } = pictured;
  return (
    <div className="d-picture">
      <Picture procedure={procedure} board={board} step={step} moment={moment} alone whole />
      <PictureKey words={words} recorded={pictured} />
    </div>
  );
}

function goFull(): void {
  document.documentElement.requestFullscreen().catch(() => undefined);
}

interface ShownProps {
  readonly exit: string;
  readonly role: DisplayRole;
  readonly view: DisplayView;
  readonly silent: boolean;
}

function Shown({ exit, role, view, silent }: ShownProps) {
  const { screen, procedure } = view;
  const words = wordsFor(textFor(view, role)?.language ?? 'en');
  const { labels } = words.guide;
  return (
    <main id="main" className={`d-page ${screen.phase === 'stopped' ? 'stopped' : ''}`}>
      <div className="d-top">
        {screen.drill && <span className="g-drill">{words.guide.notices.drill}</span>}
        <h1>
          {words.guide.labels.line.colon(procedure.title)} {words.role(role)}
        </h1>
        <span>
          {screen.step} / {screen.steps}
        </span>
        {silent && <b role="alert">{labels.display.silent}</b>}
        {screen.fit.fault && <span className="g-missing">{words.guide.fits[screen.fit.fault]}</span>}
        <Act press={goFull}>{labels.display.full}</Act>
        <Act kind="stop" press={() => linkOf<LinkMessage>(exit).post({ is: 'stop', role })}>
          {words.guide.presses.stop}
        </Act>
      </div>
      <Line view={view} role={role} words={words} />
      <StepPicture view={view} words={words} />
    </main>
  );
}

interface DisplayPageProps {
  readonly exit: string;
  readonly role: DisplayRole;
}

export function DisplayPage({ exit, role }: DisplayPageProps) {
  const { view, silent } = useView(exit);
  const words = view ? wordsFor(textFor(view, role)?.language ?? 'en') : pageWords;
  const { display } = words.guide.labels;
  useTitle(display[role]);
  if (!view)
    return (
      <div className="g-page" data-light="day" lang={words.language}>
        <main id="main">
          <h1>{display[role]}</h1>
          <p>{display.waits}</p>
        </main>
      </div>
    );
  return (
    <div className="g-page" data-light={view.light} lang={words.language}>
      <Shown exit={exit} role={role} view={view} silent={silent} />
    </div>
  );
}
