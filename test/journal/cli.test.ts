// `doffline journal` as somebody uses it: on a folder, on a database, on a journal that was tampered with.
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startPostgres, whyNoPostgres } from '../../scripts/postgres.mjs';
import { journalJsonSchema, journalReport } from '../../src/cli/journalSchema.ts';
import { openJournal, type JournalPlace } from '../../src/journal/adapters/open.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { show } from '../../src/journal/fold.ts';
import { roomView } from '../../src/journal/views/room.ts';
import { run } from '../cli/run.ts';
import { everything } from './contract.ts';
import { device, notes, twentyEight } from './samples.ts';

let folder: string;
const data = (): string => join(folder, 'unit');
const file = (): string => join(data(), 'journal.sqlite');
const here = (): JournalPlace => ({ in: 'folder', file: file() });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'journal-cli-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function fill(place: JournalPlace, entries: readonly Entry[]): Promise<void> {
  const store = await openJournal(place);
  await store.append(entries);
  await store.close();
}

/** Past the journal, as somebody with the file and a database program can: the triggers go first. */
function tamper(sql: string): void {
  const db = new Database(file());
  for (const name of ['entry_never_changed', 'entry_never_removed', 'entry_follows', 'head_forward'])
    db.exec(`drop trigger ${name}`);
  db.exec(sql);
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
}

const verify = async (...more: readonly string[]) => run(['journal', 'verify', '--data', data(), ...more]);
const report = async (...more: readonly string[]) =>
  journalReport.parse(JSON.parse((await verify('--json', ...more)).out));

test('schema/journal-verify-1.json is the shape that the program fills (node scripts/check-schema.mjs)', () => {
  expect(JSON.parse(readFileSync('schema/journal-verify-1.json', 'utf8'))).toEqual(journalJsonSchema());
});

