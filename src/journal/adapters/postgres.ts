// The journal in PostgreSQL: for several machines, by one setting (DATABASE_URL). Writers take turns by a lock of the database,
// held until they have committed; a commit returns when it is on the disk, whatever the server's own setting says.
import type { Pool as PgPool } from 'pg';
import { admit, askedOf, checkAlone } from '../admit.ts';
import type { Entry, Row } from '../entry.ts';
import { readRows, readState } from '../fold.ts';
import { type Acknowledged, type Range, type Snapshot, type Store, USUAL_PAGE } from '../port.ts';
import { connect, failure, guarded, inTransaction, prepare, takeTurn } from './postgresClient.ts';
import { headIn, insert, rowsBy, standing } from './postgresRows.ts';

async function append(
  pool: PgPool,
  schema: string,
  entries: readonly Entry[],
): Promise<readonly Acknowledged[]> {
  checkAlone(entries);
  return inTransaction(pool, async (client) => {
    await takeTurn(client, schema);
    const { rows, acknowledged } = admit(await standing(client, schema, askedOf(entries)), entries);
    await insert(client, schema, rows);
    return acknowledged;
  });
}

function select(pool: PgPool, schema: string, from: number, range: Range): Promise<readonly Row[]> {
  const { most = USUAL_PAGE, device, backwards } = range;
  const by = device === undefined ? 'unit_number' : 'number';
  const order = `and ${by} ${backwards ? '<=' : '>='} $1 order by ${by} ${backwards ? 'desc' : 'asc'} limit $2`;
  return device === undefined
    ? rowsBy(pool, schema, `where true ${order}`, [from, most])
    : rowsBy(pool, schema, `where device = $3 ${order}`, [from, most, device]);
}

function snapshotsIn(pool: PgPool, schema: string): Store['snapshots'] {
  const load = async (view: string): Promise<Snapshot | undefined> => {
    const { rows } = await pool.query<
      Record<'unitNumber' | 'unitHash' | 'state', string> & { version: number }
    >(
      `select version, unit_number as "unitNumber", unit_hash as "unitHash", state
        from ${schema}.snapshot where view = $1`,
      [view],
    );
    const [kept] = rows;
    if (!kept) return undefined;
    const { version, unitNumber, unitHash, state } = kept;
    return {
      view,
      version,
      unitNumber: Number(unitNumber),
      unitHash,
      state: readState(view, state),
    };
  };
  const save = ({ view, version, unitNumber, unitHash, state }: Snapshot) =>
    pool.query(
      `insert into ${schema}.snapshot (view, version, unit_number, unit_hash, state) values ($1, $2, $3, $4, $5)
        on conflict (view) do update set version = excluded.version, unit_number = excluded.unit_number,
        unit_hash = excluded.unit_hash, state = excluded.state`,
      [view, version, unitNumber, unitHash, JSON.stringify(state)],
    );
  return {
    load: (view) => guarded(() => load(view)),
    save: (snapshot) => guarded(async () => void (await save(snapshot))),
  };
}

/** Opens the journal in the database at an address, and makes it where there is none. */
export async function openPostgres(address: string): Promise<Store> {
  const { pool, schema } = await connect(address);
  try {
    await prepare(pool, schema);
  } catch (error) {
    await pool.end();
    throw failure(error);
  }
  return {
    append: (entries) => guarded(() => append(pool, schema, entries)),
    read: (from, range = {}) => guarded(async () => readRows(await select(pool, schema, from, range))),
    rows: (from, most) => guarded(() => select(pool, schema, from, { most })),
    head: () => guarded(() => headIn(pool, schema)),
    snapshots: snapshotsIn(pool, schema),
    close: () => pool.end(),
  };
}
