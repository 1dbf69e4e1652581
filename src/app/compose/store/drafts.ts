// The drafts of this browser: each with its history, kept in the store at every edit and found again after a reload.
import type { Procedure } from '../../../domain/procedure.ts';
import { begun, changed, type History, redone, undone } from '../model/history.ts';
import { MOST_KEPT, packed, unpacked } from '../model/pack.ts';
import type { DraftStore } from './port.ts';

export interface DraftState {
  readonly history: History;
  /** `all`: with its undo steps. `some`: for want of room, fewer or none of them. `none`: nothing is kept. */
  readonly kept: 'all' | 'some' | 'none';
}

export type Change =
  | { readonly do: 'edit'; readonly procedure: Procedure; readonly done: string; readonly merge?: string }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' };

export interface Drafts {
  readonly ids: () => readonly string[];
  readonly get: (id: string) => DraftState | undefined;
  /** Id of the new draft. */
  readonly create: (procedure: Procedure, done: string) => string;
  readonly apply: (id: string, change: Change) => void;
  readonly remove: (id: string) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

function next(history: History, change: Change): History {
  if (change.do === 'undo') return undone(history);
  if (change.do === 'redo') return redone(history);
  return changed(history, change.procedure, change.done, change.merge);
}

/** Kept with as many undo steps as there is room for. */
function keep(store: DraftStore, id: string, history: History): DraftState['kept'] {
  if (store.write(id, packed(history))) return 'all';
  const fewer = [MOST_KEPT / 8, 0].some((most) => store.write(id, packed(history, most)));
  return fewer ? 'some' : 'none';
}

/** `fresh` makes ids that no draft has had. */
export function createDrafts(store: DraftStore, fresh: () => string): Drafts {
  const states = new Map<string, DraftState | undefined>();
  /** What the store held when it was last looked at. */
  const seen = new Map<string, string | undefined>();
  const listeners = new Set<() => void>();
  const tell = (): void => {
    for (const listener of listeners) listener();
  };
  const get = (id: string): DraftState | undefined => {
    if (!states.has(id)) {
      const text = store.read(id);
      seen.set(id, text);
      const history = text === undefined ? undefined : unpacked(text);
      states.set(id, history && { history, kept: 'all' });
    }
    return states.get(id);
  };
  const set = (id: string, history: History): void => {
    states.set(id, { history, kept: keep(store, id, history) });
    seen.set(id, store.read(id));
    tell();
  };
  /** Another page may have written it since: its edits are taken in, so that neither page undoes the other's unseen. */
  const refresh = (id: string): void => {
    if (states.has(id) && store.read(id) !== seen.get(id)) states.delete(id);
  };
  store.watch((id) => {
    refresh(id);
    tell();
  });
  return {
    ids: () => [...new Set([...store.ids(), ...states.keys()])].filter((id) => get(id) !== undefined),
    get,
    create: (procedure, done) => {
      const id = fresh();
      set(id, begun(procedure, done));
      return id;
    },
    apply: (id, change) => {
      refresh(id);
      const state = get(id);
      const history = state && next(state.history, change);
      if (history && history !== state.history) set(id, history);
    },
    remove: (id) => {
      store.remove(id);
      states.set(id, undefined);
      seen.set(id, undefined);
      tell();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
