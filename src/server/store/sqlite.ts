// The server's records in a SQLite file beside the journal, not in it: they change, and entries never do. It has a rollback
// journal, not a write-ahead log: writes are rare, and the fault of the log that src/journal/adapters/sqliteLock.ts works
// around is none here. Where a backup was restored over them, a server that still has the old ones open answers nobody.
import { accessSync, chmodSync, constants, existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { JournalError } from '../../journal/problems.ts';
import { guarded } from '../../journal/adapters/sqliteFaults.ts';
import { type Db, openFile } from '../../journal/adapters/sqliteFile.ts';
import { type Database, type Sql, turns, type Value } from './sql.ts';

/** How long to stand still for another program, in milliseconds. */
const WAIT = 2000;

const named = (text: string): string => text.replaceAll('@', '');

function statements(db: Db): Sql {
  return {
    all: async <Row>(text: string, ...values: readonly Value[]) =>
      Promise.resolve(guarded(() => db.prepare(named(text)).all(...values) as Row[])),
    run: async (text, ...values) =>
      Promise.resolve(guarded(() => db.prepare(named(text)).run(...values).changes)),
  };
}

async function transaction<Result>(db: Db, work: () => Promise<Result>): Promise<Result> {
  guarded(() => db.exec('begin immediate'));
  try {
    const result = await work();
    guarded(() => db.exec('commit'));
    return result;
  } catch (error) {
    if (db.inTransaction) db.exec('rollback');
    throw error;
  }
}

/** The file's number on the disk: another one means that others were put in its place. */
const identityOf = (file: string): bigint => statSync(file, { bigint: true }).ino;

function inPlace(file: string): () => void {
  const opened = identityOf(file);
  return () => {
    const now = guarded(() => (existsSync(file) ? identityOf(file) : undefined));
    if (now !== opened) throw new JournalError({ code: 'replaced', detail: file });
  };
}

function checkRights(file: string): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  accessSync(dirname(file), constants.W_OK);
  if (existsSync(file)) accessSync(file, constants.W_OK);
}

/** Opens the file, and makes it where there is none. `settings` are further pragmas, for tests. */
export async function openSqliteRecords(file: string, settings: readonly string[] = []): Promise<Database> {
  guarded(() => checkRights(file));
  const db = await openFile(file, WAIT);
  guarded(() => {
    // Hashes of passwords are nobody else's to read.
    chmodSync(file, 0o600);
    for (const setting of ['journal_mode = TRUNCATE', 'synchronous = FULL', 'foreign_keys = ON', ...settings])
      db.pragma(setting);
  });
  const sql = statements(db);
  const turn = turns();
  const check = inPlace(file);
  const checked = <Result>(work: () => Promise<Result>): Promise<Result> =>
    turn(async () => {
      check();
      return work();
    });
  return {
    all: (text, ...values) => checked(() => sql.all(text, ...values)),
    write: (work) => checked(() => transaction(db, () => work(sql))),
    close: () => turn(async () => Promise.resolve(void db.close())),
  };
}
