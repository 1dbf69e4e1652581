// Backups of a journal: one SQLite file, whatever the journal is kept in. Making one is reading: others go on writing. Nothing
// is ever overwritten: a backup takes a name that is free, and a journal that is replaced keeps its file under another name.
import { closeSync, existsSync, fsyncSync, linkSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Row } from '../entry.ts';
import { guarded } from './sqliteFaults.ts';
import { companions, createTables, openFile, openToRead } from './sqliteFile.ts';
import { lockFileOf, lockOn } from './sqliteLock.ts';
import { writersOf } from './sqliteStatements.ts';

const WAIT = 5000;

function force(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** On the disk, with its name. */
function forceFile(file: string): void {
  force(file);
  if (process.platform !== 'win32') force(dirname(file));
}

const partOf = (file: string): string => `${file}.${process.pid}.part`;

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
    for (const name of [part, ...companions(part)]) rmSync(name, { force: true });
  }
}

/** A journal as it stands at one moment, with what is only in its log, as one file. */
async function copyOf(from: string, to: string): Promise<void> {
  const db = await openToRead(from, WAIT);
  try {
    guarded(() => db.prepare('vacuum into ?').run(to));
  } finally {
    db.close();
  }
}

export const backupSqlite = (from: string, to: string): Promise<void> =>
  written(to, (part) => copyOf(from, part));

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

function freeName(folder: string): string {
  for (let count = 1; ; count += 1) {
    const name = join(folder, `journal.replaced-${count}.sqlite`);
    if (!existsSync(name)) return name;
  }
}

/** Puts a journal's file aside with what belongs to it. */
function putAside(file: string): string {
  const aside = freeName(dirname(file));
  for (const name of [...companions(file), file]) renameSync(name, aside + name.slice(file.length));
  return aside;
}

/**
 * A backup as the journal in `file`. What is there already is put aside, and its new name given back; a program that has it
 * open is refused with `replaced` at its next entry.
 */
export async function restoreSqlite(backup: string, file: string): Promise<string | undefined> {
  guarded(() => mkdirSync(dirname(file), { recursive: true }));
  const lock = lockOn(await openFile(lockFileOf(file), WAIT));
  const part = partOf(file);
  try {
    await copyOf(backup, part);
    return guarded(() =>
      lock.hold(() => {
        force(part);
        const aside = existsSync(file) ? putAside(file) : undefined;
        renameSync(part, file);
        forceFile(file);
        return aside;
      }),
    );
  } finally {
    lock.close();
    rmSync(part, { force: true });
  }
}
