// The exits and drills of this journal, the latest first, read anew with every entry.
import { useEffect, useState } from 'react';
import { useBook } from '../../journal/useBook.ts';
import type { ExitHead } from '../log/exits.ts';
import { exitsNow } from '../shell/rooms.ts';

/** Undefined until they are read. */
export function useExits(): readonly ExitHead[] | undefined {
  const { entries, is } = useBook();
  const now = is === 'ready' ? entries : undefined;
  const [exits, setExits] = useState<readonly ExitHead[]>();
  useEffect(() => {
    if (now === undefined) return undefined;
    let current = true;
    exitsNow().then(
      (state) => current && setExits(Object.values(state).toSorted((a, b) => b.from - a.from)),
      () => current && setExits([]),
    );
    return () => {
      current = false;
    };
  }, [now]);
  return exits;
}
