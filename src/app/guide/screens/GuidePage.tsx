// One exit at its own address: the observer's screen, the displays for wearer and helper, the record.
import { type ReactNode, useEffect } from 'react';
import { Link } from 'wouter';
import { useTitle } from '../../parts/useTitle.ts';
import { useLight } from '../shell/light.ts';
import type { Unopened } from '../shell/rooms.ts';
import { Act } from './Act.tsx';
import { DisplayPage } from './DisplayPage.tsx';
import { ELSEWHERE } from './labels.ts';
import { Observer } from './Observer.tsx';
import { type Opening, useOpened } from './useRun.ts';

const UNOPENED: Readonly<Record<Unopened, string>> = {
  unknown: 'This browser’s journal has no such exit.',
  'not-begun-here':
    'It is in the journal, but what its lines were made from is not kept in this browser. Go on from paper, from its last recorded line.',
  'other-lines': 'Its entries do not fit its procedure. Go on from paper, from its last recorded line.',
};

function Frame({ children }: { readonly children: ReactNode }) {
  return (
    <div className="g-page" data-light={useLight()}>
      <main id="main">{children}</main>
    </div>
  );
}

const LOOK_AGAIN = 3000;

/** Where another tab runs the exit: nothing can be recorded here, and one press changes that. */
function Elsewhere({
  exit,
  opening: { is, look, take },
}: {
  readonly exit: string;
  readonly opening: Opening;
}) {
  useEffect(() => {
    const timer = setInterval(look, LOOK_AGAIN);
    return () => clearInterval(timer);
  }, [look]);
  return (
    <Frame>
      <h1>{ELSEWHERE.title}</h1>
      <p role="alert">{is === 'unsaved-elsewhere' ? ELSEWHERE.unsaved : ELSEWHERE.says}</p>
      <div className="g-acts">
        <Act kind="main" press={take}>
          {ELSEWHERE.take}
        </Act>
        <Link href={`/guide/${exit}/record`}>Its record</Link> <Link href="/guide">All exits</Link>
      </div>
    </Frame>
  );
}

function ObserverPage({ exit }: { readonly exit: string }) {
  const opening = useOpened(exit);
  const run = opening.is;
  useTitle('Guide');
  if (run === undefined)
    return (
      <Frame>
        <h1>The guide</h1>
        <output>Looking for the exit …</output>
      </Frame>
    );
  if (run === 'elsewhere' || run === 'unsaved-elsewhere') return <Elsewhere exit={exit} opening={opening} />;
  if (typeof run === 'string')
    return (
      <Frame>
        <h1>The guide</h1>
        <p role="alert">{UNOPENED[run]}</p>
        <p>
          <Link href={`/guide/${exit}/record`}>Its record</Link> <Link href="/guide">All exits</Link>
        </p>
      </Frame>
    );
  return (
    <Frame>
      <Observer run={run} />
    </Frame>
  );
}

interface GuidePageProps {
  readonly exit: string;
  readonly view: string | undefined;
  readonly role: string | undefined;
}

export function GuidePage({ exit, view, role }: GuidePageProps) {
  if (view === 'display')
    return <DisplayPage key={exit} exit={exit} role={role === 'assistant' ? 'assistant' : 'wearer'} />;
  return <ObserverPage key={exit} exit={exit} />;
}
