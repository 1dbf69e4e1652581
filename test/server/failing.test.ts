// When the data cannot be written: a full disk, a journal that may only be read, another program that holds it, a database
// that went away. The answer is a plain 503 that says what to do; nothing acknowledged is lost; reading goes on where it can;
// and when the cause is gone the same request succeeds.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openSqlite } from '../../src/journal/adapters/sqlite.ts';
import { openFile } from '../../src/journal/adapters/sqliteFile.ts';
import { lockFileOf } from '../../src/journal/adapters/sqliteLock.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { migrate } from '../../src/server/store/migrations.ts';
import { openSqliteRecords } from '../../src/server/store/sqlite.ts';
import { verdictOf } from '../journal/contract.ts';
import { type Device, device, notes } from '../journal/samples.ts';
import {
  ask,
  type Client,
  client,
  LEAD,
  lead,
  type Options,
  type Running,
  start,
  tablet,
} from './harness.ts';

let folder: string;
let server: Running | undefined;
const file = (): string => join(folder, 'journal.sqlite');
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'doffline-failing-'));
});
afterEach(async () => {
  await server?.stop();
  server = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const open = async (options: Options = {}): Promise<Running> => {
  server = await start({ place: { in: 'folder', file: file() }, ...options });
  return server;
};

/** The same unit after a restart: who was signed in and paired still is. */
async function restarted(one: Client, options: Options = {}): Promise<Client> {
  await server?.stop();
  return client((await open(options)).port, one.cookies);
}

async function withTablet(running: Running) {
  const desk = await lead(running);
  const { client: anteroom, device: id } = await tablet(running, desk);
  return { desk, anteroom, id, chain: device(id, 'larkmoor-isolation') };
}

/** Sends until it is refused; gives back how many were acknowledged, and the batch and refusal at the end. */
async function fillUp(anteroom: Client, chain: Device) {
  let acknowledged = 0;
  for (;;) {
    const entries = notes(100, chain);
    const { status, text } = await anteroom.raw('append-entries', { body: { entries } });
    if (status !== 200) return { acknowledged, entries, status, text };
    acknowledged += entries.length;
  }
}

function expectFull(text: string, status: number): void {
  expect(status).toBe(503);
  expect(JSON.parse(text)).toMatchObject({
    problem: {
      code: 'full',
      todo: 'tell-administrator',
      says: expect.stringContaining('Make room') as string,
    },
  });
}

async function expectAllThere(
  anteroom: Client,
  acknowledged: number,
  entries: readonly Entry[],
): Promise<void> {
  expect((await anteroom.call('read-device')).head.number).toBe(acknowledged);
  const { head } = await anteroom.call('append-entries', { body: { entries } });
  expect(head.number).toBe(acknowledged + entries.length);
  expect((await verdictOf(server!.context.journal)).flaws).toEqual([]);
}

describe('a full disk', () => {
  test('for the journal: refused, nothing lost, read on, and sent again when there is room', async () => {
    const running = await open({ journal: await openSqlite(file(), { settings: ['max_page_count = 60'] }) });
    const { desk, anteroom, chain } = await withTablet(running);
    const { acknowledged, entries, status, text } = await fillUp(anteroom, chain);
    expectFull(text, status);
    expect(acknowledged).toBeGreaterThan(0);
    expect(running.log()).toContain('"code":"full"');
    await desk.call('read-entries', { query: { from: acknowledged } });
    expect((await ask(running.port, { path: '/health' })).status).toBe(200);
    await expectAllThere(await restarted(anteroom), acknowledged, entries);
  });

  test('for the records: nobody can sign in, tablets still send', async () => {
    const records = await openSqliteRecords(join(folder, 'unit.sqlite'));
    await migrate(records);
    const running = await open({ records });
    const { desk, anteroom, chain } = await withTablet(running);
    const [size] = await records.all<{ page_count: number }>('pragma page_count');
    await records.all(`pragma max_page_count = ${size!.page_count}`);
    let last = { status: 200, text: '' };
    for (let turn = 0; turn < 60 && last.status === 200; turn += 1) {
      running.calm();
      last = await client(running.port).raw('sign-in', { body: { ...LEAD } });
    }
    expectFull(last.text, last.status);
    // That they were seen cannot be noted, and does not matter.
    running.wait(2 * 60_000);
    await anteroom.call('append-entries', { body: { entries: notes(3, chain) } });
    await anteroom.call('read-device');
    await desk.call('read-entries');
  });

  const disk = mkdtempSync(join(tmpdir(), 'doffline-disk-'));
  const mounted =
    process.getuid?.() === 0 &&
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=600k', 'tmpfs', disk]).status === 0;
  afterAll(() => {
    if (mounted) spawnSync('umount', ['-l', disk]);
    rmSync(disk, { recursive: true });
  });

  test.skipIf(!mounted)('a real one, of half a megabyte (needs root, to mount it)', async () => {
    const place = { in: 'folder', file: join(disk, 'journal.sqlite') } as const;
    const running = await open({ place });
    const { anteroom, chain } = await withTablet(running);
    const { acknowledged, entries, status, text } = await fillUp(anteroom, chain);
    expectFull(text, status);
    const again = await restarted(anteroom, { place });
    spawnSync('mount', ['-o', 'remount,size=4m', disk]);
    await expectAllThere(again, acknowledged, entries);
  });
});

test('a journal that may only be read: refused with what to do, read on, and sent again when it may be written', async () => {
  const { anteroom, chain } = await withTablet(await open());
  await anteroom.call('append-entries', { body: { entries: notes(5, chain) } });
  await server?.stop();
  const journal = await openSqlite(file(), { settings: ['query_only = ON'] });
  const again = client((await open({ journal })).port, anteroom.cookies);
  const entries = notes(2, chain);
  const refused = await again.raw('append-entries', { body: { entries } });
  expect(refused.status).toBe(503);
  expect(refused.headers['retry-after']).toBe('10');
  expect(JSON.parse(refused.text)).toMatchObject({
    problem: {
      code: 'read-only',
      todo: 'tell-administrator',
      says: expect.stringContaining('right') as string,
    },
  });
  expect((await again.call('read-entries', { query: { from: 3 } })).entries).toHaveLength(5);
  await expectAllThere(await restarted(again), 5, entries);
});

test('another program holds the journal: busy for a moment, and then as before', async () => {
  const running = await open({ journal: await openSqlite(file(), { waitMs: 50 }) });
  const { anteroom, chain } = await withTablet(running);
  const lock = await openFile(lockFileOf(file()), 50);
  lock.exec('begin exclusive');
  const entries = notes(2, chain);
  expect(await anteroom.refused('append-entries', { body: { entries } })).toMatchObject({
    code: 'busy',
    status: 503,
    todo: 'retry-later',
  });
  lock.exec('rollback');
  lock.close();
  await expectAllThere(anteroom, 0, entries);
});

test('pairing on a full disk leaves the code good for another try', async () => {
  const running = await open({ journal: await openSqlite(file(), { settings: ['max_page_count = 60'] }) });
  const { desk, anteroom, chain, id } = await withTablet(running);
  const { code } = await desk.call('offer-pairing', { body: { label: 'Second', role: 'observer' } });
  await fillUp(anteroom, chain);
  const rest = device(id, 'larkmoor-isolation', (await anteroom.call('read-device')).head);
  // Single entries until not even one fits.
  let status = 200;
  while (status === 200)
    ({ status } = await anteroom.raw('append-entries', { body: { entries: notes(1, rest) } }));
  expect(await client(running.port).refused('pair', { body: { code } })).toMatchObject({ code: 'full' });
  const later = await restarted(desk);
  await later.call('read-session');
  await client(server!.port).call('pair', { body: { code } });
});
