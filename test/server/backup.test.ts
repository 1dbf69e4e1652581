// A unit whose disk dies gets everything back: journal, accounts, devices, sealed records; and nothing that let somebody in for
// a while. Then the faults: cut off, altered, no room, killed in the middle, of an older or a newer release.
import { spawn } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import Database from 'libsql';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type JournalPlace, openJournal } from '../../src/journal/adapters/open.ts';
import { RECORDS_FORM } from '../../src/journal/adapters/recordsFile.ts';
import { listAccounts } from '../../src/server/store/accounts.ts';
import { listDevices } from '../../src/server/store/devices.ts';
import { migrate, MIGRATIONS } from '../../src/server/store/migrations.ts';
import { openRecords } from '../../src/server/store/open.ts';
import { openSqliteRecords } from '../../src/server/store/sqlite.ts';
import { run } from '../cli/run.ts';
import { verdictOf } from '../journal/contract.ts';
import { device, notes, twentyEight } from '../journal/samples.ts';
import { client, LEAD, lead, person, type Running, start, tablet } from './harness.ts';

let folder: string;
const data = (): string => join(folder, 'unit');
const other = (): string => join(folder, 'other');
const backupFile = (): string => join(folder, 'backup.sqlite');
const at = (where: string): JournalPlace & { in: 'folder' } => ({
  in: 'folder',
  file: join(where, 'journal.sqlite'),
});

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'doffline-backup-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const backup = () => run(['journal', 'backup', '--data', data(), '--to', backupFile()]);
const restore = (where: string, ...more: readonly string[]) =>
  run(['journal', 'restore', backupFile(), '--data', where, ...more]);
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

const RECORD = { person: 'p-3k7m', form: 'follow-up-day', version: 1, record: { day: 4 } };

/** A unit with an account, a sealed record, two tablets, one of them taken out, and an open pairing code. */
async function unit(server: Running) {
  const desk = await lead(server);
  const doctor = await person(server, desk, 'occupational-health');
  await doctor.call('seal-health-record', { body: RECORD });
  const [good, lost] = [await tablet(server, desk), await tablet(server, desk)];
  await desk.call('revoke-device', { params: { device: lost.device }, body: { reason: 'Lost.' } });
  const chain = device(good.device, 'larkmoor-isolation');
  await good.client.call('append-entries', { body: { entries: notes(3, chain) } });
  const { code } = await desk.call('offer-pairing', { body: { label: 'Next', role: 'observer' } });
  return { desk, doctor, good, lost, chain, code };
}

/** The unit's folder without a server: a journal, an account, two devices, one taken out. */
async function small(where = data()): Promise<void> {
  const journal = await openJournal(at(where));
  await journal.append(twentyEight());
  await journal.close();
  const records = await openRecords(at(where));
  const now = '2026-11-25T08:00:00.000Z';
  await records.write(async ({ run: put }) => {
    await put(
      `insert into @account values ('a-1', 'ada', 'Ada', 'p-3k7m', 'lead', 'hash', 0, 0, ?, 'never', null)`,
      now,
    );
    for (const [id, out] of [
      ['tablet-a', null],
      ['tablet-b', now],
    ] as const)
      await put(
        `insert into @device (id, token, label, role, paired_at, revoked_at, revocation_noted) values (?, ?, 'T', 'observer', ?, ?, 0)`,
        id,
        `token-${id}`,
        now,
        out,
      );
    await put(`insert into @session values ('SESSION-MARK', 'a-1', ?, ?)`, now, now);
    await put(
      `insert into @pairing values ('PAIRING-MARK', 'tablet-c', 'T', 'observer', 'p-3k7m', ?, null)`,
      now,
    );
  });
  await records.close();
}

/** What a folder holds, opened as the server opens it. */
async function held(where: string) {
  const journal = await openJournal(at(where));
  const records = await openRecords(at(where));
  try {
    const { entries, flaws } = await verdictOf(journal, 100_000);
    return {
      entries,
      flaws,
      accounts: (await listAccounts(records)).map(({ id }) => id),
      out: (await listDevices(records)).map(({ id, revokedAt }) => [id, revokedAt !== null]),
      open: (await records.all('select token from @session union all select code from @pairing')).length,
    };
  } finally {
    await journal.close();
    await records.close();
  }
}

