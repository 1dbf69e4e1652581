// One exit at its own address: the observer's screen, the displays for wearer and assistant, the record.
import { type ReactNode, useEffect } from 'react';
import { Link } from 'wouter';
import { useTitle } from '../../parts/useTitle.ts';
import { words } from '../../words.ts';
import { useLight } from '../shell/light.ts';
import type { Unopened } from '../shell/rooms.ts';
import { Act } from './Act.tsx';
import { languageOfExit } from './desk.ts';
import { DisplayPage } from './DisplayPage.tsx';
import { Observer } from './Observer.tsx';
import { type Opening, useOpened } from './useRun.ts';

/** Whose exit it is, and so in which language, is not known before it is open: the page's own. */
const unopenedText = (why: Unopened): string => {
  const { opening } = words.guide.labels;
  const texts = {
    unknown: opening.unknown,
    'not-begun-here': opening.notBegunHere,
    'other-lines': opening.otherLines,
  };
  return texts[why];
};

interface FrameProps {
  /** Of an exit that is open; before that, the page's own. */
  readonly language?: string;
  readonly children: ReactNode;
}

function Frame({ language = words.language, children }: FrameProps) {
  return (
    <div className="g-page" data-light={useLight()} lang={language}>
      <main id="main">{children}</main>
    </div>
  );
}

const LOOK_AGAIN = 3000;

/** Where another tab runs the exit: nothing can be recorded here, and one press changes that. */
function Elsewhere({ exit, found: { is, look, take } }: { readonly exit: string; readonly found: Opening }) {
  useEffect(() => {
    const timer = setInterval(look, LOOK_AGAIN);
    return () => clearInterval(timer);
  }, [look]);
  const { opening, line } = words.guide.labels;
  return (
    <Frame>
      <h1>{opening.elsewhere}</h1>
      <p role="alert">{is === 'unsaved-elsewhere' ? opening.unsaved : opening.elsewhereSays}</p>
      <div className="g-acts">
        <Act kind="main" press={take}>
          {opening.take}
        </Act>
        <Link href={`/guide/${exit}/record`}>{line.record}</Link> <Link href="/guide">{line.allExits}</Link>
      </div>
    </Frame>
  );
}

function ObserverPage({ exit }: { readonly exit: string }) {
  const found = useOpened(exit);
  const run = found.is;
  const { opening, line } = words.guide.labels;
  useTitle(opening.guide);
  if (run === undefined)
    return (
      <Frame>
        <h1>{opening.guide}</h1>
        <output>{opening.looking}</output>
      </Frame>
    );
  if (run === 'elsewhere' || run === 'unsaved-elsewhere') return <Elsewhere exit={exit} found={found} />;
  if (typeof run === 'string')
    return (
      <Frame>
        <h1>{opening.guide}</h1>
        <p role="alert">{unopenedText(run)}</p>
        <p>
          <Link href={`/guide/${exit}/record`}>{line.record}</Link> <Link href="/guide">{line.allExits}</Link>
        </p>
      </Frame>
    );
  return (
    <Frame language={languageOfExit(run.state())}>
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
