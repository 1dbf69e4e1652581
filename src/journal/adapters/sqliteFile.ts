// A SQLite file as the journal opens it: write-ahead log, every commit forced to the disk before it returns, made with its
// tables in one step. The package is native and loads only here, when a journal is opened.
import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import type Database from 'libsql';
import { JournalError } from '../problems.ts';
import { guarded, sqliteError } from './sqliteFaults.ts';
import { APPLICATION_ID, BACKUP_VERSION, SCHEMA_VERSION, TABLES, TRIGGERS } from './sqliteSchema.ts';

export type Db = Database.Database;

async function open(name: string, waitMs: number): Promise<Db> {
  const { default: Sqlite } = await import('libsql');
  return guarded(() => new Sqlite(name, { timeout: waitMs }));
}

/** Opens a file to write to it, and makes it where there is none. */
export const openFile = (file: string, waitMs: number): Promise<Db> => open(file, waitMs);

const uriOf = (file: string, how: string): string =>
  `file:${encodeURI(resolve(file)).replaceAll(/[?#]/g, encodeURIComponent)}?${how}`;

const hasLog = (file: string): boolean => existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0;

/**
 * Opens an existing file without any right to write. Where the folder may not be written either, SQLite cannot make the
 * memory that readers share; a file without a log is then read as one that nobody changes.
 */
export async function openToRead(file: string, waitMs: number): Promise<Db> {
  const db = await open(uriOf(file, 'mode=ro'), waitMs);
  try {
    guarded(() => db.pragma('user_version'));
    return db;
  } catch (error) {
    db.close();
    const { problem } = sqliteError(error);
    if (problem.code !== 'read-only' && problem.code !== 'unavailable') throw error;
    if (hasLog(file)) throw error;
    return open(uriOf(file, 'immutable=1'), waitMs);
  }
}

function numberOf(db: Db, pragma: string): number {
  const [row] = db.pragma(pragma) as readonly Readonly<Record<string, number>>[];
  return Object.values(row ?? {})[0] ?? 0;
}

/** Whether the file holds a journal of this form. Throws where it holds something else. */
export function isJournal(db: Db): boolean {
  const id = numberOf(db, 'application_id');
  const version = numberOf(db, 'user_version');
  const tables = db.prepare('select count(*) as n from sqlite_schema').get() as { readonly n: number };
  if (id === 0 && version === 0 && tables.n === 0) return false;
  const own = db
    .prepare(
      `select count(*) as n from sqlite_schema where type = 'table' and name in ('entry', 'head', 'snapshot')`,
    )
    .get() as { readonly n: number };
  // A view in a table's place could run without an end.
  if (id === APPLICATION_ID && own.n !== 3)
    throw new JournalError({ code: 'damaged', detail: 'the tables of the journal are not there' });
  if (id !== APPLICATION_ID) throw new JournalError({ code: 'damaged', detail: 'the file is no journal' });
  if (version > SCHEMA_VERSION && version !== BACKUP_VERSION)
    throw new JournalError({
      code: 'newer-format',
      detail: `form ${version}, this release knows ${SCHEMA_VERSION}`,
    });
  return true;
}

/**
 * Triggers that are not as the journal makes them: they act on entries that are yet to come. One that is missing lets mistakes
 * through.
 */
export function strangeTriggers(db: Db): readonly string[] {
  const own = new Map(
    [...TRIGGERS.matchAll(/create trigger (\w+)[\s\S]*?\nend/g)].map(([text, name = '']) => [name, text]),
  );
  const found = db.prepare(`select name, sql from sqlite_schema where type = 'trigger'`).all() as readonly {
    readonly name: string;
    readonly sql: string;
  }[];
  const there = new Set(found.map(({ name }) => name));
  return [
    ...found
      .filter(({ name, sql }) => own.get(name)?.toLowerCase() !== sql.toLowerCase())
      .map(({ name }) => `the trigger ${name} is not one of the journal's`),
    ...[...own.keys()].filter((name) => !there.has(name)).map((name) => `the trigger ${name} is missing`),
  ];
}

/** Throws where the file is a backup with the server's records: written on, it would be a journal that holds passwords' hashes. */
export function refuseBackup(db: Db): void {
  if (numberOf(db, 'user_version') === BACKUP_VERSION)
    throw new JournalError({
      code: 'read-only',
      detail: 'the file is a backup: put it in place with doffline journal restore',
    });
}

/** Every commit is on the disk when it returns. The log is copied into the file only by the one who writes (see lock). */
export function makeDurable(db: Db): void {
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('wal_autocheckpoint = 0');
}

export function createTables(db: Db, fill: () => void = () => undefined): void {
  db.exec('begin immediate');
  try {
    db.exec(TABLES);
    fill();
    db.exec(TRIGGERS);
    db.pragma(`application_id = ${APPLICATION_ID}`);
    db.pragma(`user_version = ${SCHEMA_VERSION}`);
    db.exec('commit');
  } catch (error) {
    if (db.inTransaction) db.exec('rollback');
    throw error;
  }
}

/** Log and shared memory that belong to a file. */
export const companions = (file: string): readonly string[] =>
  [`${file}-wal`, `${file}-shm`].filter((name) => existsSync(name));