const WHOLE = {
  entries: 28,
  flaws: [],
  accounts: ['a-1'],
  out: [
    ['tablet-a', false],
    ['tablet-b', true],
  ],
};

test('the newest form of the records that a backup knows is the server’s', () => {
  expect(RECORDS_FORM).toBe(MIGRATIONS.length);
});

test('the disk dies: everything is back, and nobody is let in by what was open then', async () => {
  const before = await start({ place: at(data()) });
  const { desk, good, lost, chain, code } = await unit(before);
  const made = await backup();
  expect([made.status, made.err]).toEqual([0, '']);
  expect(flat(made.out)).toContain('accounts, devices, passwords as hashes');
  expect(statSync(backupFile()).mode & 0o777).toBe(0o600);
  await before.stop();
  rmSync(data(), { recursive: true });

  const put = await restore(data());
  expect([put.status, put.err]).toEqual([0, '']);
  expect(flat(put.out)).toContain('Everybody signs in again');
  expect(statSync(join(data(), 'unit.sqlite')).mode & 0o777).toBe(0o600);
  const after = await start({ place: at(data()) });
  const again = (one: typeof desk) => client(after.port, one.cookies);
  expect(await again(desk).refused('read-session')).toMatchObject({ code: 'not-signed-in' });
  expect(await client(after.port).refused('pair', { body: { code } })).toMatchObject({ code: 'code-wrong' });
  expect(await again(lost.client).refused('read-device')).toMatchObject({ code: 'device-revoked' });
  await again(good.client).call('append-entries', { body: { entries: notes(2, chain) } });
  const known = client(after.port);
  await known.call('sign-in', { body: LEAD });
  const { accounts } = await known.call('list-accounts');
  expect(accounts).toHaveLength(2);
  const { name } = accounts.find(({ role }) => role === 'occupational-health')!;
  const doctor = client(after.port);
  await doctor.call('sign-in', { body: { name, password: 'violet kettle seventeen' } });
  await doctor.call('seal-health-record', { body: RECORD });
  const next = await person(after, known, 'occupational-health');
  expect(await next.refused('read-health-records')).toMatchObject({ code: 'not-let-in' });
  expect(await after.context.journal.read(1, { device: 'server-health' })).toHaveLength(2);
  expect((await verdictOf(after.context.journal)).flaws).toEqual([]);
  await after.stop();
});

test('a backup while people sign in, pair and record is of one moment, and restores', async () => {
  const server = await start({ place: at(data()) });
  const { desk, good, chain } = await unit(server);
  const work = { isBusy: true };
  const busy = (async () => {
    while (work.isBusy) {
      await good.client.call('append-entries', { body: { entries: notes(2, chain) } });
      await client(server.port).call('sign-in', { body: LEAD });
      const { device: id } = await tablet(server, desk);
      await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Test.' } });
    }
  })();
  const made = await backup();
  work.isBusy = false;
  await busy;
  await server.stop();
  expect([made.status, made.err]).toEqual([0, '']);
  expect((await restore(other())).status).toBe(0);
  const found = await held(other());
  expect(found).toMatchObject({ flaws: [], open: 0 });
  expect(found.out.filter(([, isOut]) => !isOut)).toEqual([[good.device, false]]);
});

