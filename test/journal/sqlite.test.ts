// The journal in a SQLite file: the contract, what the database itself refuses, and disks that are full or may not be written.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openSqlite, readSqlite } from '../../src/journal/adapters/sqlite.ts';
import { makeDurable, openFile } from '../../src/journal/adapters/sqliteFile.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import type { Acknowledged, Store } from '../../src/journal/port.ts';
import { sentenceOf } from '../../src/journal/problems.ts';
import { everything, journalContract, problemOf, verdictOf } from './contract.ts';
import { device, notes, twentyEight } from './samples.ts';

journalContract('SQLite', async () => {
  const place = mkdtempSync(join(tmpdir(), 'journal-'));
  return Promise.resolve({
    open: () => openSqlite(join(place, 'journal.sqlite')),
    remove: async () => Promise.resolve(rmSync(place, { recursive: true })),
  });
});

let folder: string;
const file = (): string => join(folder, 'journal.sqlite');
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'journal-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('a connection forces every commit to the disk and copies the log only when told', async () => {
  const db = await openFile(file(), 1000);
  makeDurable(db);
  expect(db.pragma('journal_mode')).toMatchObject([{ journal_mode: 'wal' }]);
  expect(db.pragma('synchronous')).toMatchObject([{ synchronous: 2 }]);
  expect(db.pragma('wal_autocheckpoint')).toMatchObject([{ wal_autocheckpoint: 0 }]);
  db.close();
});

test('the log is copied into the file as it grows, while others read', async () => {
  const store = await openSqlite(file());
  const reader = await readSqlite(file());
  const desk = device('desk');
  for (let turn = 0; turn < 30; turn += 1) {
    const text = String(turn).repeat(50_000);
    await store.append([
      desk.write('procedure.drafted', { procedure: 'p', version: '1', content: hashOfText(text), text }),
    ]);
    expect(await reader.head()).toMatchObject({ number: turn + 1 });
  }
  expect(statSync(file()).size).toBeGreaterThan(1_500_000);
  await reader.close();
  await store.close();
});

test('the database itself refuses to change, remove, replace or misplace', async () => {
  const store = await openSqlite(file());
  await store.append(twentyEight());
  const before = await store.rows(1, 100);
  const db = new Database(file());
  for (const sql of [
    `update entry set text = 'x' where unit_number = 3`,
    'update entry set unit_number = unit_number + 100',
    'delete from entry where unit_number = 28',
    `insert or replace into entry values (3, 'desk', 2, '', '', '', '')`,
    `insert or replace into entry values (29, 'desk', 2, '', '', '', '')`,
    `insert into entry values (30, 'other', 1, '', '', '', '')`,
    `insert into entry values (29, 'other', 2, '', '', '', '')`,
    'update head set unit_number = 3',
    'delete from head',
    `insert or replace into head values (1, 99, '')`,
  ])
    expect(() => db.exec(sql), sql).toThrow(/never|follows|forward|one end/);
  db.close();
  expect(await store.rows(1, 100)).toEqual(before);
  expect(await verdictOf(store)).toMatchObject({ flaws: [] });
  await store.close();
});

/** Appends one after the other until it fails; what was acknowledged, and the failure. */
async function fillUp(store: Store, entries: readonly Entry[]) {
  const acknowledged: Acknowledged[] = [];
  for (const entry of entries) {
    const problem = await problemOf(
      (async () => {
        acknowledged.push(...(await store.append([entry])));
      })(),
    );
    if (problem) return { acknowledged, problem };
  }
  return { acknowledged };
}

