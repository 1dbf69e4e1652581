// Undo and redo without limit: whole drafts are kept, which costs little because an edit shares everything it leaves
// alone. An inverse for every operation would be less memory and more ways to be wrong.
import type { Procedure } from '../../../domain/procedure.ts';

/** A draft, and what was done to get to it. */
export interface Snapshot {
  readonly procedure: Procedure;
  readonly done: string;
  /** Edits one after the other with the same key are one: the letters of a word are not undone one by one. */
  readonly merge?: string;
}

export interface History {
  /** Oldest first. */
  readonly past: readonly Snapshot[];
  readonly present: Snapshot;
  /** The one that redo brings back first. */
  readonly future: readonly Snapshot[];
}

export const begun = (procedure: Procedure, done: string): History => ({
  past: [],
  present: { procedure, done },
  future: [],
});

/** After an edit; what was undone before it is gone. The same draft again is no edit. */
export function changed(history: History, procedure: Procedure, done: string, merge?: string): History {
  const { past, present, future } = history;
  if (procedure === present.procedure) return history;
  const next: Snapshot = { procedure, done, ...(merge === undefined ? {} : { merge }) };
  const same = merge !== undefined && merge === present.merge && future.length === 0 && past.length > 0;
  return { past: same ? past : [...past, present], present: next, future: [] };
}

/** A snapshot that was undone or redone takes no further letters. */
const closed = ({ procedure, done }: Snapshot): Snapshot => ({ procedure, done });

export function undone({ past, present, future }: History): History {
  const before = past.at(-1);
  if (!before) return { past, present, future };
  return { past: past.slice(0, -1), present: closed(before), future: [closed(present), ...future] };
}

export function redone({ past, present, future }: History): History {
  const [next, ...rest] = future;
  return next ? { past: [...past, closed(present)], present: next, future: rest } : { past, present, future };
}
