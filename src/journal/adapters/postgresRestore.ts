// Puts the rows of a backup into a database, as they are, in one transaction. A journal that is there is never overwritten:
// it keeps its tables under another name.
import { type Head, type Row, START } from '../entry.ts';
import { connect, guarded, inTransaction, make, prepare, takeTurn } from './postgresClient.ts';
import { headIn, insert } from './postgresRows.ts';

/** Head of the journal at an address; `START` where there is none yet. */
export async function headAt(address: string): Promise<Head> {
  const { pool, schema } = await connect(address);
  try {
    return await guarded(async () => {
      await prepare(pool, schema);
      return headIn(pool, schema);
    });
  } finally {
    await pool.end();
  }
}

/** Gives back the schema that now holds the journal that was there; undefined where there was none. */
export async function restorePostgres(
  address: string,
  pages: AsyncIterable<readonly Row[]>,
): Promise<string | undefined> {
  const { pool, schema } = await connect(address);
  try {
    return await guarded(async () => {
      await prepare(pool, schema);
      return inTransaction(pool, async (client) => {
        await takeTurn(client, schema);
        const before = await headIn(client, schema);
        const kept = before.number === START.number ? undefined : `${schema}_replaced_${Date.now()}`;
        if (kept !== undefined) {
          await client.query(`alter schema ${schema} rename to ${kept}`);
          await make(client, schema);
        }
        for await (const rows of pages) await insert(client, schema, rows);
        return kept;
      });
    });
  } finally {
    await pool.end();
  }
}
