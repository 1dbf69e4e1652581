// The observer's screen: one line, large; who acts on it and what is answered; times; and the presses, always in their places.
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { Press } from '../../../guide/index.ts';
import { type Words, wordsFor } from '../../../words/index.ts';
import { type KeyMeaning, meaningOf, nextPress, steady } from '../shell/presses.ts';
import { useWide } from '../../parts/useWide.ts';
import type { Run } from '../shell/runner.ts';
import { type Desk, languageOfExit, type Panel as PanelName } from './desk.ts';
import { Aside, hasAside } from './Aside.tsx';
import { Card, CardSide } from './Emergency.tsx';
import { Before, Line, lineBefore } from './LineView.tsx';
import { Middle } from './Middle.tsx';
import { Coverage, Over, Wear } from './Over.tsx';
import { Presses, Told } from './Presses.tsx';
import { Side } from './Side.tsx';
import { Notices, Strip } from './Strip.tsx';
import { After } from './Suspects.tsx';
import { Owed, SourceOf } from './Timers.tsx';
import { useDisplays } from './useDisplays.ts';
import { usePictured } from './usePictured.ts';
import { useShown } from './useRun.ts';

/** How a press was made, for the record of an answer. */
type Means = 'touch' | 'key' | 'pedal';

const PEDAL: readonly string[] = ['PageDown', 'PageUp'];

function pressFor(name: ReturnType<typeof nextPress>, means: Means): Press | undefined {
  switch (name) {
    case 'seen':
      return { is: 'seen', means };
    case 'forward':
    case 'start-timer':
    case 'leave':
    case 'end':
      return { is: name };
    default:
      return undefined;
  }
}

/** The keys and the pedal, whatever has the focus. */
function useKeys(act: (meaning: KeyMeaning, means: Means) => void): void {
  const last = useRef(act);
  useEffect(() => {
    last.current = act;
  });
  useEffect(() => {
    const hear = (event: KeyboardEvent): void => {
      const at = event.target instanceof HTMLElement ? event.target : document.body;
      const on = at.matches('input, textarea, select')
        ? 'text'
        : at.matches('button, a, summary')
          ? 'control'
          : 'page';
      const meaning = meaningOf(event, on);
      if (!meaning) return;
      event.preventDefault();
      last.current(meaning, PEDAL.includes(event.key) ? 'pedal' : 'key');
    };
    window.addEventListener('keydown', hear, true);
    return () => window.removeEventListener('keydown', hear, true);
  }, []);
}

function useDesk(run: Run): Desk {
  const { state, screen } = useShown(run);
  const [panel, open] = useState<PanelName>('none');
  const [tried, setTried] = useState<Desk['tried']>('seen');
  const counts = useRef(steady());
  const { setup } = state.shown.script;
  const language = languageOfExit(state);
  const words: Words = useMemo(() => wordsFor(language, setup.unit.wording), [setup, language]);
  const press = useCallback(
    (what: Press, by?: string | null): void => {
      if (what.is !== 'stop' && !counts.current(performance.now())) return;
      if (what.is === 'seen' || what.is === 'not-seen') setTried(what.is);
      if (by === undefined) run.press(what);
      else run.press(what, by);
    },
    [run],
  );
  return { run, state, screen, words, press, tried, panel, open };
}

/** Whatever comes new is read from its top. */
function useFromTop(what: string) {
  const part = useRef<HTMLElement>(null);
  const last = useRef(what);
  useEffect(() => {
    if (last.current === what) return;
    last.current = what;
    part.current?.scrollTo(0, 0);
  }, [what]);
  return part;
}