describe('verify', () => {
  test('a journal as it was stored: status 0, and the end to write down', async () => {
    await fill(here(), twentyEight());
    const { status, out, err } = await verify();
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('28 entries by 2 devices');
    expect(out.replaceAll(/\s+/g, ' ')).toContain('No altered, missing or moved entry was found.');
    const [, end = ''] = /It ends at (28:[0-9a-f]{64})/.exec(out) ?? [];
    expect((await verify('--expect', end)).status).toBe(0);
    const other = await verify('--expect', `28:${'0'.repeat(64)}`);
    expect(other.status).toBe(1);
    expect(other.out).toContain('Entry 28 is not the one that was asked for');
    expect((await verify('--expect', 'yesterday')).status).toBe(2);
    expect(await report()).toMatchObject({ status: 0, entries: 28, devices: 2, flaws: [], problem: null });
  });

  test.each([
    [
      'altered',
      `update entry set text = replace(text, '"by":"p-9x2q"', '"by":"p-0000"') where unit_number = 11`,
      [{ code: 'altered', unitNumber: 11, device: 'desk', number: 6 }],
    ],
    [
      'missing',
      'delete from entry where unit_number = 7',
      [
        { code: 'missing', unitNumber: 7 },
        { code: 'device-missing', unitNumber: 9, device: 'desk', number: 4 },
      ],
    ],
    [
      'missing at the end',
      'delete from entry where unit_number = 28',
      [{ code: 'end-missing', unitNumber: 28 }],
    ],
    [
      'moved',
      `update entry set unit_number = 99 where unit_number = 5;
       update entry set unit_number = 5 where unit_number = 6;
       update entry set unit_number = 6 where unit_number = 99`,
      [
        { code: 'link-altered', unitNumber: 5, device: 'tablet-1', number: 3 },
        { code: 'link-altered', unitNumber: 6, device: 'desk', number: 3 },
      ],
    ],
    [
      'added past the end',
      `insert into entry select 29, 'third', 1, hash, unit_hash, unit_hash, text from entry where unit_number = 28`,
      [{ code: 'mislabelled', unitNumber: 29 }, { code: 'end-unnoted' }],
    ],
    ['its end noted otherwise', 'update head set unit_number = 5', [{ code: 'end-unnoted' }]],
  ])('%s: status 1, the entry and what it should be', async (_, sql, flaws) => {
    await fill(here(), twentyEight());
    tamper(sql);
    const told = await report();
    expect(told.status).toBe(1);
    for (const flaw of flaws) expect(told.flaws).toContainEqual(expect.objectContaining(flaw));
    const { status, out } = await verify();
    expect(status).toBe(1);
    for (const { sentence } of told.flaws)
      expect(out.replaceAll(/\s+/g, ' ')).toContain(sentence.replaceAll(/\s+/g, ' '));
  });

  test('a snapshot that is not what the entries make', async () => {
    const desk = device('desk');
    await fill(here(), [desk.write('room.entered'), ...notes(600, desk)]);
    const store = await openJournal(here());
    await show(roomView, { journal: store, snapshots: store.snapshots });
    await store.close();
    expect((await verify()).status).toBe(0);
    tamper(`update snapshot set state = '{"ended":{},"inside":{}}'`);
    expect(await report()).toMatchObject({ status: 1, flaws: [], falseSnapshots: ['room'] });
    expect((await verify()).out).toContain('The snapshot of the view "room"');
  });

  test('a snapshot that nobody can read: it is named, and views do without it', async () => {
    await fill(here(), [device('desk').write('room.entered')]);
    tamper(`insert into snapshot values ('room', ${roomView.version}, 1, 'x', '{no JSON')`);
    expect(await report()).toMatchObject({ status: 1, falseSnapshots: ['room'] });
    const store = await openJournal(here());
    expect(await show(roomView, { journal: store, snapshots: store.snapshots })).toMatchObject({ since: 0 });
    await store.close();
  });

  test('triggers: one that would act on what is yet to come, one that was changed, one that is gone', async () => {
    await fill(here(), twentyEight());
    expect(await report()).toMatchObject({ status: 0, damage: [] });
    const db = new Database(file());
    db.exec(`create trigger later after insert on entry begin update snapshot set state = '{}'; end;
      drop trigger head_forward; drop trigger entry_follows;
      create trigger entry_follows before insert on entry begin select 1; end`);
    db.close();
    expect(await report()).toMatchObject({
      status: 1,
      damage: [
        "the trigger later is not one of the journal's",
        "the trigger entry_follows is not one of the journal's",
        'the trigger head_forward is missing',
      ],
    });
    const { status, err } = await run(['journal', 'restore', file(), '--data', join(folder, 'other')]);
    expect([status, existsSync(join(folder, 'other'))]).toEqual([1, false]);
    expect(err).toContain('The database: the trigger later');
  });

  test('a view without an end in a table’s place is not read', async () => {
    await fill(here(), twentyEight());
    tamper(`alter table entry rename to other;
      create view entry as with recursive r(n) as (select 1 union all select n + 1 from r)
        select n as unit_number, 'a' as device, n as number, '' as hash, '' as unit_previous, '' as unit_hash, '' as text from r`);
    const { status, err } = await verify();
    expect(status).toBe(2);
    expect(err).toContain('tables of the journal are not there');
  });

  test.each([
    ['no folder', () => undefined, 'There is no journal'],
    ['another file', () => writeFileSync(join(folder, 'journal.sqlite'), 'hello '.repeat(999)), 'damaged'],
    [
      'another program’s database',
      () => new Database(join(folder, 'journal.sqlite')).exec('create table t(a)'),
      'is no journal',
    ],
  ])('%s: status 2 and why', async (_, make, why) => {
    make();
    const where = _ === 'no folder' ? join(folder, 'none') : folder;
    const { status, out, err } = await run(['journal', 'verify', '--data', where]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(why);
    const json = journalReport.parse(
      JSON.parse((await run(['journal', 'verify', '--json', '--data', where])).out),
    );
    expect(json).toMatchObject({ status: 2, entries: 0 });
    expect(json.problem).toContain(why);
    expect(existsSync(join(folder, 'none'))).toBe(false);
  });

  test('a byte altered anywhere in the file is found, or was of no entry', async () => {
    await fill(here(), twentyEight());
    const sound = readFileSync(file());
    const store = await openJournal(here());
    const rows = JSON.stringify(await store.rows(1, 100));
    await store.close();
    let found = 0;
    for (let at = 1009; at < sound.length; at += 2503) {
      const bytes = Buffer.from(sound);
      bytes[at]! ^= 0x15;
      rmSync(data(), { recursive: true });
      await fill(here(), []);
      writeFileSync(file(), bytes);
      const { status, out } = await verify();
      if (status !== 0) {
        found += 1;
        continue;
      }
      expect(out).toContain('28 entries');
      const again = await openJournal(here());
      expect(JSON.stringify(await again.rows(1, 100)), `byte ${at}`).toBe(rows);
      await again.close();
    }
    expect(found).toBeGreaterThan(5);
  });
});

describe('backup and restore', () => {
  const backup = (): string => join(folder, 'backup.sqlite');

  test('a backup of a journal that is written to meanwhile is one moment of it', async () => {
    const desk = device('desk');
    await fill(here(), notes(50, desk));
    const store = await openJournal(here());
    const writing = (async () => {
      for (let turn = 0; turn < 40; turn += 1) {
        await store.append(notes(5, desk));
        await new Promise((resolve) => setImmediate(resolve));
      }
    })();
    const ran = await run(['journal', 'backup', '--data', data(), '--to', backup()]);
    await writing;
    expect([ran.status, ran.err]).toEqual([0, '']);
    const kept = await openJournal({ in: 'folder', file: backup() });
    const part = await everything(kept);
    await kept.close();
    expect(part.length).toBeGreaterThanOrEqual(50);
    expect(await everything(store)).toHaveLength(250);
    expect((await everything(store)).slice(0, part.length)).toEqual(part);
    await store.close();
  });

  test('a backup overwrites nothing', async () => {
    await fill(here(), notes(2));
    writeFileSync(backup(), 'dear');
    const ran = await run(['journal', 'backup', '--data', data(), '--to', backup()]);
    expect([ran.status, ran.err]).toEqual([2, expect.stringContaining('is there already')]);
    expect(readFileSync(backup(), 'utf8')).toBe('dear');
  });

  test('what was restored is what was backed up, and it can be written on', async () => {
    const desk = device('desk');
    await fill(here(), notes(5, desk));
    await run(['journal', 'backup', '--data', data(), '--to', backup()]);
    rmSync(data(), { recursive: true });
    const ran = await run(['journal', 'restore', backup(), '--data', data()]);
    expect([ran.status, ran.err]).toEqual([0, '']);
    await fill(here(), notes(5, desk));
    expect(await report()).toMatchObject({ status: 0, entries: 10 });
  });

  test('never over a journal without --force, and with it what was there is kept', async () => {
    const desk = device('desk');
    await fill(here(), notes(5, desk));
    await run(['journal', 'backup', '--data', data(), '--to', backup()]);
    await fill(here(), notes(2, desk));
    const refused = await run(['journal', 'restore', backup(), '--data', data()]);
    expect([refused.status, refused.err]).toEqual([2, expect.stringContaining('There is a journal')]);
    expect(await report()).toMatchObject({ entries: 7 });

    const open = await openJournal(here());
    expect((await run(['journal', 'restore', backup(), '--data', data(), '--force'])).status).toBe(0);
    expect(await report()).toMatchObject({ entries: 5 });
    await expect(open.append(notes(1, desk))).rejects.toMatchObject({ problem: { code: 'replaced' } });
    await open.close();
    const [aside = ''] = readdirSync(data()).filter((name) => name.endsWith('replaced-1.sqlite'));
    const before = await openJournal({ in: 'folder', file: join(data(), aside) });
    expect(await everything(before)).toHaveLength(7);
    await before.close();
  });

  test('a damaged backup is not restored', async () => {
    await fill(here(), notes(5));
    tamper('delete from entry where unit_number = 3');
    copyFileSync(file(), backup());
    const ran = await run(['journal', 'restore', backup(), '--data', join(folder, 'other')]);
    expect(ran.status).toBe(1);
    expect(ran.err).toContain('Entry 3 is missing');
    expect(existsSync(join(folder, 'other', 'journal.sqlite'))).toBe(false);
    expect((await run(['journal', 'restore', join(folder, 'none'), '--data', data()])).status).toBe(2);
  });
});

test('a body that was nested past all form ends an export with what is wrong, not with a fault', async () => {
  await fill(here(), twentyEight());
  const deep = `${'['.repeat(20_000)}${']'.repeat(20_000)}`;
  tamper(`update entry set text = json_set(text, '$.body', json('{}')) where unit_number = 5;
    update entry set text = replace(text, '"body":{}', '"body":{"a":${deep}}') where unit_number = 5`);
  const { status, err } = await run(['journal', 'export', '--data', data()]);
  expect(status).toBe(2);
  expect(err).toContain('entry 5 cannot be read');
});

test('export prints every entry as a line, without what somebody typed', async () => {
  await fill(here(), twentyEight());
  const { status, out } = await run(['journal', 'export', '--data', data()]);
  expect(status).toBe(0);
  const lines = out.trimEnd().split('\n');
  expect(lines).toHaveLength(28);
  expect(out).not.toMatch(/Invented|invented\)|Tablet in the anteroom|faint/);
  for (const line of lines) expect(JSON.parse(line)).toMatchObject({ unit: 'larkmoor-isolation' });
  expect((await run(['journal', 'export', '--data', data(), '--with-text'])).out).toContain('Ms Invented');
});

