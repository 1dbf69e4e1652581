// The journal's port: two methods, the same over memory, IndexedDB, SQLite and PostgreSQL (test/journal/contract.ts holds
// all to it). A store has some more for its keepers: rows as they lie there, snapshots of views, an end.
import type { Plain } from './canonical.ts';
import type { Accepted, Entry, Head, Row } from './entry.ts';

/** That an entry is stored, durably, and where. */
export interface Acknowledged {
  readonly device: string;
  readonly number: number;
  readonly hash: string;
  readonly unitNumber: number;
  readonly unitHash: string;
}

export interface Range {
  /** At most so many; 1000 where it is not said. */
  readonly most?: number;
  /** Only this device's entries; `from` then counts its numbers, not the unit's. */
  readonly device?: string;
  /** From there downwards, the latest first. */
  readonly backwards?: boolean;
}

export const USUAL_PAGE = 1000;

/** Later than any entry: `read(LAST, { backwards: true, most: 1 })` is the last one. */
export const LAST = Number.MAX_SAFE_INTEGER;

export interface How {
  /** The unit's server handed them on, and may have withheld something: stores of devices alone take that. */
  readonly received?: boolean;
}

export interface Journal {
  /**
   * Stores entries, all or none, in their order, and returns when they are durable. What is stored already is
   * acknowledged again. Throws a JournalError that names the entry or says why the store failed; after a failure the
   * same call may be made again.
   */
  readonly append: (entries: readonly Entry[], how?: How) => Promise<readonly Acknowledged[]>;
  /** Entries from a number on, that one included, in order. A row that cannot be read is a JournalError, `damaged`. */
  readonly read: (from: number, range?: Range) => Promise<readonly Accepted[]>;
}

/** Where a view stood: never more than a shortcut, and ignored where it does not fit. */
export interface Snapshot {
  readonly view: string;
  readonly version: number;
  readonly unitNumber: number;
  readonly unitHash: string;
  readonly state: Plain;
}

export interface Snapshots {
  readonly load: (view: string) => Promise<Snapshot | undefined>;
  readonly save: (snapshot: Snapshot) => Promise<void>;
}

export interface Store extends Journal {
  /** Rows as they lie there, by the unit's number. For verifying, copying and exporting. */
  readonly rows: (from: number, most: number) => Promise<readonly Row[]>;
  /** Number and hash of the last entry, as noted apart from the entries: so a cut-off end is noticed. */
  readonly head: () => Promise<Head>;
  readonly snapshots: Snapshots;
  readonly close: () => Promise<void>;
}
