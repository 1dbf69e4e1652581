// The journal of this device as one account of all devices, read anew whenever something came in or went out.
import { useEffect, useState } from 'react';
import type { Entry } from '../../journal/entry.ts';
import { pages } from '../../journal/fold.ts';
import { accountOf, type Told } from '../../sync/account.ts';
import { book, useBook } from '../journal/useBook.ts';
import { useSync } from './useSync.ts';

async function everything(): Promise<readonly Entry[]> {
  const all: Entry[] = [];
  for await (const page of pages(await book.store())) all.push(...page.map(({ entry }) => entry));
  return all;
}

/** Undefined while it is read. */
export function useAccount(): readonly Told[] | undefined {
  const shown = useSync();
  const [found, setFound] = useState<{ readonly stamp: string; readonly entries: readonly Entry[] }>();
  const { entries: count } = useBook();
  const state = shown?.state;
  /** Changes with whatever came in or was written. */
  const stamp = `${count} ${state?.next ?? 1}`;
  useEffect(() => {
    let stale = false;
    everything().then(
      (entries) => {
        if (!stale) setFound({ stamp, entries });
      },
      () => undefined,
    );
    return () => {
      stale = true;
    };
  }, [stamp]);
  return found && accountOf(found.entries, state?.runs ?? []);
}
