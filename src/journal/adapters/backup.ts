// Backup and restore over whatever the journal is kept in. A backup is always one SQLite file, so that what was in a database
// can be restored to a folder and the other way round. The server's records go with a folder's journal; those in a database
// are in the hospital's own backup of it.
import { rowsUpTo } from '../audit.ts';
import { START } from '../entry.ts';
import type { Store } from '../port.ts';
import { type JournalPlace, placeName } from './open.ts';
import { headAt, restorePostgres } from './postgresRestore.ts';
import { readSqlite } from './sqlite.ts';
import { backupRows, backupSqlite } from './sqliteBackup.ts';
import { type Restored, restoreSqlite, thereIn } from './sqliteRestore.ts';

export { keptIn } from './recordsKept.ts';

/**
 * Writes the journal in `place`, open as `store`, to a file that must not exist. Rows are never changed and only added, so
 * those up to the end noted first are one moment's journal, whoever writes meanwhile.
 */
export async function makeBackup(place: JournalPlace, store: Store, to: string, now: Date): Promise<void> {
  if (place.in === 'folder') return backupSqlite(place.file, to, now);
  const { number } = await store.head();
  return backupRows(rowsUpTo(store, number), to);
}

/** What is there already, by name: a restore puts it aside, or would mix with it. */
export async function alreadyAt(place: JournalPlace): Promise<readonly string[]> {
  if (place.in === 'folder') return thereIn(place.file);
  return (await headAt(place.address)).number > START.number ? [placeName(place)] : [];
}

/** Puts a sound backup in place; the server's records only into a folder. */
export async function restore(from: string, place: JournalPlace): Promise<Restored> {
  if (place.in === 'folder') return restoreSqlite(from, place.file);
  const source = await readSqlite(from);
  try {
    const { number } = await source.head();
    const aside = await restorePostgres(place.address, rowsUpTo(source, number));
    return { aside: aside === undefined ? [] : [aside], takenOut: undefined };
  } finally {
    await source.close();
  }
}
