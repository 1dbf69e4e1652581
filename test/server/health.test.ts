// Health records of staff: who may read them, that they are closed where they lie, and that nobody else can tell from
// anything the server says whether there are any.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openJournal } from '../../src/journal/adapters/open.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { JournalError } from '../../src/journal/problems.ts';
import { readHealthKeys } from '../../src/server/health/keys.ts';
import { seal, unseal } from '../../src/server/health/seal.ts';
import { Refusal } from '../../src/server/refusal.ts';
import { visibleEntries } from '../../src/server/visible.ts';
import { verdictOf } from '../journal/contract.ts';
import { device, notes } from '../journal/samples.ts';
import { type Client, HEALTH_KEY, lead, person, type Running, start, tablet } from './harness.ts';

const RECORD = {
  person: 'p-3k7m',
  form: 'follow-up-day',
  version: 1,
  record: { day: 4, temperatureTenths: 384, note: 'Shivers since MONDAY-MARK.' },
} as const;

let server: Running;
let desk: Client;
let doctor: Client;
beforeEach(async () => {
  server = await start();
  desk = await lead(server);
  doctor = await person(server, desk, 'occupational-health');
});
afterEach(() => server.stop());

const WHY = { why: 'follow-up' } as const;

const sealOne = (record: object = RECORD) => doctor.call('seal-health-record', { body: record });

test('occupational health writes and reads', async () => {
  expect(await sealOne()).toEqual({ number: 1, key: 'first' });
  await sealOne({ ...RECORD, record: { day: 5 } });
  const read = await doctor.call('read-health-records', { body: WHY });
  expect(read).toMatchObject({ next: 3, more: false });
  expect(read.records).toMatchObject([
    { ...RECORD, number: 1, key: 'first' },
    { person: 'p-3k7m', record: { day: 5 }, number: 2 },
  ]);
  expect(await doctor.call('read-health-records', { body: { ...WHY, from: 2 } })).toMatchObject({
    records: [{ number: 2 }],
  });
  expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
});

test('nothing of a record lies open: not in the journal, not in its file, not in the log, not in the counts', async () => {
  await sealOne();
  const [row] = await server.context.journal.read(1, { device: 'server-health' });
  expect(JSON.stringify(row)).not.toMatch(/3k7m|Tenths|:384|MONDAY|follow-up-day/);
  for (const name of ['journal.sqlite', 'journal.sqlite-wal', 'unit.sqlite'])
    expect(readFileSync(join(server.folder, name)).includes('MONDAY-MARK')).toBe(false);
  const counts = server.context.metrics.text([]);
  expect(server.log() + counts).not.toMatch(/MONDAY|health-record|3k7m/);
});

test('nobody else can tell: the same answers with records and without', async () => {
  const { client: anteroom, device: id } = await tablet(server, desk);
  const chain = device(id, 'larkmoor-isolation');
  const told = async () => {
    const pages = [];
    for (let from = 1, more = true; more; ) {
      const page = await desk.call('read-entries', { query: { from, most: 2 } });
      pages.push(...page.entries);
      ({ next: from, more } = page);
    }
    return { pages, device: (await anteroom.call('read-device')).head };
  };
  await anteroom.call('append-entries', { body: { entries: notes(3, chain) } });
  const before = await told();
  const counts = server.context.metrics.text([]);
  for (let turn = 0; turn < 3; turn += 1) await sealOne();
  await doctor.call('read-health-records', { body: WHY });
  expect(server.context.metrics.text([]).match(/doffline_entries_total \d+/)).toEqual(
    counts.match(/doffline_entries_total \d+/),
  );
  expect(await told()).toEqual(before);
  await anteroom.call('append-entries', { body: { entries: notes(2, chain) } });
  await sealOne();
  await anteroom.call('append-entries', { body: { entries: notes(2, chain) } });
  const after = await told();
  expect(after.pages.map(({ at }) => at)).toEqual(after.pages.map((_, index) => index + 1));
  expect(after.pages.slice(0, before.pages.length)).toEqual(before.pages);
  expect(after.pages).toHaveLength(before.pages.length + 4);
  expect(JSON.stringify(after)).not.toMatch(/health|unitNumber|unitHash/);
});

test('a cursor goes on where it was while records come between', async () => {
  const { client: anteroom, device: id } = await tablet(server, desk);
  const chain = device(id, 'larkmoor-isolation');
  const seen: unknown[] = [];
  let from = 1;
  for (let turn = 0; turn < 12; turn += 1) {
    const [entry] = notes(1, chain);
    if (turn % 3 === 0) await sealOne();
    await anteroom.call('append-entries', { body: { entries: [entry] } });
    if (turn % 2 === 0) await sealOne();
    if (turn % 4 === 1) await doctor.call('read-health-records', { body: WHY });
    const page = await anteroom.call('read-entries', { query: { from, most: 1 + (turn % 3) } });
    seen.push(...page.entries.map(({ at }) => at));
    from = page.next;
  }
  const rest = await anteroom.call('read-entries', { query: { from } });
  seen.push(...rest.entries.map(({ at }) => at));
  expect(seen).toEqual(Array.from({ length: 14 }, (_, index) => index + 1));
  expect(await anteroom.refused('read-entries', { query: { from: 16 } })).toMatchObject({
    code: 'cursor-ahead',
    todo: 'read-from-start',
  });
});