describe('what was taken out stays out', () => {
  test('after the backup, where the records that are put aside tell', async () => {
    const server = await start({ place: at(data()) });
    const { desk, good } = await unit(server);
    expect((await backup()).status).toBe(0);
    await desk.call('revoke-device', { params: { device: good.device }, body: { reason: 'Stolen.' } });
    await server.stop();
    const put = await restore(data(), '--force');
    expect([put.status, put.err]).toEqual([0, '']);
    expect(flat(put.out)).toContain('tell: 1.');
    expect((await held(data())).out.map(([, isOut]) => isOut)).toEqual([true, true]);
  });

  test('an account that waits since to be let in to health records waits', async () => {
    const server = await start({ place: at(data()) });
    const { desk, doctor } = await unit(server);
    expect((await backup()).status).toBe(0);
    const { account } = await doctor.call('read-session');
    expect(account.health).toBe('in');
    const params = { account: account.id };
    await desk.call('change-account', { params, body: { newPassword: true } });
    await server.stop();
    expect((await restore(data(), '--force')).status).toBe(0);
    const records = await openRecords(at(data()));
    expect((await listAccounts(records)).find(({ id }) => id === account.id)?.health).toBe('waits');
    await records.close();
  });

  test('between the records and the journal, which is read after them', async () => {
    await small();
    const journal = await openJournal(at(data()));
    const chain = device('server', 'larkmoor-isolation');
    const wrote = (kind: 'device.paired' | 'device.revoked', id: string) =>
      chain.write(
        kind,
        kind === 'device.paired' ? { device: id, label: 'T' } : { device: id, reason: 'Lost.' },
      );
    await journal.append([wrote('device.paired', 'tablet-a'), wrote('device.revoked', 'tablet-a')]);
    await journal.close();
    expect((await backup()).status).toBe(0);
    expect((await restore(other())).status).toBe(0);
    expect((await held(other())).out).toEqual([
      ['tablet-a', true],
      ['tablet-b', true],
    ]);
  });
});

test('never mixed with what is there: refused, said how to go on, and with --force both are put aside', async () => {
  await small();
  expect((await backup()).status).toBe(0);
  expect(readFileSync(backupFile()).toString('latin1')).not.toMatch(/SESSION-MARK|PAIRING-MARK/);
  const journal = await openJournal(at(data()));
  await journal.append(notes(2, device('later', 'larkmoor-isolation')));
  await journal.close();
  const names = () => readdirSync(data()).toSorted();
  const [before, bytes] = [names(), readFileSync(join(data(), 'unit.sqlite'))];
  const refused = await restore(data());
  expect(refused.status).toBe(2);
  expect(flat(refused.err)).toMatch(/journal\.sqlite and .*unit\.sqlite.* with --force/);
  expect([names(), readFileSync(join(data(), 'unit.sqlite'))]).toEqual([before, bytes]);

  expect((await restore(data(), '--force')).status).toBe(0);
  expect(await held(data())).toEqual({ ...WHOLE, open: 0 });
  const aside = names().filter((name) => name.endsWith('replaced-1.sqlite'));
  expect(aside).toEqual(['journal.replaced-1.sqlite', 'unit.replaced-1.sqlite']);

  // The records alone are enough to be mixed with.
  mkdirSync(other());
  copyFileSync(join(data(), 'unit.sqlite'), join(other(), 'unit.sqlite'));
  expect((await restore(other())).status).toBe(2);
  expect(existsSync(join(other(), 'journal.sqlite'))).toBe(false);
});

test('a server that still has the old ones open lets nobody in', async () => {
  const server = await start({ place: at(data()) });
  const { desk, good } = await unit(server);
  expect((await backup()).status).toBe(0);
  expect((await restore(data(), '--force')).status).toBe(0);
  expect(await desk.refused('read-session')).toMatchObject({ code: 'replaced', status: 503 });
  expect(await good.client.refused('read-device')).toMatchObject({ code: 'replaced' });
  await server.stop();
  expect((await held(data())).open).toBe(0);
});

