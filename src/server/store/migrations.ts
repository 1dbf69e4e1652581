// The form of the server's records, version after version. A version is never changed once it was released: the next one
// says what to do to the tables that are there. Times are text as `toISOString` writes it, which sorts as time does.
import { JournalError } from '../../journal/problems.ts';
import type { Database, Sql } from './sql.ts';

/** Statements by which a version follows from the one before. */
export const MIGRATIONS: readonly (readonly string[])[] = [
  [
    `create table @unit (
      id text primary key,
      title text not null,
      invented integer not null,
      created_at text not null
    )`,
    `create table @account (
      id text primary key,
      folded text not null unique,
      name text not null,
      person text not null unique,
      role text not null,
      password text not null,
      first_password integer not null,
      disabled integer not null,
      created_at text not null
    )`,
    `create table @session (
      token text primary key,
      account text not null references @account (id),
      created_at text not null,
      seen_at text not null
    )`,
    `create table @pairing (
      code text primary key,
      device text not null,
      label text not null,
      role text not null,
      made_by text not null,
      ends_at text not null,
      claimed_at text
    )`,
    `create table @device (
      id text primary key,
      token text not null unique,
      label text not null,
      role text not null,
      paired_at text not null,
      revoked_at text,
      revocation_noted integer not null,
      seen_at text
    )`,
  ],
  [
    'alter table @device add column clock_offset bigint',
    'alter table @device add column noted_offset bigint',
  ],
  // Who is let in to health records: never of occupational health; waits, or was of it; let in. Whoever was of it before stays in.
  [
    "alter table @account add column health text not null default 'never'",
    'alter table @account add column health_since text',
    "update @account set health = 'in' where role = 'occupational-health'",
  ],
];

async function versionIn(sql: Sql): Promise<number> {
  await sql.run('create table if not exists @form (version integer not null)');
  const [row] = await sql.all<{ version: number }>('select version from @form');
  return row?.version ?? 0;
}

async function stepTo(sql: Sql, version: number): Promise<void> {
  for (const statement of MIGRATIONS[version - 1] ?? []) await sql.run(statement);
  await sql.run('delete from @form');
  await sql.run('insert into @form (version) values (?)', version);
}

/** Brings the tables to `newest`, step by step, each step whole or not at all. Throws where a newer release wrote them. */
export async function migrate(database: Database, newest = MIGRATIONS.length): Promise<void> {
  const found = await database.write(versionIn);
  if (found > newest)
    throw new JournalError({
      code: 'newer-format',
      detail: `records of form ${found}, this release knows ${newest}`,
    });
  for (let version = found + 1; version <= newest; version += 1)
    await database.write(async (sql) => {
      // Another server may have done it meanwhile.
      if ((await versionIn(sql)) < version) await stepTo(sql, version);
    });
}