test('a journal that was restored while the server ran is counted anew', async () => {
  const unit = 'larkmoor-isolation';
  const sealed = (count: number) => {
    const chain = device('server-health', unit);
    return Array.from({ length: count }, () => chain.write('health.sealed'));
  };
  const [first, second] = [memoryStore(), memoryStore()];
  const chain = device('tablet', unit);
  await first.append([...notes(2, chain), ...sealed(3), ...notes(2, chain)]);
  const again = device('tablet', unit);
  await second.append([
    ...notes(1, again),
    ...sealed(1),
    ...notes(1, again),
    ...sealed(1).slice(1),
    ...notes(4, again),
  ]);
  let journal = first;
  const read = visibleEntries({ read: (...range) => journal.read(...range) });
  expect((await read(3, 5)).entries.map(({ entry }) => entry.number)).toEqual([3, 4]);
  journal = second;
  expect((await read(1, 9)).entries.map(({ at, entry }) => [at, entry.number])).toEqual(
    [1, 2, 3, 4, 5, 6].map((at) => [at, at]),
  );
});

test('the lead, other roles and devices find nothing at the address', async () => {
  await sealOne();
  for (const role of ['observer', 'stores', 'reader'] as const) {
    const one = await person(server, desk, role);
    for (const name of [
      'read-health-records',
      'list-health-readings',
      'list-health-accounts',
      'let-in-account',
    ] as const)
      expect(await one.refused(name)).toMatchObject({ code: 'not-found', status: 404 });
  }
  expect(await desk.refused('seal-health-record', { body: RECORD })).toMatchObject({ code: 'not-found' });
  const { client: own } = await tablet(server, desk, 'occupational-health');
  expect(await own.refused('read-health-records')).toMatchObject({ code: 'not-found' });
});

describe('who reads is recorded', () => {
  test('who, when, whose, which and why, before it is shown; nothing of what it says', async () => {
    await sealOne();
    await sealOne({ ...RECORD, person: 'p-9x2q' });
    await doctor.call('read-health-records', { body: WHY });
    const one = await doctor.call('read-health-records', { body: { why: 'exposure', person: 'p-9x2q' } });
    expect(one.records).toMatchObject([{ person: 'p-9x2q', number: 2 }]);
    const none = await doctor.call('read-health-records', { body: { ...WHY, person: 'p-5t8w' } });
    expect(none.records).toEqual([]);
    const { account } = await doctor.call('read-session');
    const by = { by: account.person, account: account.id };
    const listed = await doctor.call('list-health-readings');
    expect(listed).toMatchObject({
      readings: [
        { number: 1, ...by, people: ['p-3k7m', 'p-9x2q'], records: [1, 2], why: 'follow-up' },
        { number: 2, ...by, people: ['p-9x2q'], records: [2], why: 'exposure' },
        { number: 3, ...by, people: ['p-5t8w'], records: [], why: 'follow-up' },
      ],
      next: 4,
      more: false,
    });
    expect((await doctor.call('list-health-readings', { query: { from: 3 } })).readings).toHaveLength(1);
    const rows = await server.context.journal.read(1, { device: 'server-reads' });
    expect(rows).toHaveLength(3);
    expect(JSON.stringify(rows)).not.toMatch(/Tenths|:384|MONDAY|follow-up-day/);
    expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
  });

  test('one record is read alone, and no other is noted', async () => {
    for (let day = 1; day <= 3; day += 1) await sealOne({ ...RECORD, record: { day } });
    const one = await doctor.call('read-health-records', { body: { ...WHY, from: 2, most: 1 } });
    expect(one).toMatchObject({ records: [{ number: 2, record: { day: 2 } }], next: 3, more: true });
    expect((await doctor.call('list-health-readings')).readings).toMatchObject([{ records: [2] }]);
    const refused = await doctor.refused('read-health-records', { body: { ...WHY, most: 201 } });
    expect(refused).toMatchObject({ code: 'wrong-shape', where: ['most'] });
  });

  test('where that cannot be stored the record is not shown', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'doffline-health-'));
    const journal = await openJournal({ in: 'folder', file: join(folder, 'journal.sqlite') });
    const disk = { isFull: false };
    const append: typeof journal.append = (entries) =>
      disk.isFull
        ? Promise.reject(new JournalError({ code: 'full', detail: 'no room' }))
        : journal.append(entries);
    const other = await start({ journal: { ...journal, append } });
    const one = await person(other, await lead(other), 'occupational-health');
    await one.call('seal-health-record', { body: RECORD });
    disk.isFull = true;
    const { status, text } = await one.raw('read-health-records', { body: WHY });
    expect([status, text]).toEqual([503, expect.stringContaining('"full"')]);
    expect(text).not.toMatch(/MONDAY|p-3k7m/);
    disk.isFull = false;
    expect((await one.call('list-health-readings')).readings).toEqual([]);
    expect((await one.call('read-health-records', { body: WHY })).records).toMatchObject([RECORD]);
    await other.stop();
    rmSync(folder, { recursive: true });
  });

  test('without a reason nothing is shown; a reason is chosen, not typed', async () => {
    await sealOne();
    const refused = (body: object) => doctor.refused('read-health-records', { body });
    expect(await refused({})).toMatchObject({ code: 'wrong-shape' });
    expect(await refused({ why: 'She had a fever.' })).toMatchObject({ code: 'wrong-shape' });
    expect((await doctor.call('list-health-readings')).readings).toEqual([]);
  });

  test('no device may write or forge such an entry, and none reads it', async () => {
    const { client: anteroom, device: id } = await tablet(server, desk);
    const forged = [device(id, 'larkmoor-isolation').write('health.read')];
    expect(await anteroom.refused('append-entries', { body: { entries: forged } })).toMatchObject({
      code: 'kind-not-allowed',
    });
    await sealOne();
    await doctor.call('read-health-records', { body: WHY });
    const { entries } = await anteroom.call('read-entries');
    expect(JSON.stringify(entries)).not.toMatch(/server-reads|health/);
  });
});