describe('faults', () => {
  test('a backup is no journal to write on', async () => {
    await small();
    await backup();
    await expect(openJournal({ in: 'folder', file: backupFile() })).rejects.toMatchObject({
      problem: { code: 'read-only' },
    });
    const bytes = readFileSync(backupFile());
    expect((await restore(other())).status).toBe(0);
    expect(readFileSync(backupFile())).toEqual(bytes);
  });

  test.each([0, 1, 100, 4096, 0.3, 0.6, 0.9, 0.999])('cut off at %d', async (part) => {
    await small();
    await backup();
    const size = statSync(backupFile()).size;
    truncateSync(backupFile(), part < 1 ? Math.floor(size * part) : part);
    const { status } = await restore(other());
    // A last page may end in bytes that nothing is kept in.
    if (status === 0 && part === 0.999) {
      expect(await held(other())).toEqual({ ...WHOLE, open: 0 });
      return;
    }
    expect(status).not.toBe(0);
    expect(existsSync(join(other(), 'journal.sqlite'))).toBe(false);
    expect(existsSync(join(other(), 'unit.sqlite'))).toBe(false);
  });

  test('a byte altered anywhere is found, or was of nothing that is kept', async () => {
    await small();
    await backup();
    const sound = readFileSync(backupFile());
    const mark = sound.indexOf('token-tablet-a');
    let found = 0;
    for (const place of [mark + 3, ...Array.from({ length: 24 }, (_, turn) => 1009 + turn * 6007)]) {
      if (place >= sound.length) break;
      const bytes = Buffer.from(sound);
      bytes[place]! ^= 0x15;
      writeFileSync(backupFile(), bytes);
      rmSync(other(), { recursive: true, force: true });
      const { status } = await restore(other());
      if (status !== 0) found += 1;
      if (status === 0) expect(await held(other()), `byte ${place}`).toEqual({ ...WHOLE, open: 0 });
      if (place === mark + 3) expect(status).toBe(1);
      if (status !== 0) expect(existsSync(join(other(), 'unit.sqlite'))).toBe(false);
    }
    expect(found).toBeGreaterThan(5);
  });

  test('records of another journal are not taken for this one’s', async () => {
    await small();
    await backup();
    const db = new Database(backupFile());
    db.exec(`update records set unit_hash = '${'0'.repeat(64)}'`);
    db.close();
    const put = await restore(other());
    expect([put.status, flat(put.err)]).toEqual([1, expect.stringContaining('belong to another journal')]);
  });

  test('of an older release: records of its form are brought to this one’s by the server', async () => {
    const journal = await openJournal(at(data()));
    await journal.append(twentyEight());
    await journal.close();
    const old = await openSqliteRecords(join(data(), 'unit.sqlite'));
    await migrate(old, 1);
    await old.close();
    expect((await backup()).status).toBe(0);
    expect((await restore(other())).status).toBe(0);
    expect(await held(other())).toMatchObject({ entries: 28, accounts: [], open: 0 });
  });

  test('of an older release: a journal alone restores alone, and leaves records that are there', async () => {
    const journal = await openJournal(at(data()));
    await journal.append(twentyEight());
    await journal.close();
    const made = await backup();
    expect(flat(made.out)).toContain('no server’s records');
    const put = await restore(other());
    expect([put.status, flat(put.out)]).toEqual([0, expect.stringContaining('holds no server’s records')]);
    expect(existsSync(join(other(), 'unit.sqlite'))).toBe(false);
    await small(join(folder, 'third'));
    expect((await restore(join(folder, 'third'))).status).toBe(2);
    expect((await restore(join(folder, 'third'), '--force')).status).toBe(0);
    expect(await held(join(folder, 'third'))).toMatchObject({ accounts: ['a-1'] });
  });

  test('of a newer release: not restored, and not backed up', async () => {
    await small();
    await backup();
    const db = new Database(backupFile());
    db.exec('update records set form = 99');
    db.close();
    const put = await restore(other());
    expect([put.status, put.err]).toEqual([2, expect.stringContaining('newer release')]);
    const records = new Database(join(data(), 'unit.sqlite'));
    records.exec('update form set version = 99');
    records.close();
    rmSync(backupFile());
    const refused = await backup();
    expect([refused.status, refused.err]).toEqual([2, expect.stringContaining('newer release')]);
    expect(readdirSync(folder)).toEqual(['unit']);
  });

  test('half of an exchange is opened by nobody, and restoring again mends it', async () => {
    await small();
    await backup();
    rmSync(join(data(), 'journal.sqlite'));
    writeFileSync(join(data(), 'journal.sqlite.restoring'), '');
    await expect(openJournal(at(data()))).rejects.toThrow('a restore was not finished');
    expect((await restore(data())).status).toBe(2);
    expect((await restore(data(), '--force')).status).toBe(0);
    expect(await held(data())).toEqual({ ...WHOLE, open: 0 });
  });
});

