// The journal in a SQLite file: one machine, nothing to set up. Every acknowledged entry is on the disk. Several programs may
// have it open; they write one after the other (sqliteLock.ts says why) and read at any time.
import { closeSync, existsSync, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { admit, askedOf, checkAlone } from '../admit.ts';
import type { Entry } from '../entry.ts';
import { readRows } from '../fold.ts';
import type { Acknowledged, Store } from '../port.ts';
import { JournalError } from '../problems.ts';
import { guarded } from './sqliteFaults.ts';
import {
  createTables,
  type Db,
  isJournal,
  makeDurable,
  openFile,
  openToRead,
  refuseBackup,
} from './sqliteFile.ts';
import { type Lock, lockFileOf, lockOn, restoringOf } from './sqliteLock.ts';
import { snapshotStatements, statementsOf, writersOf } from './sqliteStatements.ts';

export interface SqliteOptions {
  /** How long to wait for another writer, in milliseconds. */
  readonly waitMs?: number;
  /** Further settings of the connection (`max_page_count = 100`). */
  readonly settings?: readonly string[];
}

const USUAL_WAIT = 5000;

/** The log is copied into the file after so many characters of entries. */
const COPY_AFTER = 2_000_000;

/** The file's number on the disk: another one means that a journal was restored over this one. */
const identityOf = (file: string): bigint => statSync(file, { bigint: true }).ino;

function checkPlace(file: string, opened: bigint): void {
  const now = guarded(() => identityOf(file));
  if (now !== opened) throw new JournalError({ code: 'replaced', detail: file });
}

function inTransaction<Result>(db: Db, work: () => Result): Result {
  db.exec('begin immediate');
  try {
    const result = work();
    db.exec('commit');
    return result;
  } catch (error) {
    if (db.inTransaction) db.exec('rollback');
    throw error;
  }
}

function appender(db: Db, lock: Lock, file: string): (entries: readonly Entry[]) => readonly Acknowledged[] {
  const opened = identityOf(file);
  const { standing } = statementsOf(db);
  const { insert, note } = writersOf(db);
  let uncopied = 0;
  const write = (entries: readonly Entry[]): readonly Acknowledged[] => {
    const stands = standing(askedOf(entries));
    const { rows, acknowledged } = admit(stands, entries);
    insert(rows);
    const last = rows.at(-1);
    if (last) note({ number: last.unitNumber, hash: last.unitHash }, stands.head.number);
    uncopied += rows.reduce((sum, { text }) => sum + text.length, 0);
    return acknowledged;
  };
  return (entries) =>
    lock.hold(() => {
      checkPlace(file, opened);
      const acknowledged = inTransaction(db, () => write(entries));
      if (uncopied > COPY_AFTER) {
        uncopied = 0;
        db.pragma('wal_checkpoint(PASSIVE)');
      }
      return acknowledged;
    });
}

/** Reading methods on an open database. */
function reader(db: Db): Pick<Store, 'read' | 'rows' | 'head'> {
  const { rows, head } = statementsOf(db);
  return {
    read: async (from, range = {}) => Promise.resolve(guarded(() => readRows(rows(from, range)))),
    rows: async (from, most) => Promise.resolve(guarded(() => rows(from, { most }))),
    head: async () => Promise.resolve(guarded(head)),
  };
}

function closer(db: Db, lock: Lock): () => Promise<void> {
  let open = true;
  return async () => {
    if (!open) return Promise.resolve();
    open = false;
    // Best effort: what is still in the log is found there by the next one who opens the file.
    try {
      lock.hold(() => db.pragma('wal_checkpoint(TRUNCATE)'));
    } catch {}
    db.close();
    lock.close();
    return Promise.resolve();
  };
}

function prepare(db: Db, lock: Lock, settings: readonly string[]): void {
  lock.hold(() => {
    refuseBackup(db);
    makeDurable(db);
    for (const setting of settings) db.pragma(setting);
    if (!isJournal(db)) createTables(db);
  });
}

/**
 * SQLite says only that it could not open a file; the lock's file, which holds nothing, tells why. The journal's own is not
 * tried: closing it here would let go of the system's locks that SQLite holds on it.
 */
function checkRights(file: string): void {
  mkdirSync(dirname(file), { recursive: true });
  if (existsSync(restoringOf(file)))
    throw new JournalError({
      code: 'unavailable',
      detail: 'a restore was not finished: run doffline journal restore again, with --force',
    });
  closeSync(openSync(lockFileOf(file), 'a'));
}

/** Opens the journal in `file`, and makes it where there is none. */
export async function openSqlite(file: string, options: SqliteOptions = {}): Promise<Store> {
  const { waitMs = USUAL_WAIT, settings = [] } = options;
  guarded(() => checkRights(file));
  const lock = lockOn(await openFile(lockFileOf(file), waitMs));
  const db = await openFile(file, waitMs);
  guarded(() => prepare(db, lock, settings));
  const append = appender(db, lock, file);
  const { load, save } = snapshotStatements(db);
  return {
    ...reader(db),
    append: async (entries) => {
      checkAlone(entries);
      return Promise.resolve(guarded(() => append(entries)));
    },
    snapshots: {
      load: async (view) => Promise.resolve(guarded(() => load(view))),
      save: async (snapshot) => Promise.resolve(guarded(() => lock.hold(() => save(snapshot)))),
    },
    close: closer(db, lock),
  };
}

/** Opens an existing journal for reading alone: nothing is made, changed or locked. */
export async function readSqlite(file: string): Promise<Store & { readonly db: Db }> {
  const db = await openToRead(file, USUAL_WAIT);
  guarded(() => {
    if (!isJournal(db)) throw new JournalError({ code: 'damaged', detail: 'the file is no journal' });
  });
  const refuse = (): never => {
    throw new JournalError({ code: 'read-only', detail: 'opened for reading' });
  };
  const { load } = snapshotStatements(db);
  return {
    ...reader(db),
    db,
    append: async () => Promise.resolve(refuse()),
    snapshots: {
      load: async (view) => Promise.resolve(guarded(() => load(view))),
      save: async () => Promise.resolve(refuse()),
    },
    close: async () => Promise.resolve(void db.close()),
  };
}