test('what has no plain form is refused, and what is too long', async () => {
  const refused = (record: object) => doctor.refused('seal-health-record', { body: { ...RECORD, record } });
  expect(await refused({ temperature: 38.4 })).toMatchObject({ code: 'malformed' });
  expect(await refused({ note: 'x'.repeat(50_000) })).toMatchObject({ code: 'too-large' });
});

describe('keys', () => {
  const key = (name: string, fill: number): string => `${name}:${Buffer.alloc(32, fill).toString('base64')}`;

  test('without one: occupational health is told what is missing, nobody else', async () => {
    const bare = await start({ healthKey: undefined });
    const first = await lead(bare);
    const one = await person(bare, first, 'occupational-health');
    expect(await one.refused('read-health-records', { body: WHY })).toMatchObject({
      code: 'health-key-missing',
      status: 503,
      todo: 'tell-administrator',
    });
    expect(await first.refused('read-health-records')).toMatchObject({ code: 'not-found' });
    await bare.stop();
  });

  test('a new one seals, an older one still opens, one that is gone is named as missing', () => {
    const old = readHealthKeys(key('old', 1))!;
    const both = readHealthKeys(`${key('new', 2)}, ${key('old', 1)}`)!;
    const only = readHealthKeys(key('new', 2))!;
    const sealed = seal(RECORD, 'unit', old);
    expect(unseal(sealed, 'unit', both)).toEqual(RECORD);
    expect(seal(RECORD, 'unit', both).key).toBe('new');
    expect(() => unseal(sealed, 'unit', only)).toThrow(new Refusal('health-key-unknown'));
  });

  test('a record altered, of another unit or under another key’s name does not open', () => {
    const keys = readHealthKeys(`${key('one', 1)},${key('two', 2)}`)!;
    const sealed = seal(RECORD, 'unit', keys);
    const bytes = Buffer.from(sealed.sealed, 'base64url');
    bytes[5]! ^= 1;
    const damaged = new Refusal('damaged');
    expect(() => unseal({ ...sealed, sealed: bytes.toString('base64url') }, 'unit', keys)).toThrow(damaged);
    expect(() => unseal(sealed, 'other', keys)).toThrow(damaged);
    expect(() => unseal({ ...sealed, key: 'two' }, 'unit', keys)).toThrow(damaged);
    expect(() => unseal({ ...sealed, sealed: 'AAAA' }, 'unit', keys)).toThrow(damaged);
  });

  test('the same record twice looks different, and a longer one as long', () => {
    const keys = readHealthKeys(HEALTH_KEY)!;
    const one = seal(RECORD, 'unit', keys);
    expect(seal(RECORD, 'unit', keys).sealed).not.toBe(one.sealed);
    expect(seal({ ...RECORD, record: { note: 'x'.repeat(200) } }, 'unit', keys).sealed).toHaveLength(
      one.sealed.length,
    );
  });

  test.each([
    'abc',
    ':',
    'name:',
    'name:AAAA',
    `Name Two:${Buffer.alloc(32).toString('base64')}`,
    `${key('a', 1)},${key('a', 2)}`,
  ])('one that cannot be read is refused without being shown: %s', (text) => {
    const secret = text.split(':')[1] ?? text;
    expect(() => readHealthKeys(text)).toThrow(/^DOFFLINE_HEALTH_KEY, key \d: /);
    try {
      readHealthKeys(text);
    } catch (error) {
      if (secret.length > 4) expect(String(error)).not.toContain(secret);
    }
  });
});
