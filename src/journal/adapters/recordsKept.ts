// The server's records inside a backup of the journal: one row, with a hash of its bytes and the entry at which it was taken, so
// that what was altered or does not belong together is found before anything is put in place. The row gives the file
// another form than a journal's, so that no release opens a backup in a journal's place, passwords' hashes and all.
import { writeFileSync } from 'node:fs';
import type { Head } from '../entry.ts';
import { hashOfBytes } from '../hash.ts';
import { JournalError } from '../problems.ts';
import { emptyFile, type Records, RECORDS_FORM } from './recordsFile.ts';
import { guarded } from './sqliteFaults.ts';
import { type Db, openFile, openToRead } from './sqliteFile.ts';
import { BACKUP_VERSION, RECORDS_TABLE, SCHEMA_VERSION } from './sqliteSchema.ts';

const WAIT = 5000;

export interface Kept {
  /** When the backup was begun. */
  readonly madeAt: string;
  readonly form: number;
}

interface Row {
  readonly made_at: string;
  readonly unit_number: number;
  readonly unit_hash: string;
  readonly form: number;
  readonly sha256: string;
  readonly content: Uint8Array;
}

const damaged = (what: string): JournalError =>
  new JournalError({ code: 'damaged', detail: `the server’s records in the backup: ${what}` });

/** Puts records into a copy of a journal. `head`: where the journal stood before the records were read. */
export async function keepRecords(
  part: string,
  { form, content }: Records,
  head: Head,
  madeAt: Date,
): Promise<void> {
  const db = await openFile(part, WAIT);
  try {
    guarded(() => {
      db.exec('begin immediate');
      db.exec(RECORDS_TABLE);
      db.prepare(
        `insert into records (id, made_at, unit_number, unit_hash, form, sha256, content) values (1, ?, ?, ?, ?, ?, ?)`,
      ).run(madeAt.toISOString(), head.number, head.hash, form, hashOfBytes(content), content);
      db.pragma(`user_version = ${BACKUP_VERSION}`);
      db.exec('commit');
    });
  } finally {
    db.close();
  }
}

const isBackup = (db: Db): boolean =>
  (db.pragma('user_version') as readonly { readonly user_version: number }[])[0]?.user_version ===
  BACKUP_VERSION;

function checkedRow(db: Db): Row {
  const row = db.prepare('select * from records where id = 1').get() as Row | undefined;
  if (!row) throw damaged('they are missing');
  if (row.form > RECORDS_FORM)
    throw new JournalError({
      code: 'newer-format',
      detail: `records of form ${row.form}, this release knows ${RECORDS_FORM}`,
    });
  if (hashOfBytes(row.content) !== row.sha256) throw damaged('they were altered');
  const at = db.prepare('select unit_hash as hash from entry where unit_number = ?').get(row.unit_number);
  if (row.unit_number > 0 && (at as { readonly hash: string } | undefined)?.hash !== row.unit_hash)
    throw damaged('they belong to another journal');
  return row;
}

/** What records a backup holds; undefined where it is a journal alone. Throws where they are damaged or too new. */
export async function keptIn(backup: string): Promise<Kept | undefined> {
  const db = await openToRead(backup, WAIT);
  try {
    return guarded(() => {
      if (!isBackup(db)) return undefined;
      const { made_at: madeAt, form } = checkedRow(db);
      return { madeAt, form };
    });
  } finally {
    db.close();
  }
}

/** Takes the records out of a copy of a backup, without a trace, into a file of their own; what is left is a journal. */
export async function unpacked(part: string, records: string): Promise<boolean> {
  const db = await openFile(part, WAIT);
  try {
    return guarded(() => {
      if (!isBackup(db)) return false;
      const { content } = checkedRow(db);
      emptyFile(records);
      writeFileSync(records, content);
      db.pragma('secure_delete = ON');
      db.exec('drop table records');
      db.pragma(`user_version = ${SCHEMA_VERSION}`);
      return true;
    });
  } finally {
    db.close();
  }
}
