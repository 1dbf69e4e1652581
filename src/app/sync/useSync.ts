// The one exchange of this page with its unit's server. It starts only on a device that has joined a unit: a page alone on
// its machine asks nobody for anything.
import { useSyncExternalStore } from 'react';
import { book } from '../journal/useBook.ts';
import { pairedAs } from './paired.ts';
import { createRunner, type Runner, type Shown } from './runner.ts';
import { wire } from './wire.ts';

/** Where the journal's own part notes a write (src/app/journal/useBook.ts). */
const WRITTEN = 'doffline-journal-written';

const listeners = new Set<() => void>();
let runner: Runner | undefined;
let timer: number | undefined;

const tell = (): void => {
  for (const listener of listeners) listener();
};

function later(work: () => void, ms: number): void {
  window.clearTimeout(timer);
  timer = window.setTimeout(work, ms);
}

/** Tells the page's other tabs that entries came in, as the journal's own part does when it has written. */
function tellOthers(): void {
  try {
    window.localStorage.setItem(WRITTEN, String(Date.now()));
  } catch {
    // They see it when they look next.
  }
}

function started(device: string): Runner {
  const made = createRunner({
    open: async () => ({ store: await book.store(), wire, device }),
    moment: () => ({ now: Date.now(), chance: Math.random() }),
    later,
    changed: tell,
    received: () => {
      book.refresh().catch(() => undefined);
      tellOthers();
    },
  });
  book.subscribe(made.wake);
  window.addEventListener('online', made.hurry);
  window.addEventListener('focus', made.hurry);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') made.hurry();
  });
  made.hurry();
  return made;
}

/** Called once, when the page has started. */
export function startSync(): void {
  const paired = pairedAs();
  if (paired) runner ??= started(paired.device);
}

/** Somebody pressed. */
export const tryNow = (): void => runner?.hurry();

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Undefined on a device that belongs to no unit. */
export const useSync = (): Shown | undefined => useSyncExternalStore(subscribe, () => runner?.shown());
