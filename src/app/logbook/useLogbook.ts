// The logbook as the pages see it: the stays of this device's journal, worked out anew whenever an entry came, and a clock
// that is slow enough for an eye.
import { useEffect, useState } from 'react';
import { evidenceNumber } from '../../evidence/index.ts';
import { show } from '../../journal/fold.ts';
import { roomView, staysOf } from '../../journal/views/room.ts';
import type { Bounds } from '../../journal/views/signs.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { keeperIn } from '../guide/log/kept.ts';
import { reasonOf } from '../journal/book.ts';
import { book, DEVICE, useBook } from '../journal/useBook.ts';
import { LOG } from './labels.ts';

export const keeper = keeperIn(() => window.localStorage);

/** Minutes before a limit and after it; the unit's own warning first. */
export const boundsNow = (): Bounds => ({
  warn: keeper.unit().wear?.warnMinutes ?? evidenceNumber('guide.wear-warning'),
  past: evidenceNumber('logbook.past-limit'),
  noLimit: evidenceNumber('logbook.no-limit'),
});

export interface Logbook {
  /** Undefined until they are read. */
  readonly stays: readonly Stay[] | undefined;
  readonly wrong: string;
}

async function staysNow(): Promise<readonly Stay[]> {
  const store = await book.store();
  return staysOf((await show(roomView, { journal: store, snapshots: store.snapshots })).state);
}

export function useLogbook(): Logbook {
  const { entries, is, why } = useBook();
  const [found, setFound] = useState<Logbook>({ stays: undefined, wrong: '' });
  const at = is === 'opening' ? undefined : entries;
  useEffect(() => {
    if (at === undefined) return undefined;
    let current = true;
    staysNow().then(
      (stays) => current && setFound({ stays, wrong: '' }),
      (error: unknown) =>
        current && setFound({ stays: undefined, wrong: `${LOG.failed} ${reasonOf(error)}` }),
    );
    return () => {
      current = false;
    };
  }, [at]);
  return is === 'failed' ? { stays: undefined, wrong: `${LOG.failed} ${why}` } : found;
}

/** The device's clock, every few seconds. */
export function useClock(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 5000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

let last = 0;
/** Later ones sort later; another device makes others. */
export function freshVisit(): string {
  last = Math.max(Date.now(), last + 1);
  return `v-${last.toString(36)}-${DEVICE.replace(/^d-/, '').slice(0, 6)}`;
}
