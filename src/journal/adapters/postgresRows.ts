// Reading and writing the rows of a journal in PostgreSQL.
import type { Asked, Standing } from '../admit.ts';
import { type Head, type Row, START } from '../entry.ts';
import { unitOf } from './memory.ts';
import type { Client } from './postgresClient.ts';

/** Numbers come as text, because they may be larger than a double holds. */
interface Raw extends Record<Exclude<keyof Row, 'unitNumber' | 'number'>, string> {
  readonly unitNumber: string;
  readonly number: string;
}

const rowOf = (raw: Raw): Row => ({
  ...raw,
  unitNumber: Number(raw.unitNumber),
  number: Number(raw.number),
});

export async function rowsBy(client: Client, schema: string, rest: string, values: readonly unknown[]) {
  const { rows } = await client.query<Raw>(
    `select unit_number as "unitNumber", device, number, hash, unit_previous as "unitPrevious",
      unit_hash as "unitHash", text from ${schema}.entry ${rest}`,
    [...values],
  );
  return rows.map(rowOf);
}

export async function headIn(client: Client, schema: string): Promise<Head> {
  const { rows } = await client.query<{ number: string; hash: string }>(
    `select unit_number as number, unit_hash as hash from ${schema}.head`,
  );
  const [noted] = rows;
  return noted ? { number: Number(noted.number), hash: noted.hash } : START;
}

export async function standing(client: Client, schema: string, asked: readonly Asked[]): Promise<Standing> {
  const devices = new Map<string, Head>();
  const stored: Row[] = [];
  for (const { device, from, to } of asked) {
    const own = (rest: string, ...values: readonly number[]) =>
      rowsBy(client, schema, `where device = $1 ${rest}`, [device, ...values]);
    const [last] = await own('order by number desc limit 1');
    devices.set(device, last ? { number: last.number, hash: last.hash } : START);
    if (last && last.number >= from) stored.push(...(await own('and number between $2 and $3', from, to)));
  }
  const [first] = await rowsBy(client, schema, 'where unit_number = 1', []);
  return { unit: unitOf(first), head: await headIn(client, schema), devices, stored };
}

export async function insert(client: Client, schema: string, rows: readonly Row[]): Promise<void> {
  const last = rows.at(-1);
  if (!last) return;
  const column = (key: keyof Row): unknown[] => rows.map((row) => row[key]);
  await client.query(
    `insert into ${schema}.entry (unit_number, device, number, hash, unit_previous, unit_hash, text)
      select * from unnest($1::bigint[], $2::text[], $3::bigint[], $4::text[], $5::text[], $6::text[], $7::text[])`,
    [
      column('unitNumber'),
      column('device'),
      column('number'),
      column('hash'),
      column('unitPrevious'),
      column('unitHash'),
      column('text'),
    ],
  );
  await client.query(
    `insert into ${schema}.head (id, unit_number, unit_hash) values (1, $1, $2)
      on conflict (id) do update set unit_number = excluded.unit_number, unit_hash = excluded.unit_hash`,
    [last.unitNumber, last.unitHash],
  );
}
