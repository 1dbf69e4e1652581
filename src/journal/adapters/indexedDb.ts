// The journal in a browser: the tablet in the anteroom writes here first, and to the unit's store when it is in reach. Every
// transaction asks for `strict` durability, so that what was acknowledged outlives a browser that is killed. Entries are
// only ever added, never put over others. Works at insecure addresses too, where hardly anything else does.
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import { admit, type Asked, askedOf, checkAlone, type Standing } from '../admit.ts';
import { type Head, type Row, START } from '../entry.ts';
import { readRows } from '../fold.ts';
import { type Range, type Snapshot, type Store, USUAL_PAGE } from '../port.ts';
import { type FailureCode, JournalError } from '../problems.ts';
import { unitOf } from './memory.ts';

interface Tables extends DBSchema {
  entries: { key: number; value: Row; indexes: { device: [string, number] } };
  head: { key: 'head'; value: Head };
  snapshots: { key: string; value: Snapshot };
}

type Db = IDBPDatabase<Tables>;
type Mode = 'readonly' | 'readwrite';
type Transaction<M extends Mode> = IDBPTransaction<Tables, ('entries' | 'head')[], M>;

const FAILED: Readonly<Record<string, FailureCode>> = {
  QuotaExceededError: 'full',
  ReadOnlyError: 'read-only',
  VersionError: 'newer-format',
  DataCloneError: 'damaged',
  UnknownError: 'unavailable',
};

function failure(error: unknown): JournalError {
  if (error instanceof JournalError) return error;
  const { name, message } = error instanceof Error ? error : { name: '', message: String(error) };
  return new JournalError({ code: FAILED[name] ?? 'unavailable', detail: `${name}: ${message}` }, error);
}

async function guarded<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    throw failure(error);
  }
}

const ownRange = (device: string, from: number, to: number): IDBKeyRange =>
  IDBKeyRange.bound([device, from], [device, to]);

async function standing(transaction: Transaction<'readwrite'>, asked: readonly Asked[]): Promise<Standing> {
  const entries = transaction.objectStore('entries');
  const own = entries.index('device');
  const devices = new Map<string, Head>();
  const stored: Row[] = [];
  for (const { device, from, to } of asked) {
    const last = await own.openCursor(ownRange(device, 1, Number.MAX_SAFE_INTEGER), 'prev');
    devices.set(device, last ? { number: last.value.number, hash: last.value.hash } : START);
    stored.push(...(await own.getAll(ownRange(device, from, to))));
  }
  const head = (await transaction.objectStore('head').get('head')) ?? START;
  return { unit: unitOf(await entries.get(1)), head, devices, stored };
}

async function append(db: Db, ...[entries, how]: Parameters<Store['append']>): ReturnType<Store['append']> {
  checkAlone(entries, how);
  const transaction = db.transaction(['entries', 'head'], 'readwrite', { durability: 'strict' });
  try {
    const { rows, acknowledged } = admit(await standing(transaction, askedOf(entries)), entries);
    const last = rows.at(-1);
    const writes: Promise<unknown>[] = rows.map((row) => transaction.objectStore('entries').add(row));
    if (last)
      writes.push(
        transaction.objectStore('head').put({ number: last.unitNumber, hash: last.unitHash }, 'head'),
      );
    await Promise.all([...writes, transaction.done]);
    return acknowledged;
  } catch (error) {
    await undo(transaction);
    throw error;
  }
}

/** Ends a transaction without its writes; one that has ended by itself is left alone. */
async function undo(transaction: Transaction<'readwrite'>): Promise<void> {
  const done = transaction.done.catch(() => undefined);
  try {
    transaction.abort();
  } catch {}
  await done;
}

async function select(db: Db, from: number, range: Range): Promise<readonly Row[]> {
  const { most = USUAL_PAGE, device, backwards = false } = range;
  const [low, high] = backwards ? [0, from] : [from, Number.MAX_SAFE_INTEGER];
  const entries = db.transaction('entries').store;
  if (!backwards)
    return device === undefined
      ? entries.getAll(IDBKeyRange.bound(low, high), most)
      : entries.index('device').getAll(ownRange(device, low, high), most);
  return device === undefined
    ? walk(await entries.openCursor(IDBKeyRange.bound(low, high), 'prev'), most)
    : walk(await entries.index('device').openCursor(ownRange(device, low, high), 'prev'), most);
}

interface Cursor {
  readonly value: Row;
  readonly continue: () => Promise<Cursor | null>;
}

async function walk(first: Cursor | null, most: number): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for (let cursor = first; cursor && rows.length < most; cursor = await cursor.continue())
    rows.push(cursor.value);
  return rows;
}

function createTables(db: Db): void {
  db.createObjectStore('entries', { keyPath: 'unitNumber' }).createIndex('device', ['device', 'number'], {
    unique: true,
  });
  db.createObjectStore('head');
  db.createObjectStore('snapshots', { keyPath: 'view' });
}

/** Opens the browser's journal of this name, and makes it where there is none. */
export async function openIndexedDb(name = 'doffline-journal'): Promise<Store> {
  const db = await guarded(() => openDB<Tables>(name, 1, { upgrade: createTables }));
  return {
    append: (entries, how) => guarded(() => append(db, entries, how)),
    read: (from, range = {}) => guarded(async () => readRows(await select(db, from, range))),
    rows: (from, most) => guarded(() => select(db, from, { most })),
    head: () => guarded(async () => (await db.get('head', 'head')) ?? START),
    snapshots: {
      load: (view) => guarded(() => db.get('snapshots', view)),
      save: (snapshot) => guarded(async () => void (await db.put('snapshots', snapshot))),
    },
    close: async () => Promise.resolve(db.close()),
  };
}
