// Which journal is meant: a folder on this machine, or the database that DATABASE_URL names. One place for all programs.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Store } from '../port.ts';
import { guarded } from './sqliteFaults.ts';
import { type Db, strangeTriggers } from './sqliteFile.ts';
import { openPostgres } from './postgres.ts';
import { openSqlite, readSqlite } from './sqlite.ts';

export type JournalPlace =
  | { readonly in: 'folder'; readonly file: string }
  | { readonly in: 'database'; readonly address: string };

export const USUAL_FOLDER = 'data';

/** A folder that is named outright comes first, then the database, then DOFFLINE_DATA, then `data`. */
export function journalPlace(
  env: Readonly<Record<string, string | undefined>>,
  folder?: string,
): JournalPlace {
  const address = env.DATABASE_URL;
  if (folder === undefined && address) return { in: 'database', address };
  return { in: 'folder', file: join(folder ?? (env.DOFFLINE_DATA || USUAL_FOLDER), 'journal.sqlite') };
}

/** The place in words, without a database's password. */
export function placeName(place: JournalPlace): string {
  if (place.in === 'folder') return place.file;
  try {
    const { host, pathname, searchParams } = new URL(place.address);
    const schema = searchParams.get('schema');
    return `PostgreSQL ${host}${pathname}${schema === null ? '' : `, schema ${schema}`}`;
  } catch {
    return 'PostgreSQL';
  }
}

/** Opens it for writing, and makes it where there is none. */
export const openJournal = (place: JournalPlace): Promise<Store> =>
  place.in === 'folder' ? openSqlite(place.file) : openPostgres(place.address);

/** Opens it for reading; undefined where there is none in the folder. */
export async function readJournal(place: JournalPlace): Promise<Store | undefined> {
  if (place.in === 'database') return openPostgres(place.address);
  return existsSync(place.file) ? readSqlite(place.file) : undefined;
}

/** What the database says when it looks at its own pages, and triggers that are not the journal's; nothing where it has no such check. Throws where it cannot even look. */
export function selfCheckOf(store: Store & { readonly db?: Db }): readonly string[] {
  const { db } = store;
  if (!db) return [];
  const rows = guarded(() => db.pragma('integrity_check(20)')) as readonly {
    readonly integrity_check: string;
  }[];
  const said = rows.map((row) => row.integrity_check).filter((one) => one !== 'ok');
  return [...said, ...guarded(() => strangeTriggers(db))];
}
