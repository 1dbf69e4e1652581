// What every answer has: its heading, which takes the focus when the answer comes, the figures against agents that were not
// searched, and the way into a draft.
import { type ReactNode, useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { Procedure } from '../../domain/procedure.ts';
import { focusLost } from '../parts/useLanding.ts';
import { words } from '../words.ts';
import { Figures } from './Figures.tsx';
import type { Aside } from './result.ts';
import type { Source } from './source.ts';

interface HeadingProps {
  readonly id: string;
  readonly children: ReactNode;
}

export function AnswerHeading({ id, children }: HeadingProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // The button to cancel has gone and taken the focus with it; whoever went elsewhere meanwhile stays there.
    if (focusLost()) heading.current?.focus();
  }, []);
  return (
    <h2 id={id} ref={heading} tabIndex={-1}>
      {children}
    </h2>
  );
}

export function Asides({ asides }: { readonly asides: readonly Aside[] }) {
  return asides.map(({ agent, before, after }) => (
    <Figures
      key={agent}
      caption={`Against the ${words.agent(agent)}, which the procedure names too and this search did not look at`}
      before={before}
      after={after}
      heads={['Before', 'After']}
    />
  ));
}

interface TakeProps {
  readonly source: Source;
  /** The steps that were searched. */
  readonly given: Procedure;
  readonly found: Procedure;
  /** What undo will call it. */
  readonly done: string;
  readonly press: string;
}

export function Take({ source, given, found, done, press }: TakeProps) {
  const [, go] = useLocation();
  const stale = source.procedure !== given;
  return (
    <div className="take">
      <Button
        className="button main"
        isDisabled={stale}
        onPress={() => go(`/write/${source.take(found, done)}/steps`)}
      >
        {press}
      </Button>
      <p className="quiet">
        {stale
          ? 'The steps or what is kept have changed since. Search again to take it.'
          : source.isDraft
            ? 'It becomes one edit of your draft: undo gives the present steps back.'
            : 'A copy of the procedure becomes a draft in this browser; undo there gives the given steps back.'}
      </p>
    </div>
  );
}
