// The same server over PostgreSQL, on a database that the tests start themselves: the story, the refusals, two servers over
// one database at once, and a database that goes away. Where there is none, these tests are skipped by name.
import { Client as Database } from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { startPostgres, whyNoPostgres } from '../../scripts/postgres.mjs';
import type { Entry } from '../../src/journal/entry.ts';
import { verdictOf } from '../journal/contract.ts';
import { device, notes } from '../journal/samples.ts';
import { ask, client, LEAD, lead, person, type Running, start, tablet } from './harness.ts';

const why = whyNoPostgres();
const UNIT = 'larkmoor-isolation';

describe.skipIf(why !== undefined)(`over PostgreSQL${why === undefined ? '' : ` (not run: ${why})`}`, () => {
  let postgres: Awaited<ReturnType<typeof startPostgres>>;
  let count = 0;
  let address: string;
  let servers: Running[] = [];
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres.stop());
  beforeEach(() => {
    count += 1;
    address = `${postgres.url}?schema=served_${count}`;
    servers = [];
  });
  afterEach(async () => {
    for (const server of servers) await server.stop();
  });

  const open = async (): Promise<Running> => {
    const server = await start({ place: { in: 'database', address } });
    servers.push(server);
    return server;
  };

  const sql = async (text: string): Promise<void> => {
    const options = '-c default_transaction_read_only=off';
    const database = new Database({ connectionString: postgres.url, options });
    await database.connect();
    try {
      await database.query(text);
    } finally {
      await database.end();
    }
  };

  test('sign in, pair, append, read, revoke; every refusal by its name', async () => {
    const server = await open();
    const desk = await lead(server);
    const { client: anteroom, device: id } = await tablet(server, desk);
    const chain = device(id, UNIT);
    const entries = notes(5, chain);
    const first = await anteroom.call('append-entries', {
      body: { entries, sentAt: '2020-01-01T00:00:00.000Z' },
    });
    expect(await anteroom.call('append-entries', { body: { entries } })).toMatchObject({
      acknowledged: first.acknowledged,
      head: { number: 5 },
    });
    const fork = device(id, UNIT, { number: 4, hash: entries[3]!.hash }).write('exit.started');
    const [, gap] = notes(2, chain) as [Entry, Entry];
    for (const [entry, code] of [
      [fork, 'fork'],
      [gap, 'gap'],
      [device('other', UNIT).write('exit.started'), 'forged-device'],
      [{ ...gap, at: '2020-01-01T00:00:00.000Z' }, 'hash-wrong'],
      [chain.write('health.sealed'), 'kind-not-allowed'],
    ] as const)
      expect((await anteroom.refused('append-entries', { body: { entries: [entry] } })).code).toBe(code);
    const { devices } = await desk.call('list-devices');
    expect(devices[0]!.clockOffset).toBeLessThan(-86_400_000);
    await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Lost.' } });
    expect((await anteroom.refused('read-entries')).code).toBe('device-revoked');
    const kinds = (await desk.call('read-entries')).entries.map(({ entry }) => (entry as Entry).kind);
    expect(kinds).toEqual([
      'unit.created',
      'device.paired',
      ...notes(5).map(({ kind }) => kind),
      'note.added',
      'device.revoked',
    ]);
    expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
  });

  test('health records are sealed, hidden and read', async () => {
    const server = await open();
    const desk = await lead(server);
    const before = await desk.call('read-entries');
    const doctor = await person(server, desk, 'occupational-health');
    const record = { person: 'p-3k7m', form: 'day', version: 1, record: { note: 'MONDAY-MARK' } };
    await doctor.call('seal-health-record', { body: record });
    expect((await doctor.call('read-health-records', { body: { why: 'follow-up' } })).records).toMatchObject([
      record,
    ]);
    expect((await desk.call('read-entries')).entries).toEqual(before.entries);
  });

  test('two servers over one database: one journal, one list of devices, one use of a code', async () => {
    const [one, two] = [await open(), await open()];
    const desk = await lead(one);
    const other = client(two.port);
    await other.call('sign-in', { body: { ...LEAD } });
    const offers = await Promise.all(
      [desk, other, desk, other].map((by) =>
        by.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } }),
      ),
    );
    const joined = await Promise.all(
      offers.flatMap(({ code }) =>
        [one, two].map(async (server) => {
          const at = client(server.port);
          const { status } = await at.raw('pair', { body: { code } });
          return { at, status, server };
        }),
      ),
    );
    const paired = joined.filter(({ status }) => status === 200);
    expect(paired).toHaveLength(4);
    await Promise.all(
      paired.map(async ({ at, server }, index) => {
        const { device: id } = await at.call('read-device');
        const chain = device(id, UNIT);
        // Each tablet goes to and fro between the servers.
        const elsewhere = client((server === one ? two : one).port, at.cookies);
        for (let turn = 0; turn < 6; turn += 1) {
          const entries = notes(1 + index, chain);
          const to = turn % 2 === 0 ? at : elsewhere;
          const { acknowledged } = await to.call('append-entries', { body: { entries } });
          expect(acknowledged.map(({ hash }) => hash)).toEqual(entries.map(({ hash }) => hash));
        }
      }),
    );
    const verdict = await verdictOf(one.context.journal);
    expect(verdict.flaws).toEqual([]);
    expect(verdict.entries).toBe(1 + 4 + 6 * (1 + 2 + 3 + 4));
    await desk.call('revoke-device', {
      params: { device: offers[0]!.device },
      body: { reason: 'Lost.' },
    });
    const lost = paired[0]!.at;
    for (const { port } of [one, two])
      expect(await client(port, lost.cookies).refused('read-device')).toMatchObject({
        code: 'device-revoked',
      });
  });

  test('connections that are cut: a plain refusal, and the same request again succeeds', async () => {
    const server = await open();
    const { client: anteroom, device: id } = await tablet(server, await lead(server));
    const chain = device(id, UNIT);
    const cut = `select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid() and backend_type = 'client backend'`;
    for (let turn = 0; turn < 5; turn += 1) {
      const entries = notes(3, chain);
      const sent = anteroom.raw('append-entries', { body: { entries } });
      await sql(cut);
      const { status } = await sent;
      expect([200, 503]).toContain(status);
      // One refusal may be left from a connection that was cut while it waited.
      for (let again = 0; again < 3; again += 1)
        if ((await anteroom.raw('append-entries', { body: { entries } })).status === 200) break;
      const { head } = await anteroom.call('append-entries', { body: { entries } });
      expect(head.number).toBe(3 * (turn + 1));
    }
    expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
  });

  test('a database that may only be read: a plain 503, and health says nothing is wrong with reading', async () => {
    const server = await open();
    const { client: anteroom, device: id } = await tablet(server, await lead(server));
    const entries = notes(2, device(id, UNIT));
    await sql('alter database postgres set default_transaction_read_only = on');
    await sql(
      `select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid() and backend_type = 'client backend'`,
    );
    let refused = await anteroom.refused('append-entries', { body: { entries } });
    if (refused.code === 'unavailable')
      refused = await anteroom.refused('append-entries', { body: { entries } });
    expect(refused).toMatchObject({ code: 'read-only', status: 503, todo: 'tell-administrator' });
    expect((await ask(server.port, { path: '/health' })).status).toBe(200);
    await sql('alter database postgres reset default_transaction_read_only');
    await sql(
      `select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid() and backend_type = 'client backend'`,
    );
    await anteroom.raw('read-device');
    await anteroom.call('append-entries', { body: { entries } });
  });
});
