// The journal in PostgreSQL, on a server that the tests start themselves. Where there is none, these tests are skipped by name.
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startPostgres, whyNoPostgres } from '../../scripts/postgres.mjs';
import { openPostgres } from '../../src/journal/adapters/postgres.ts';
import { journalContract, problemOf, verdictOf } from './contract.ts';
import { notes, twentyEight } from './samples.ts';

const why = whyNoPostgres();

describe.skipIf(why !== undefined)(`PostgreSQL${why === undefined ? '' : ` (not run: ${why})`}`, () => {
  let server: Awaited<ReturnType<typeof startPostgres>>;
  let count = 0;
  beforeAll(async () => {
    server = await startPostgres();
  });
  afterAll(() => server.stop());

  /** A schema of its own for each test, and what asks the database past the journal. */
  const place = () => {
    count += 1;
    const schema = `unit_${count}`;
    const url = `${server.url}?schema=${schema}`;
    return {
      schema,
      url,
      query: async (sql: string): Promise<void> => {
        const client = new Client(server.url);
        await client.connect();
        try {
          await client.query(sql);
        } finally {
          await client.end();
        }
      },
    };
  };

  journalContract('PostgreSQL', async () => {
    const { url } = place();
    return Promise.resolve({ open: () => openPostgres(url), remove: async () => Promise.resolve() });
  });

  test('the database itself refuses to change, remove, empty or misplace', async () => {
    const { schema, url, query } = place();
    const store = await openPostgres(url);
    await store.append(twentyEight());
    const before = await store.rows(1, 100);
    for (const sql of [
      `update ${schema}.entry set text = 'x' where unit_number = 3`,
      `update ${schema}.entry set unit_number = unit_number + 1`,
      `delete from ${schema}.entry where unit_number = 28`,
      `truncate ${schema}.entry`,
      `update ${schema}.head set unit_number = 3`,
      `delete from ${schema}.head`,
      `truncate ${schema}.head`,
      `insert into ${schema}.entry values (30, 'other', 1, '', '', '', '')`,
      `insert into ${schema}.entry values (29, 'other', 2, '', '', '', '')`,
      `insert into ${schema}.entry select * from ${schema}.entry where unit_number = 3
        on conflict (unit_number) do update set text = 'x'`,
    ])
      await expect(query(sql), sql).rejects.toThrow(/never changed|follows the last|moves forward/);
    expect(await store.rows(1, 100)).toEqual(before);
    expect(await verdictOf(store)).toMatchObject({ flaws: [] });
    await store.close();
  });

  test('units in one database do not see one another', async () => {
    const [one, two] = [await openPostgres(place().url), await openPostgres(place().url)];
    await one.append(notes(2));
    expect(await two.read(1)).toEqual([]);
    await Promise.all([one.close(), two.close()]);
  });

  test('a database that may only be read refuses with that reason, and can still be read', async () => {
    const { url } = place();
    const store = await openPostgres(url);
    await store.append(notes(2));
    await store.close();
    const reader = await openPostgres(`${url}&options=-c%20default_transaction_read_only=on`);
    expect(await problemOf(reader.append(notes(3)))).toMatchObject({ code: 'read-only' });
    expect(await reader.read(1)).toHaveLength(2);
    await reader.close();
  });

  test('a server that is not there, or an address that is none, is unavailable', async () => {
    for (const url of ['postgres://postgres@127.0.0.1:1/none', 'not an address', `${server.url}?schema=a"b`])
      expect(await problemOf(openPostgres(url)), url).toMatchObject({ code: 'unavailable' });
  });

  test('tables of a newer release are left alone', async () => {
    const { schema, url, query } = place();
    await (await openPostgres(url)).close();
    await query(`update ${schema}.form set version = 2`);
    expect(await problemOf(openPostgres(url))).toMatchObject({ code: 'newer-format' });
  });

  test('a connection that is cut loses nothing acknowledged, and the next call goes on', async () => {
    const { url, query } = place();
    const store = await openPostgres(url);
    const entries = notes(30);
    await store.append(entries.slice(0, 10));
    // Client connections only: to end the server's own processes would restart it under everybody's feet.
    await query(
      "select pg_terminate_backend(pid) from pg_stat_activity where pid <> pg_backend_pid() and backend_type = 'client backend'",
    );
    await problemOf(store.append(entries.slice(10, 20)));
    await store.append(entries);
    expect(await verdictOf(store)).toMatchObject({ entries: 30, flaws: [] });
    await store.close();
  });
});
