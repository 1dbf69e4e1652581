// What has gone to the unit's server and what waits; joining a unit.
import { Button } from 'react-aria-components';
import { statusOf } from '../../sync/status.ts';
import { instantText } from '../parts/moment.ts';
import { Join } from './Join.tsx';
import { STAYING, SYNC, todoText } from './labels.ts';
import { pairedAs } from './paired.ts';
import type { Shown } from './runner.ts';
import { Staying } from './Staying.tsx';
import { tryNow, useSync } from './useSync.ts';

export const clock = instantText;

/** One sentence or two, for this page and for the line above all pages. */
export function SyncState({ shown }: { readonly shown: Shown }) {
  const { state, written, since } = shown;
  const status = statusOf(state, written);
  const waiting = since === undefined ? '' : SYNC.waiting(written - state.acknowledged, clock(since));
  if (status.is === 'refused') {
    return (
      <>
        {SYNC.refused(status.refused.code, status.refused.number)} {todoText(status.refused)} {waiting}
      </>
    );
  }
  if (status.is === 'sent') return <>{status.reached ? SYNC.allSent : `${SYNC.allSent} ${SYNC.unreached}`}</>;
  return (
    <>
      {waiting} {status.reached ? '' : state.failures > 0 ? SYNC.unreached : SYNC.nothingYet}
    </>
  );
}

function Exchange({ shown }: { readonly shown: Shown }) {
  const { answeredAt } = shown.state;
  const paired = pairedAs();
  return (
    <>
      {paired && (
        <p>
          {paired.unit.title}: {paired.label} (<code>{paired.device}</code>)
        </p>
      )}
      <output className="sync-state">
        <SyncState shown={shown} />
      </output>
      {answeredAt !== undefined && <p className="quiet">{SYNC.lastAnswer(clock(answeredAt))}</p>}
      <p className="actions">
        <Button className="button" onPress={tryNow}>
          {SYNC.tryNow}
        </Button>
      </p>
      {paired && <Staying device={paired.device} says={STAYING.after} />}
      {shown.state.refused?.stops === 'all' && <Join />}
    </>
  );
}

export function ServerSection() {
  const shown = useSync();
  return (
    <section aria-labelledby="server-title">
      <h2 id="server-title">{SYNC.title}</h2>
      {shown ? (
        <Exchange shown={shown} />
      ) : (
        <>
          <p>{SYNC.alone}</p>
          <Join />
        </>
      )}
    </section>
  );
}