const why = whyNoPostgres();

describe.skipIf(why !== undefined)(
  `with DATABASE_URL${why === undefined ? '' : ` (not run: ${why})`}`,
  () => {
    let server: Awaited<ReturnType<typeof startPostgres>>;
    beforeAll(async () => {
      server = await startPostgres();
      process.env.DATABASE_URL = `${server.url}?schema=larkmoor`;
    });
    afterAll(() => {
      delete process.env.DATABASE_URL;
      server.stop();
    });

    test('verify, backup to a file, restore to a folder and back', async () => {
      const there: JournalPlace = { in: 'database', address: process.env.DATABASE_URL ?? '' };
      await fill(there, twentyEight());
      const { status, out } = await run(['journal', 'verify']);
      expect([status, out]).toEqual([0, expect.stringContaining('28 entries by 2 devices')]);
      expect(out).toContain('schema larkmoor');

      const backup = join(folder, 'backup.sqlite');
      expect((await run(['journal', 'backup', '--to', backup])).status).toBe(0);
      expect((await run(['journal', 'restore', backup, '--data', data()])).status).toBe(0);
      expect(await report()).toMatchObject({ status: 0, entries: 28 });

      const refused = await run(['journal', 'restore', backup]);
      expect([refused.status, refused.err]).toEqual([2, expect.stringContaining('There is a journal')]);
      const forced = await run(['journal', 'restore', backup, '--force']);
      expect([forced.status, forced.out]).toEqual([0, expect.stringContaining('larkmoor_replaced_')]);
      expect((await run(['journal', 'verify'])).status).toBe(0);
    });
  },
);
