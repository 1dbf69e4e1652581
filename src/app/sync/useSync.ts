// The one exchange of this page with its unit's server. It starts only on a device that has joined a unit: a page alone on
// its machine asks nobody for anything.
import { useSyncExternalStore } from 'react';
import { openIndexedDb } from '../../journal/adapters/indexedDb.ts';
import { pairedAs } from './paired.ts';
import { createRunner, type Runner, type Shown } from './runner.ts';
import { wire } from './wire.ts';

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

function started(device: string): Runner {
  // The journal's own part of the page speaks over this channel when it has written, and listens when others have.
  const channel = new BroadcastChannel('doffline-journal');
  const made = createRunner({
    open: async () => ({ store: await openIndexedDb(), wire, device }),
    moment: () => ({ now: Date.now(), chance: Math.random() }),
    later,
    changed: tell,
    // Other parts and tabs of this page: a channel has no origin to name.
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    received: () => channel.postMessage('written'),
  });
  channel.addEventListener('message', made.wake);
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
