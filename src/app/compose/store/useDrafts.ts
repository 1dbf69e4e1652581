// The drafts of this browser as the page sees them.
import { useCallback, useRef, useSyncExternalStore } from 'react';
import type { Procedure } from '../../../domain/procedure.ts';
import { createDrafts, type DraftState } from './drafts.ts';
import { localStore, memoryStore } from './port.ts';

/** Where the browser refuses its store the drafts live as long as the page. */
function browserStore() {
  try {
    return localStore(window.localStorage, window);
  } catch {
    return memoryStore();
  }
}

let last = 0;
/** Later ones sort later. */
function fresh(): string {
  last = Math.max(Date.now(), last + 1);
  return last.toString(36);
}

/** When the draft of this id was begun, by this browser's clock. */
export const begunAt = (id: string): Date => new Date(Number.parseInt(id, 36));

export const drafts = createDrafts(browserStore(), fresh);

/** Calls with the draft as it is after each change, before the page is drawn with it. Gives back what ends that. */
export const onEdit = (id: string, hear: (draft: Procedure) => void): (() => void) =>
  drafts.subscribe(() => {
    const state = drafts.get(id);
    if (state) hear(state.history.present.procedure);
  });

export const useDraft = (id: string): DraftState | undefined =>
  useSyncExternalStore(drafts.subscribe, () => drafts.get(id));

/** Ids of the drafts, the newest first. */
export function useDraftIds(): readonly string[] {
  const known = useRef<readonly string[]>([]);
  const read = useCallback(() => {
    const ids = drafts.ids().toSorted().reverse();
    if (ids.join() !== known.current.join()) known.current = ids;
    return known.current;
  }, []);
  return useSyncExternalStore(drafts.subscribe, read);
}
