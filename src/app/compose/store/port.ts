// Where drafts are kept so that neither a reload nor a crash loses anything. Writing is at once and done when the call
// returns: whatever happens afterwards, the last edit is there.

export interface DraftStore {
  /** Ids of the drafts that are kept. */
  readonly ids: () => readonly string[];
  readonly read: (id: string) => string | undefined;
  /** Whether it is kept now; false where there is no room or no leave. */
  readonly write: (id: string, text: string) => boolean;
  readonly remove: (id: string) => void;
  /** Tells which draft another page over the same store has written or removed. */
  readonly watch: (changed: (id: string) => void) => void;
}

export function memoryStore(): DraftStore {
  const kept = new Map<string, string>();
  return {
    ids: () => [...kept.keys()],
    read: (id) => kept.get(id),
    write: (id, text) => {
      kept.set(id, text);
      return true;
    },
    remove: (id) => {
      kept.delete(id);
    },
    watch: () => undefined,
  };
}

const PREFIX = 'doffline-draft-';

/** The browser's own store, which writes before it returns; asynchronous ones can lose the last edit in a crash. */
export function localStore(storage: Storage, page?: Pick<Window, 'addEventListener'>): DraftStore {
  const keys = (): readonly string[] =>
    Array.from({ length: storage.length }, (_, at) => storage.key(at) ?? '');
  return {
    ids: () => keys().flatMap((key) => (key.startsWith(PREFIX) ? [key.slice(PREFIX.length)] : [])),
    read: (id) => storage.getItem(PREFIX + id) ?? undefined,
    write: (id, text) => {
      try {
        storage.setItem(PREFIX + id, text);
        return true;
      } catch {
        return false;
      }
    },
    remove: (id) => storage.removeItem(PREFIX + id),
    watch: (changed) =>
      page?.addEventListener('storage', ({ key }) => {
        if (key?.startsWith(PREFIX)) changed(key.slice(PREFIX.length));
      }),
  };
}
