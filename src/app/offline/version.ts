// The version of this page and of the copy that is kept for use without a network: registering the service worker, seeing
// that a newer one waits, letting it take over when somebody presses. State outside of React, because it is the browser's.
import { useSyncExternalStore } from 'react';
import { exitUnderWay } from './midExit.ts';
import { missing, thisWorld } from './support.ts';

/** `unavailable`: not here (see support.ts). `fetching`: being kept for the first time. */
export type Kept = 'unavailable' | 'fetching' | 'ready' | 'failed';

interface State {
  readonly kept: Kept;
  /** A newer version is here and waits. */
  readonly newer: boolean;
  /** It was asked for, and an exit is under way. */
  readonly held: boolean;
}

/** An hour: a page may stay open for weeks. The house's own choice. */
const ASK_AGAIN_MS = 3_600_000;

let state: State = { kept: 'unavailable', newer: false, held: false };
let registration: ServiceWorkerRegistration | undefined;
const listeners = new Set<() => void>();

function set(change: Partial<State>): void {
  state = { ...state, ...change };
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useVersion = (): State => useSyncExternalStore(subscribe, () => state);

/** The name of the version that this page is. */
export const VERSION = document.querySelector('meta[name="version"]')?.getAttribute('content') ?? '';

function look({ active, waiting, installing }: ServiceWorkerRegistration): void {
  if (active) set({ kept: 'ready', newer: waiting !== null });
  else set({ kept: installing || waiting ? 'fetching' : 'failed' });
}

function follow(own: ServiceWorkerRegistration): void {
  registration = own;
  const watch = (): void => {
    const { installing, waiting } = own;
    for (const one of [installing, waiting]) one?.addEventListener('statechange', () => look(own));
    look(own);
  };
  own.addEventListener('updatefound', watch);
  watch();
}

/** Asks the server whether there is a newer version; without a server nothing happens. */
function ask(): void {
  registration?.update().catch(() => undefined);
}

function register(): void {
  navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).then(follow, () => {
    set({ kept: navigator.serviceWorker.controller ? 'ready' : 'failed' });
  });
}

/** Called once, when the page has started. */
export function keepOffline(): void {
  if (!import.meta.env.PROD || missing('offline', thisWorld())) return;
  set({ kept: 'fetching' });
  // The page itself first, then the copy of it.
  if (document.readyState === 'complete') register();
  else window.addEventListener('load', register, { once: true });
  window.addEventListener('online', ask);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') ask();
  });
  window.setInterval(ask, ASK_AGAIN_MS);
}

async function takeOver(waiting: ServiceWorker, device: string | null): Promise<void> {
  const held = await exitUnderWay(device);
  set({ held });
  if (held) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), {
    once: true,
  });
  // A service worker is no window: it has no origin to name.
  // oxlint-disable-next-line unicorn/require-post-message-target-origin
  waiting.postMessage('take-over');
}

/** Loads the newer version; not while an exit is under way on this device (`device` as the journal calls it). */
export function loadNewer(device: string | null): void {
  const waiting = registration?.waiting;
  if (waiting) takeOver(waiting, device).catch(() => undefined);
}
