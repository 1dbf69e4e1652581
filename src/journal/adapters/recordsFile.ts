// The server's records (src/server/store) as far as a backup must know them: a SQLite file beside the journal, the newest form
// of it, and what must never come alive again. A journal knows nothing of accounts; this file is the one exception,
// because a unit whose disk dies gets back both or neither. test/server/backup.test.ts holds it to the server.
import { closeSync, openSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { JournalError } from '../problems.ts';
import { guarded } from './sqliteFaults.ts';
import { type Db, openFile } from './sqliteFile.ts';

/** The server's records beside a journal's file. */
export const recordsBeside = (journal: string): string => join(dirname(journal), 'unit.sqlite');

/** The newest form of the records (src/server/store/migrations.ts). */
export const RECORDS_FORM = 3;

/** What lets somebody in for a while: it is in no backup, and nothing of it is alive after a restore. */
const SHORT_LIVED: readonly string[] = ['session', 'pairing'];

const WAIT = 5000;

export interface Records {
  readonly form: number;
  readonly content: Uint8Array;
}

/**
 * Hashes of passwords come into it: nobody else may read it from its first byte on. What a program that was killed left under
 * the same name, which holds the process's number, goes first.
 */
export function emptyFile(file: string): void {
  rmSync(file, { force: true });
  closeSync(openSync(file, 'wx', 0o600));
}

const hasTable = (db: Db, name: string): boolean =>
  db.prepare('select 1 from sqlite_schema where name = ?').get(name) !== undefined;

function formOf(db: Db): number {
  if (!hasTable(db, 'form')) return 0;
  const row = db.prepare('select version from form').get() as { readonly version: number } | undefined;
  return row?.version ?? 0;
}

/** Throws where SQLite finds its pages damaged, or a newer release wrote them. Gives back the form. */
function checked(db: Db): number {
  const said = db.pragma('integrity_check(1)') as readonly { readonly integrity_check: string }[];
  const [{ integrity_check: first } = { integrity_check: 'nothing' }] = said;
  if (first !== 'ok') throw new JournalError({ code: 'damaged', detail: `the server’s records: ${first}` });
  const form = formOf(db);
  if (form > RECORDS_FORM)
    throw new JournalError({
      code: 'newer-format',
      detail: `records of form ${form}, this release knows ${RECORDS_FORM}`,
    });
  return form;
}

/** Checks the records in a file that is nobody's yet, and takes out of it, without a trace, what must not live on. */
export async function stripped(file: string): Promise<number> {
  const db = await openFile(file, WAIT);
  try {
    return guarded(() => {
      const form = checked(db);
      db.pragma('secure_delete = ON');
      for (const table of SHORT_LIVED) if (hasTable(db, table)) db.exec(`delete from ${table}`);
      db.exec('vacuum');
      return form;
    });
  } finally {
    db.close();
  }
}

/** The records of one moment, whoever writes meanwhile; `part` is a name for the work, free again afterwards. */
export async function recordsIn(file: string, part: string): Promise<Records> {
  try {
    guarded(() => emptyFile(part));
    // To be read and written: what a crash left half done is undone first, which a reader alone may not.
    const db = await openFile(file, WAIT);
    try {
      guarded(() => db.prepare('vacuum into ?').run(part));
    } finally {
      db.close();
    }
    const form = await stripped(part);
    return { form, content: guarded(() => readFileSync(part)) };
  } finally {
    for (const name of [part, `${part}-journal`]) rmSync(name, { force: true });
  }
}
