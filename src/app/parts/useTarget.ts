// What the address points to behind its '#'. The page is drawn after the browser has looked for it, so it is brought into
// sight here, and takes the focus: a screen reader goes on from there.
import { useEffect, useSyncExternalStore } from 'react';

/** The router changes the address without the browser's own event, and tells so by these. */
const EVENTS = ['hashchange', 'popstate', 'pushState', 'replaceState'] as const;

function subscribe(changed: () => void): () => void {
  for (const name of EVENTS) window.addEventListener(name, changed);
  return () => {
    for (const name of EVENTS) window.removeEventListener(name, changed);
  };
}

function targetNow(): string {
  const text = window.location.hash.slice(1);
  try {
    return decodeURIComponent(text);
  } catch {
    // A half-copied address; nothing has such an id.
    return text;
  }
}

export const useTarget = (): string => useSyncExternalStore(subscribe, targetNow);

/** `id` is that of the element, '' where the address points to nothing on the page. */
export function useArrival(id: string): void {
  useEffect(() => {
    if (id === '') return undefined;
    // After the page itself has taken the focus, as it does at a new place.
    const timer = setTimeout(() => {
      const element = document.getElementById(id);
      element?.scrollIntoView({ block: 'start' });
      element?.focus({ preventScroll: true });
    }, 50);
    return () => clearTimeout(timer);
  }, [id]);
}
