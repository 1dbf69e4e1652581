// What stays on this device: told before it joins and ever after, with the way to take it out.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Accepted } from '../../journal/entry.ts';
import { book, useBook } from '../journal/useBook.ts';
import { saveText } from '../parts/save.ts';
import { STAYING } from './labels.ts';
import { everythingIn, linesOf, stayingIn } from './staying.ts';
import { useSync } from './useSync.ts';

const NONE: readonly Accepted[] = [];

/** Read anew whenever something was written, sent or received; none until that is known. */
function useStaying(device: string): readonly Accepted[] {
  const { entries: count } = useBook();
  const state = useSync()?.state;
  const runs = state?.runs ?? [];
  const stamp = `${device} ${count} ${JSON.stringify(runs)}`;
  const [found, setFound] = useState({ stamp: '', entries: NONE });
  useEffect(() => {
    let current = true;
    const [name, , ...rest] = stamp.split(' ');
    const known = { device: name ?? '', runs: JSON.parse(rest.join(' ')) as typeof runs };
    const look = async (): Promise<void> => {
      const all = await everythingIn(await book.store());
      if (current) setFound({ stamp, entries: stayingIn(all, known) });
    };
    look().catch(() => undefined);
    return () => {
      current = false;
    };
  }, [stamp]);
  // A device of a unit that was never heard of knows nothing of what is there.
  const isKnown = state === undefined || state.answeredAt !== undefined || runs.length > 0;
  return found.stamp === stamp && isKnown ? found.entries : NONE;
}

interface StayingProps {
  /** The name by which this device writes from now on; empty before it joins. */
  readonly device: string;
  readonly says: (count: number) => string;
}

export function Staying({ device, says }: StayingProps) {
  const entries = useStaying(device);
  if (entries.length === 0) return null;
  return (
    <div className="notice" role="note">
      <p>{says(entries.length)}</p>
      <p className="actions">
        <Button
          className="button"
          onPress={() => saveText(STAYING.file, linesOf(entries), 'application/jsonl')}
        >
          {STAYING.save}
        </Button>
      </p>
    </div>
  );
}
