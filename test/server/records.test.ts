// The server's own records, over SQLite and PostgreSQL alike: from an earlier form to this one with all that was in it, a
// newer one refused, transactions whole.
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startPostgres, whyNoPostgres } from '../../scripts/postgres.mjs';
import type { JournalPlace } from '../../src/journal/adapters/open.ts';
import { addAccount, findByName, listAccounts } from '../../src/server/store/accounts.ts';
import { addPairing, admitDevice, claimPairing, listDevices } from '../../src/server/store/devices.ts';
import { listHealthAccounts, wasAnyOfHealth } from '../../src/server/store/healthAccess.ts';
import { migrate, MIGRATIONS } from '../../src/server/store/migrations.ts';
import { openRecords } from '../../src/server/store/open.ts';
import { openPostgresRecords } from '../../src/server/store/postgres.ts';
import type { Database } from '../../src/server/store/sql.ts';
import { openSqliteRecords } from '../../src/server/store/sqlite.ts';

const NOW = new Date('2026-11-25T08:00:00.000Z');
const OFFER = { device: 'tablet-a', label: 'Anteroom', role: 'observer', madeBy: 'p-3k7m' } as const;

interface Place {
  readonly place: JournalPlace;
  /** Without bringing it to this release's form. */
  readonly bare: () => Promise<Database>;
}

function suite(name: string, make: () => Place): void {
  describe(name, () => {
    test('an earlier form is brought to this one, with what is in it', async () => {
      const { place, bare } = make();
      const old = await bare();
      await migrate(old, 1);
      await old.write((sql) =>
        sql.run(
          `insert into @device (id, token, label, role, paired_at, revocation_noted) values ('tablet-old', 't', 'Old', 'lead', ?, 0)`,
          NOW.toISOString(),
        ),
      );
      await old.close();
      const records = await openRecords(place);
      expect(await listDevices(records)).toMatchObject([
        { id: 'tablet-old', label: 'Old', role: 'lead', pairedAt: NOW.toISOString(), clockOffset: null },
      ]);
      await records.close();
      await (await openRecords(place)).close();
    });

    test('accounts of occupational health of before stay let in to health records, and no others', async () => {
      const { place, bare } = make();
      const old = await bare();
      await migrate(old, 2);
      await old.write(async (sql) => {
        for (const [id, role] of [
          ['a-1', 'lead'],
          ['a-2', 'occupational-health'],
        ] as const)
          await sql.run(
            'insert into @account values (?, ?, ?, ?, ?, ?, 0, 0, ?)',
            id,
            id,
            id,
            `p-${id.slice(2)}`,
            role,
            'hash',
            NOW.toISOString(),
          );
      });
      await old.close();
      const records = await openRecords(place);
      expect((await listAccounts(records)).map(({ health }) => health)).toEqual(['none', 'in']);
      expect(await listHealthAccounts(records)).toMatchObject([{ id: 'a-2', since: null }]);
      expect(await wasAnyOfHealth(records)).toBe(true);
      await records.close();
    });

    test('a newer form is refused, and left as it is', async () => {
      const { place, bare } = make();
      await (await openRecords(place)).close();
      const newer = await bare();
      await newer.write((sql) => sql.run('update @form set version = 99'));
      await expect(openRecords(place)).rejects.toMatchObject({ problem: { code: 'newer-format' } });
      expect(await newer.all('select version from @form')).toEqual([{ version: 99 }]);
      await newer.close();
    });

    test('a step that fails changes nothing', async () => {
      const { bare } = make();
      const records = await bare();
      await migrate(records);
      await expect(
        records.write(async (sql) => {
          await admitDevice(sql, OFFER, NOW);
          await sql.run('insert into @nowhere values (1)');
        }),
      ).rejects.toThrow('nowhere');
      expect(await listDevices(records)).toEqual([]);
      await records.close();
    });

    test('a name is one name, however it is written', async () => {
      const records = await openRecords(make().place);
      const add = (wanted: string) =>
        records.write((sql) =>
          addAccount(sql, { name: wanted, role: 'reader', password: 'x', firstPassword: true }, NOW),
        );
      expect(await add('Ärztin Ｅins')).toMatchObject({ name: 'Ärztin Ｅins' });
      expect(await add('ärztin eins')).toBeUndefined();
      expect(await findByName(records, ' ÄRZTIN EINS ')).toMatchObject({ account: { role: 'reader' } });
      expect(await listAccounts(records)).toHaveLength(1);
      await records.close();
    });

    test('a code is claimed once, whoever asks at the same time', async () => {
      const { place } = make();
      const [one, two] = [await openRecords(place), await openRecords(place)];
      await one.write((sql) => addPairing(sql, 'CODE', OFFER, NOW));
      // Two programs on one SQLite file wait for each other by standing still, which two in one process cannot.
      const others = place.in === 'folder' ? [one, one] : [two, two];
      const claims = await Promise.all(
        [one, ...others, one].map((records) => records.write((sql) => claimPairing(sql, 'CODE', NOW))),
      );
      expect(claims.filter((claim) => claim !== undefined)).toEqual([OFFER]);
      expect(await two.write((sql) => claimPairing(sql, 'CODE', NOW))).toBeUndefined();
      await one.close();
      await two.close();
    });
  });
}

test('a released form is never changed: the first one is the one that was released', () => {
  expect(MIGRATIONS[0]).toHaveLength(5);
  expect(MIGRATIONS.length).toBeGreaterThan(1);
});

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

suite('SQLite', () => {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-records-'));
  folders.push(folder);
  return {
    place: { in: 'folder', file: join(folder, 'journal.sqlite') },
    bare: () => openSqliteRecords(join(folder, 'unit.sqlite')),
  };
});

test('beside a journal’s file, not in it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-records-'));
  folders.push(folder);
  await (await openRecords({ in: 'folder', file: join(folder, 'journal.sqlite') })).close();
  expect(existsSync(join(folder, 'unit.sqlite'))).toBe(true);
  expect(existsSync(join(folder, 'journal.sqlite'))).toBe(false);
});

const why = whyNoPostgres();

describe.skipIf(why !== undefined)(`PostgreSQL${why === undefined ? '' : ` (not run: ${why})`}`, () => {
  let server: Awaited<ReturnType<typeof startPostgres>>;
  let count = 0;
  beforeAll(async () => {
    server = await startPostgres();
  });
  afterAll(() => server.stop());

  suite('records', () => {
    count += 1;
    const address = `${server.url}?schema=records_${count}`;
    return { place: { in: 'database', address }, bare: () => openPostgresRecords(address) };
  });
});
