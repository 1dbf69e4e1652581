// The server's records in PostgreSQL, in a schema of their own beside the journal's, so that a restored journal leaves
// them as they are.
import {
  type Client,
  connect,
  guarded,
  inTransaction,
  takeTurn,
} from '../../journal/adapters/postgresClient.ts';
import type { Database, Sql } from './sql.ts';

type Pool = Awaited<ReturnType<typeof connect>>['pool'];

/** `?` and `@name` as PostgreSQL wants them. */
function translated(text: string, schema: string): string {
  let count = 0;
  return text.replaceAll('@', `${schema}.`).replaceAll('?', () => {
    count += 1;
    return `$${count}`;
  });
}

const statements = (client: Client | Pool, schema: string): Sql => ({
  all: async <Row>(text: string, ...values: readonly unknown[]) =>
    (await client.query<Row & object>(translated(text, schema), [...values])).rows,
  run: async (text, ...values) => (await client.query(translated(text, schema), [...values])).rowCount ?? 0,
});

/** Connects to the address of the journal, and makes the schema where there is none. */
export async function openPostgresRecords(address: string): Promise<Database> {
  const { pool, schema: journal } = await connect(address);
  const schema = `${journal}_server`;
  const write: Database['write'] = (work) =>
    guarded(() =>
      inTransaction(pool, async (client) => {
        await takeTurn(client, schema);
        return work(statements(client, schema));
      }),
    );
  try {
    await write(({ run }) => run(`create schema if not exists ${schema}`));
  } catch (error) {
    await pool.end();
    throw error;
  }
  const { all } = statements(pool, schema);
  return { all: (text, ...values) => guarded(() => all(text, ...values)), write, close: () => pool.end() };
}
