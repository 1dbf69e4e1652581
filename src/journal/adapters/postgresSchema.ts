// The journal's tables in PostgreSQL: the same as in SQLite, in a schema of their own. The database itself refuses to change,
// remove or empty, and to take an entry that does not follow the last one.

/** Names that need no quotes and mean nothing else. */
export const SCHEMA_NAME = /^[a-z][a-z0-9_]{0,40}$/;
export const SCHEMA_VERSION = 1;

const TABLES = `
create schema SCHEMA;
create table SCHEMA.entry (
  unit_number bigint primary key,
  device text not null,
  number bigint not null,
  hash text not null,
  unit_previous text not null,
  unit_hash text not null,
  text text not null,
  unique (device, number)
);
create table SCHEMA.head (
  id integer primary key check (id = 1),
  unit_number bigint not null,
  unit_hash text not null
);
create table SCHEMA.snapshot (
  view text primary key,
  version integer not null,
  unit_number bigint not null,
  unit_hash text not null,
  state text not null
);
create table SCHEMA.form (version integer not null);
insert into SCHEMA.form values (${SCHEMA_VERSION});
create function SCHEMA.refuse() returns trigger language plpgsql as $$
begin
  raise exception 'a journal entry is never changed or removed' using errcode = 'restrict_violation';
end $$;
create function SCHEMA.follow() returns trigger language plpgsql as $$
begin
  if new.unit_number <> (select coalesce(max(unit_number), 0) + 1 from SCHEMA.entry)
    or new.number <> (select coalesce(max(number), 0) + 1 from SCHEMA.entry where device = new.device)
  then
    raise exception 'a journal entry follows the last one' using errcode = 'restrict_violation';
  end if;
  return new;
end $$;
create function SCHEMA.forward() returns trigger language plpgsql as $$
begin
  if new.unit_number <= old.unit_number then
    raise exception 'the end of the journal only moves forward' using errcode = 'restrict_violation';
  end if;
  return new;
end $$;
create trigger entry_never_changed before update or delete on SCHEMA.entry
  for each row execute function SCHEMA.refuse();
create trigger entry_never_emptied before truncate on SCHEMA.entry
  for each statement execute function SCHEMA.refuse();
create trigger entry_follows before insert on SCHEMA.entry
  for each row execute function SCHEMA.follow();
create trigger head_forward before update on SCHEMA.head
  for each row execute function SCHEMA.forward();
create trigger head_never_removed before delete on SCHEMA.head
  for each row execute function SCHEMA.refuse();
create trigger head_never_emptied before truncate on SCHEMA.head
  for each statement execute function SCHEMA.refuse();
`;

/** The statements that make them. `schema` must match SCHEMA_NAME. */
export const tablesIn = (schema: string): string => TABLES.replaceAll('SCHEMA', schema);