describe('a program of its own', () => {
  let program: string;
  beforeAll(async () => {
    mkdirSync('.cache', { recursive: true });
    program = join(mkdtempSync(join('.cache', 'backup-')), 'runner.mjs');
    await build({
      entryPoints: [fileURLToPath(new URL('./backupRunner.ts', import.meta.url))],
      outfile: program,
      bundle: true,
      platform: 'node',
      format: 'esm',
      external: ['libsql'],
      banner: {
        js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);",
      },
      logLevel: 'error',
    });
  });
  afterAll(() => rmSync(join(program, '..'), { recursive: true }));

  /** `after`: milliseconds from its first word until it is killed. `blocks`: so many times 512 bytes a file may have. */
  function ran(
    args: readonly string[],
    { after, blocks }: { readonly after?: number; readonly blocks?: number },
  ): Promise<number | null> {
    return new Promise((resolve, reject) => {
      const limit = blocks === undefined ? '' : `ulimit -f ${blocks}; `;
      const child = spawn('sh', ['-c', `${limit}exec "$0" "$@"`, process.execPath, program, ...args], {
        stdio: ['ignore', 'pipe', 'ignore'],
      });
      if (after !== undefined)
        child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), after));
      child.on('error', reject);
      child.on('close', resolve);
    });
  }

  test('killed while it makes a backup: a whole one or none', async () => {
    await small();
    const file = at(data()).file;
    for (let round = 0; round < 5; round += 1) {
      await ran(['backup', file, backupFile()], { after: round * 9 });
      if (!existsSync(backupFile())) continue;
      expect((await restore(other(), '--force')).status).toBe(0);
      expect(await held(other())).toEqual({ ...WHOLE, open: 0 });
      rmSync(backupFile());
    }
    expect((await backup()).status).toBe(0);
    expect((await held(data())).entries).toBe(28);
  });

  test('killed while it restores: the old or the new, never a half; and again is whole', async () => {
    await small();
    await backup();
    const place = at(data());
    for (let round = 0; round < 5; round += 1) {
      rmSync(join(folder, 'work'), { recursive: true, force: true });
      await small(join(folder, 'work'));
      const work = at(join(folder, 'work'));
      const journal = await openJournal(work);
      await journal.append(notes(1, device('later', 'larkmoor-isolation')));
      await journal.close();
      await ran(['restore', work.file, backupFile()], { after: round * 9 });
      const found = await held(join(folder, 'work')).catch((error: unknown) => String(error));
      // Old: the session is still there and the later entry too; new: neither.
      if (typeof found === 'string') expect(found).toContain('a restore was not finished');
      else expect([`${found.entries} ${found.open}`]).toEqual([found.entries === 29 ? '29 2' : '28 0']);
      expect((await restore(join(folder, 'work'), '--force')).status).toBe(0);
      expect(await held(join(folder, 'work'))).toEqual({ ...WHOLE, open: 0 });
    }
    expect((await held(join(place.file, '..'))).entries).toBe(28);
  });

  test('no room: nothing is left of it, and what was there is as it was', async () => {
    await small();
    const file = at(data()).file;
    expect(await ran(['backup', file, backupFile()], { blocks: 40 })).not.toBe(0);
    expect(readdirSync(folder)).toEqual(['unit']);
    await backup();
    const before = readdirSync(data()).toSorted();
    const bytes = readFileSync(join(data(), 'unit.sqlite'));
    expect(await ran(['restore', file, backupFile()], { blocks: 40 })).not.toBe(0);
    expect(readdirSync(data()).toSorted()).toEqual(before);
    expect(readFileSync(join(data(), 'unit.sqlite'))).toEqual(bytes);
    expect((await held(data())).entries).toBe(28);
  });
});
