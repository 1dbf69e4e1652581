// A connection to PostgreSQL as the journal uses it: the address, transactions that are durable when they return, turns of
// writers, and what the server says as the journal's own failures.
import type { Client as PgClient, Pool as PgPool } from 'pg';
import { type FailureCode, JournalError } from '../problems.ts';
import { SCHEMA_NAME, SCHEMA_VERSION, tablesIn } from './postgresSchema.ts';

export type Client = Pick<PgClient, 'query'>;

/** SQLSTATE classes (PostgreSQL manual, appendix A). */
const BY_STATE: readonly (readonly [RegExp, FailureCode])[] = [
  [/^53100/, 'full'],
  [/^25006|^42501/, 'read-only'],
  [/^55P03|^40P01|^57014/, 'busy'],
  [/^XX00[12]/, 'damaged'],
];

export function failure(error: unknown): JournalError {
  if (error instanceof JournalError) return error;
  const state = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  const detail = error instanceof Error && error.message !== '' ? error.message : state;
  const known = BY_STATE.find(([pattern]) => pattern.test(state));
  return new JournalError({ code: known?.[1] ?? 'unavailable', detail }, error);
}

export async function guarded<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    throw failure(error);
  }
}

/** At least the own disk; a setting that waits for other servers as well is left. */
const DURABLE = `select set_config('synchronous_commit', case
  when current_setting('synchronous_commit') in ('off', 'local') then 'on'
  else current_setting('synchronous_commit') end, true)`;

export async function inTransaction<Result>(pool: PgPool, work: (client: Client) => Promise<Result>) {
  const client = await pool.connect();
  let broken = false;
  try {
    await client.query('begin');
    await client.query(DURABLE);
    const result = await work(client);
    await client.query('commit');
    return result;
  } catch (error) {
    await client.query('rollback').catch(() => {
      broken = true;
    });
    throw error;
  } finally {
    client.release(broken);
  }
}

/** One writer at a time; let go at the end of the transaction. */
export const takeTurn = (client: Client, schema: string): Promise<unknown> =>
  client.query("select pg_advisory_xact_lock(hashtextextended('doffline journal ' || $1, 0))", [schema]);

/** The form of the tables there; undefined where there are none. */
async function formIn(client: Client, schema: string): Promise<number | undefined> {
  const there = await client.query<{ there: string | null }>('select to_regclass($1) as there', [
    `${schema}.form`,
  ]);
  if (there.rows[0]?.there === null) return undefined;
  const { rows } = await client.query<{ version: number }>(`select version from ${schema}.form`);
  return rows[0]?.version;
}

export async function prepare(pool: PgPool, schema: string): Promise<void> {
  const form = (await formIn(pool, schema)) ?? (await inTransaction(pool, (client) => make(client, schema)));
  if (form > SCHEMA_VERSION)
    throw new JournalError({ code: 'newer-format', detail: `form ${form}, this release knows 1` });
}

export async function make(client: Client, schema: string): Promise<number> {
  await takeTurn(client, schema);
  const form = await formIn(client, schema);
  if (form !== undefined) return form;
  await client.query(tablesIn(schema));
  return SCHEMA_VERSION;
}

/** `?schema=NAME` in the address, for several units in one database; `doffline` where it is not said. */
function readUrl(url: string): { readonly url: string; readonly schema: string } {
  let address: URL;
  try {
    address = new URL(url);
  } catch (error) {
    throw new JournalError({ code: 'unavailable', detail: 'DATABASE_URL is no address' }, error);
  }
  const schema = address.searchParams.get('schema') ?? 'doffline';
  if (!SCHEMA_NAME.test(schema))
    throw new JournalError({ code: 'unavailable', detail: 'schema= in DATABASE_URL is no plain name' });
  address.searchParams.delete('schema');
  return { url: address.href, schema };
}

/** Connections to an address. One that breaks while it is idle must not end the program; the next query says that it is gone. */
export async function connect(address: string): Promise<{ readonly pool: PgPool; readonly schema: string }> {
  const { url, schema } = readUrl(address);
  const { default: pg } = await import('pg');
  const pool = new pg.Pool({ connectionString: url, max: 4, connectionTimeoutMillis: 10_000 });
  pool.on('error', () => undefined);
  // One that breaks while it is lent out and asks nothing would end the program too; its next query says that it is gone.
  pool.on('connect', (client) => client.on('error', () => undefined));
  return { pool, schema };
}
