// The journal of this device as one account of all devices, read anew whenever something came in or went out.
import { useEffect, useState } from 'react';
import { openIndexedDb } from '../../journal/adapters/indexedDb.ts';
import type { Entry } from '../../journal/entry.ts';
import { pages } from '../../journal/fold.ts';
import { accountOf, type Told } from '../../sync/account.ts';
import { useSync } from './useSync.ts';

async function everything(): Promise<readonly Entry[]> {
  const store = await openIndexedDb();
  try {
    const all: Entry[] = [];
    for await (const page of pages(store)) all.push(...page.map(({ entry }) => entry));
    return all;
  } finally {
    await store.close();
  }
}

/** Undefined while it is read. */
export function useAccount(): readonly Told[] | undefined {
  const shown = useSync();
  const [found, setFound] = useState<{ readonly stamp: string; readonly entries: readonly Entry[] }>();
  const { written = 0, state } = shown ?? {};
  /** Changes with whatever came in or was written. */
  const stamp = `${written} ${state?.next ?? 1}`;
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
