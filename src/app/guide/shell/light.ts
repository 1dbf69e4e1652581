// Day or night: dark on light, or light on dark, by one press, kept in this browser for all windows of the guide.
import { useSyncExternalStore } from 'react';

export type Light = 'day' | 'night';

const KEPT = 'doffline-guide-light';
const listeners = new Set<() => void>();

function kept(): Light {
  try {
    return localStorage.getItem(KEPT) === 'night' ? 'night' : 'day';
  } catch {
    return 'day';
  }
}

let light = kept();

export function turnLight(): void {
  light = light === 'day' ? 'night' : 'day';
  try {
    localStorage.setItem(KEPT, light);
  } catch {
    // It holds as long as the page.
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useLight = (): Light => useSyncExternalStore(subscribe, () => light);
