// What stays on this device: told before it joins and ever after, with the way to take it out.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Accepted } from '../../journal/entry.ts';
import type { SyncState } from '../../sync/state.ts';
import { book, useBook } from '../journal/useBook.ts';
import { saveText } from '../parts/save.ts';
import { STAYING } from './labels.ts';
import { everythingIn, linesOf, stayingIn, unsentIn } from './staying.ts';
import { useSync } from './useSync.ts';

const NONE: readonly Accepted[] = [];

type Known = Pick<SyncState, 'runs' | 'acknowledged'> & { readonly device: string };
type Choose = (entries: readonly Accepted[], known: Known) => readonly Accepted[];

/** Read anew whenever something was written, sent or received; none until that is known. */
function useFound(device: string, choose: Choose): readonly Accepted[] {
  const { entries: count } = useBook();
  const state = useSync()?.state;
  const { runs = [], acknowledged = 0 } = state ?? {};
  const stamp = JSON.stringify([{ device, runs, acknowledged }, count]);
  const [found, setFound] = useState({ stamp: '', entries: NONE });
  useEffect(() => {
    let current = true;
    const [known] = JSON.parse(stamp) as [Known];
    const look = async (): Promise<void> => {
      const all = await everythingIn(await book.store());
      if (current) setFound({ stamp, entries: choose(all, known) });
    };
    look().catch(() => undefined);
    return () => {
      current = false;
    };
  }, [stamp, choose]);
  return found.stamp === stamp ? found.entries : NONE;
}

interface ToldProps {
  readonly says: string;
  readonly entries: readonly Accepted[];
  readonly file: string;
}

function Told({ says, entries, file }: ToldProps) {
  if (entries.length === 0) return null;
  return (
    <div className="notice" role="note">
      <p>{says}</p>
      <p className="actions">
        <Button className="button" onPress={() => saveText(file, linesOf(entries), 'application/jsonl')}>
          {STAYING.save}
        </Button>
      </p>
    </div>
  );
}

interface StayingProps {
  /** The name by which this device writes from now on; empty before it joins. */
  readonly device: string;
  readonly says: (count: number) => string;
}

export function Staying({ device, says }: StayingProps) {
  const state = useSync()?.state;
  const entries = useFound(device, stayingIn);
  // A device of a unit that was never heard of knows nothing of what is there.
  const isKnown = state === undefined || state.answeredAt !== undefined || state.runs.length > 0;
  return <Told says={says(entries.length)} entries={isKnown ? entries : NONE} file={STAYING.file} />;
}

/** Of a device that has lost its place in the unit, before it joins again. */
export function Unsent({ device }: { readonly device: string }) {
  const entries = useFound(device, unsentIn);
  return <Told says={STAYING.again(entries.length, device)} entries={entries} file={STAYING.unsentFile} />;
}
