// Whether there is room for two columns.
import { useSyncExternalStore } from 'react';

const query = window.matchMedia('(min-width: 60rem)');

function subscribe(listener: () => void): () => void {
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

export const useWide = (): boolean => useSyncExternalStore(subscribe, () => query.matches);
