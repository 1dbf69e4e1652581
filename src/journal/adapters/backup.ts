// Backup and restore over whatever the journal is kept in. A backup is always one SQLite file, so that what was in a database
// can be restored to a folder and the other way round.
import { existsSync } from 'node:fs';
import { rowsUpTo } from '../audit.ts';
import { START } from '../entry.ts';
import type { Store } from '../port.ts';
import type { JournalPlace } from './open.ts';
import { headAt, restorePostgres } from './postgresRestore.ts';
import { readSqlite } from './sqlite.ts';
import { backupRows, backupSqlite, restoreSqlite } from './sqliteBackup.ts';

/**
 * Writes the journal in `place`, open as `store`, to a file that must not exist. Rows are never changed and only added, so
 * those up to the end noted first are one moment's journal, whoever writes meanwhile.
 */
export async function makeBackup(place: JournalPlace, store: Store, to: string): Promise<void> {
  if (place.in === 'folder') return backupSqlite(place.file, to);
  const { number } = await store.head();
  return backupRows(rowsUpTo(store, number), to);
}

/** Whether a restore would have to put a journal aside. */
export async function hasEntries(place: JournalPlace): Promise<boolean> {
  return place.in === 'folder' ? existsSync(place.file) : (await headAt(place.address)).number > START.number;
}

/** Puts a sound backup in place. `aside`: where what was there is kept now. */
export async function restore(
  from: string,
  place: JournalPlace,
): Promise<{ readonly aside: string | undefined }> {
  if (place.in === 'folder') return { aside: await restoreSqlite(from, place.file) };
  const source = await readSqlite(from);
  try {
    const { number } = await source.head();
    return { aside: await restorePostgres(place.address, rowsUpTo(source, number)) };
  } finally {
    await source.close();
  }
}
