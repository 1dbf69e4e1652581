// The second display, for the wearer or the helper, in a window of its own: the line in capitals as high as they must be to be
// read from where people stand, the step's picture, the time, and STOP. It only shows what the observer's window sends.
import { type CSSProperties, useEffect, useRef, useState } from 'react';
import type { Role } from '../../../domain/procedure.ts';
import { wordsFor } from '../../../words/index.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { Picture } from '../../picture/Picture.tsx';
import { linkOf } from '../shell/link.ts';
import type { DisplayView, LinkMessage } from '../shell/view.ts';
import { Act } from './Act.tsx';
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

function Line({ view, role }: { readonly view: DisplayView; readonly role: Role }) {
  const { screen, procedure, display, actors } = view;
  const mine = procedure.people.filter((person) => person.role === role).map(({ id }) => id);
  const text = screen.large.find(({ person }) => mine.includes(person)) ?? screen.large[0];
  const isMine = actors.some((person) => mine.includes(person));
  const style = { '--capitals': `${(100 * screen.fit.size) / display.widthMillimetres}vw` } as CSSProperties;
  const words = wordsFor(text?.language ?? 'en');
  const calm = screen.phase === 'reading' || screen.phase === 'recap';
  return (
    <section
      className={`d-line ${calm && isMine ? 'mine' : ''} ${screen.phase}`}
      aria-live="polite"
      aria-label="The line"
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
      {calm && text?.answer !== undefined && isMine && <p className="d-answer">“{text.answer}”</p>}
      <Times timers={screen.timers} guide={words.guide} />
    </section>
  );
}

function goFull(): void {
  document.documentElement.requestFullscreen().catch(() => undefined);
}

interface ShownProps {
  readonly exit: string;
  readonly role: 'wearer' | 'assistant';
  readonly view: DisplayView;
  readonly silent: boolean;
}

function Shown({ exit, role, view, silent }: ShownProps) {
  const board = useBoard(view.procedure);
  const { screen, procedure, at } = view;
  const words = wordsFor(screen.large[0]?.language ?? 'en');
  const showsStep = at < procedure.steps.length && screen.phase !== 'emergency';
  return (
    <main id="main" className={`d-page ${screen.phase === 'stopped' ? 'stopped' : ''}`}>
      <div className="d-top">
        {screen.drill && <span className="g-drill">{words.guide.notices.drill}</span>}
        <h1>
          {procedure.title}: {words.role(role)}
        </h1>
        <span>
          {screen.step} / {screen.steps}
        </span>
        {silent && <b role="alert">Nothing comes from the observer’s screen. Listen to the observer.</b>}
        {screen.fit.fault && <span className="g-missing">{words.guide.fits[screen.fit.fault]}</span>}
        <Act press={goFull}>Full screen</Act>
        <Act kind="stop" press={() => linkOf<LinkMessage>(exit).post({ is: 'stop', role })}>
          {words.guide.presses.stop}
        </Act>
      </div>
      <Line view={view} role={role} />
      {showsStep && board && screen.phase !== 'stopped' && (
        <div className="d-picture">
          <Picture procedure={procedure} board={board} step={at} moment="before" alone />
        </div>
      )}
    </main>
  );
}

interface DisplayPageProps {
  readonly exit: string;
  readonly role: 'wearer' | 'assistant';
}

export function DisplayPage({ exit, role }: DisplayPageProps) {
  const { view, silent } = useView(exit);
  useTitle(role === 'wearer' ? 'Wearer’s display' : 'Helper’s display');
  if (!view)
    return (
      <div className="g-page" data-light="day">
        <main id="main">
          <h1>{role === 'wearer' ? 'Wearer’s display' : 'Helper’s display'}</h1>
          <p>Open the guide of this exit in another window of this browser: its line will be shown here.</p>
        </main>
      </div>
    );
  return (
    <div className="g-page" data-light={view.light}>
      <Shown exit={exit} role={role} view={view} silent={silent} />
    </div>
  );
}