export function Observer({ run }: { readonly run: Run }) {
  const desk = useDesk(run);
  const { screen, state, words, press, panel, open } = desk;
  const [before, setBefore] = useState<{ readonly from: number; readonly at: number }>();
  const here = state.shown.line;
  const looking = before?.from === here && screen.phase === 'reading' ? before.at : undefined;
  const name = nextPress(screen.presses);
  const isWide = useWide();
  const hasCard = screen.phase === 'emergency' && isWide;
  const middle = useFromTop([screen.phase, here, screen.card?.page, panel].join());
  const pictured = usePictured(screen, state.shown);
  useDisplays(desk, pictured?.recorded);
  useEffect(() => {
    if (screen.refusal === 'reason-missing' && screen.line.kind === 'all-round') open('reason');
  }, [screen, open]);

  const stop = (): void => {
    open('none');
    setBefore(undefined);
    press({ is: 'stop' });
  };
  const act = (meaning: KeyMeaning, means: Means): void => {
    const next = pressFor(name, means);
    const question = screen.line.question;
    const reply = (['no', 'yes', 'not-sure'] as const).find((one) => one === meaning);
    if (meaning === 'stop') stop();
    else if (meaning === 'emergency') open('emergencies');
    else if (reply && question !== undefined) press({ is: 'answer', question, reply });
    else if (meaning === 'before')
      setBefore({ from: here, at: lineBefore(state.shown.script.lines, looking ?? here) });
    else if (meaning === 'confirm' && looking !== undefined) setBefore(undefined);
    else if (meaning === 'confirm' && panel === 'none' && next) press(next);
    else if (meaning === 'resume' && screen.presses.includes('resume')) press({ is: 'resume' });
    else if (meaning === 'resume' && screen.presses.includes('return')) press({ is: 'return' });
    else if (meaning === 'not-seen' && screen.presses.includes('not-seen')) press({ is: 'not-seen' });
    else if (meaning === 'wrong' && screen.presses.includes('slip')) open('wrong');
  };
  useKeys(act);
  const { labels } = words.guide;
  const waits = screen.phase === 'reading' && screen.owed.length > 0 && screen.line.kind === 'look';
  return (
    <div className="g-observer" data-entries={state.shown.entries}>
      <Strip desk={desk} />
      {screen.refusal && !screen.stalled && !(screen.refusal === 'other-line' && panel === 'hand-over') && (
        <p role="alert" className="g-refusal">
          {words.guide.refusals[screen.refusal]}
        </p>
      )}
      {screen.stalled && (
        <p role="alert" className="g-refusal">
          {words.guide.refusals.unsaved} <span lang="en">{run.trouble()}</span>
        </p>
      )}
      <After desk={desk} />
      <div className="g-body">
        <Middle label={labels.line.whatIsOn} moreBelow={labels.line.moreBelow} at={middle}>
          <Over desk={desk} />
          {panel === 'none' && looking !== undefined && (
            <Before desk={desk} at={looking} on={() => setBefore(undefined)} />
          )}
          {panel === 'none' && looking === undefined && (
            <>
              <Line desk={desk} />
              {waits && <Owed owed={screen.owed} words={words} />}
              {screen.phase === 'emergency' && !isWide && <Card desk={desk} />}
              <Below desk={desk} />
            </>
          )}
        </Middle>
        {panel === 'none' && hasCard && <CardSide desk={desk} />}
        {panel === 'none' && !hasCard && (
          <div className={hasAside(desk) ? 'g-beside told' : 'g-beside'}>
            <Side desk={desk} pictured={pictured} />
            {hasAside(desk) && <Aside desk={desk} />}
          </div>
        )}
      </div>
      <Presses desk={desk} next={panel === 'none' ? pressFor(name, 'touch') : undefined} />
    </div>
  );
}

/** What belongs to the line and need not be as large. */
function Below({ desk }: { readonly desk: Desk }) {
  const { screen, words, run } = desk;
  return (
    <>
      {screen.line.kind === 'all-round' && <Coverage desk={desk} />}
      {screen.line.kind === 'inside' && <Wear desk={desk} />}
      <Told desk={desk} />
      <Notices desk={desk} />
      {screen.timers.map((timer) => (
        <p key={timer.id}>
          {words.guide.labels.line.colon(words.guide.timers[timer.kind])}{' '}
          <SourceOf spec={timer} words={words} />
        </p>
      ))}
      {screen.outcome && (
        <p className="g-outcome">
          {words.guide.outcomes[screen.outcome]}.{' '}
          <Link href={`/guide/${run.exit}/record`}>{words.guide.labels.line.record}</Link>
        </p>
      )}
    </>
  );
}