describe('a disk that is full', () => {
  test('is said, nothing acknowledged is lost, and writing goes on when there is room', async () => {
    const entries = notes(400);
    const store = await openSqlite(file(), { settings: ['max_page_count = 30'] });
    const { acknowledged, problem } = await fillUp(store, entries);
    expect(problem).toMatchObject({ code: 'full' });
    expect(sentenceOf(problem!)).toContain('no room');
    expect(acknowledged.length).toBeGreaterThan(10);
    expect(await everything(store)).toEqual(entries.slice(0, acknowledged.length));
    expect(await verdictOf(store)).toMatchObject({ entries: acknowledged.length, flaws: [] });
    await store.close();
    const roomy = await openSqlite(file());
    await roomy.append(entries);
    expect(await verdictOf(roomy)).toMatchObject({ entries: 400, flaws: [] });
    await roomy.close();
  });

  const disk = mkdtempSync(join(tmpdir(), 'journal-disk-'));
  const mounted =
    process.getuid?.() === 0 &&
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=512k', 'tmpfs', disk]).status === 0;

  test.skipIf(!mounted)('a real one, of half a megabyte (needs root, to mount it)', async () => {
    try {
      const entries = notes(5000);
      const store = await openSqlite(join(disk, 'journal.sqlite'));
      const { acknowledged, problem } = await fillUp(store, entries);
      expect(problem).toMatchObject({ code: 'full' });
      expect(await everything(store)).toEqual(entries.slice(0, acknowledged.length));
      await store.close();
      const again = await openSqlite(join(disk, 'journal.sqlite'));
      expect(await verdictOf(again, 10_000)).toMatchObject({ entries: acknowledged.length, flaws: [] });
      await again.close();
    } finally {
      spawnSync('umount', ['-l', disk]);
    }
  });
  afterAll(() => rmSync(disk, { recursive: true }));
});

describe('a journal that may only be read', () => {
  const setUser = process.seteuid?.bind(process);

  /** As somebody without rights over the folder: root may do everything. */
  async function withoutRights(work: () => Promise<void>): Promise<void> {
    const root = process.geteuid?.() === 0;
    chmodSync(folder, 0o555);
    chmodSync(file(), 0o444);
    if (root) setUser?.(65_534);
    try {
      await work();
    } finally {
      if (root) setUser?.(0);
      chmodSync(folder, 0o755);
    }
  }

  test('is told apart from one that is not there, and is read and verified', async () => {
    const store = await openSqlite(file());
    await store.append(notes(5));
    await store.close();
    for (const name of ['-wal', '-shm', '.lock']) rmSync(file() + name, { force: true });
    await withoutRights(async () => {
      expect(await problemOf(openSqlite(file()))).toMatchObject({ code: 'read-only' });
      const reader = await readSqlite(file());
      expect(await verdictOf(reader)).toMatchObject({ entries: 5, flaws: [] });
      expect(await problemOf(reader.append(notes(1)))).toMatchObject({ code: 'read-only' });
      await reader.close();
    });
  });

  test('a connection that the database holds to reading refuses with that reason', async () => {
    await (await openSqlite(file())).close();
    const store = await openSqlite(file(), { settings: ['query_only = on'] });
    expect(await problemOf(store.append(notes(1)))).toMatchObject({ code: 'read-only' });
    await store.close();
  });
});

test('another writer that does not finish makes it busy, and then it goes on', async () => {
  const store = await openSqlite(file(), { waitMs: 50 });
  const other = new Database(`${file()}.lock`);
  other.exec('begin exclusive');
  expect(await problemOf(store.append(notes(1)))).toMatchObject({ code: 'busy' });
  other.exec('rollback');
  other.close();
  expect(await store.append(notes(1))).toHaveLength(1);
  await store.close();
});

test('files that are no journal, or a newer release’s, are left alone', async () => {
  const foreign = new Database(file());
  foreign.exec('create table t (a)');
  foreign.close();
  expect(await problemOf(openSqlite(file()))).toMatchObject({ code: 'damaged' });
  const newer = join(folder, 'newer.sqlite');
  await (await openSqlite(newer)).close();
  const db = new Database(newer);
  db.pragma('user_version = 2');
  db.close();
  expect(await problemOf(openSqlite(newer))).toMatchObject({ code: 'newer-format' });
  expect(await problemOf(readSqlite(newer))).toMatchObject({ code: 'newer-format' });
});

test('a name with blanks and signs is opened for reading as it is', async () => {
  const odd = join(folder, 'red room #1 50% ?', 'journal.sqlite');
  const store = await openSqlite(odd);
  await store.append(notes(2));
  const reader = await readSqlite(odd);
  expect(await everything(reader)).toHaveLength(2);
  await reader.close();
  await store.close();
});
