// Backups of a journal: one SQLite file, whatever the journal is kept in, with the server's records where they lie beside it.
// Making one is reading: others go on writing. The records are read first and the journal after them, so that the journal
// never lacks what the records rest on. Nothing is ever overwritten: a backup takes a name that is free.
import { closeSync, existsSync, fsyncSync, linkSync, mkdirSync, openSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Head, Row } from '../entry.ts';
import { recordsBeside, recordsIn, emptyFile } from './recordsFile.ts';
import { keepRecords } from './recordsKept.ts';
import { guarded } from './sqliteFaults.ts';
import { companions, createTables, openFile, openToRead } from './sqliteFile.ts';
import { statementsOf, writersOf } from './sqliteStatements.ts';

const WAIT = 5000;

export function force(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** On the disk, with its name. */
export function forceFile(file: string): void {
  force(file);
  if (process.platform !== 'win32') force(dirname(file));
}

export const partOf = (file: string): string => `${file}.${process.pid}.part`;

/** Gives a finished file its name; throws EEXIST where the name is taken. */
function publish(part: string, file: string): void {
  force(part);
  linkSync(part, file);
  rmSync(part);
  forceFile(file);
}

async function written(file: string, make: (part: string) => Promise<void>): Promise<void> {
  guarded(() => mkdirSync(dirname(file), { recursive: true }));
  const part = partOf(file);
  try {
    await make(part);
    guarded(() => publish(part, file));
  } finally {
    for (const name of [part, `${part}-journal`, ...companions(part)]) rmSync(name, { force: true });
  }
}

/** A journal as it stands at one moment, with what is only in its log, as one file. */
export async function copyOf(from: string, to: string): Promise<void> {
  const db = await openToRead(from, WAIT);
  try {
    guarded(() => {
      emptyFile(to);
      db.prepare('vacuum into ?').run(to);
    });
  } finally {
    db.close();
  }
}

async function headIn(file: string): Promise<Head> {
  const db = await openToRead(file, WAIT);
  try {
    return guarded(() => statementsOf(db).head());
  } finally {
    db.close();
  }
}

export const backupSqlite = (from: string, to: string, now: Date): Promise<void> =>
  written(to, async (part) => {
    const records = recordsBeside(from);
    const head = await headIn(from);
    const kept = existsSync(records) ? await recordsIn(records, `${part}.records`) : undefined;
    await copyOf(from, part);
    if (kept) await keepRecords(part, kept, head, now);
  });

/** Rows of any journal as a SQLite file. */
export const backupRows = (pages: AsyncIterable<readonly Row[]>, to: string): Promise<void> =>
  written(to, async (part) => {
    const rows: Row[] = [];
    for await (const page of pages) rows.push(...page);
    const db = await openFile(part, WAIT);
    try {
      guarded(() =>
        createTables(db, () => {
          const { insert, note } = writersOf(db);
          insert(rows);
          const last = rows.at(-1);
          if (last) note({ number: last.unitNumber, hash: last.unitHash }, 0);
        }),
      );
    } finally {
      db.close();
    }
  });
