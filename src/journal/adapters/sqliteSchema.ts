// The journal's tables in SQLite. The database itself refuses to change or remove an entry, to put one in another's place
// (`insert or replace` removes without asking the delete trigger, so the insert trigger asks first), and to leave a gap.
// `head` notes the end apart from the entries; it only moves forward.

/** Stands in the file's header, so that other programs' files are not taken for a journal: "doff". */
export const APPLICATION_ID = 0x64_6f_66_66;
/** The version of these tables. A newer one is refused; an older one would be migrated here. */
export const SCHEMA_VERSION = 1;
/** Of a backup with the server's records: it can be read as a journal of form 1, and is never opened as one to write on. */
export const BACKUP_VERSION = 1001;

/** The server's records in a backup (recordsKept.ts). */
export const RECORDS_TABLE = `
create table records (
  id integer primary key check (id = 1),
  made_at text not null,
  unit_number integer not null,
  unit_hash text not null,
  form integer not null,
  sha256 text not null,
  content blob not null
) strict;
`;

export const TABLES = `
create table entry (
  unit_number integer primary key,
  device text not null,
  number integer not null,
  hash text not null,
  unit_previous text not null,
  unit_hash text not null,
  text text not null,
  unique (device, number)
) strict;
create table head (
  id integer primary key check (id = 1),
  unit_number integer not null,
  unit_hash text not null
) strict;
create table snapshot (
  view text primary key,
  version integer not null,
  unit_number integer not null,
  unit_hash text not null,
  state text not null
) strict, without rowid;
`;

export const TRIGGERS = `
create trigger entry_never_changed before update on entry begin
  select raise(abort, 'a journal entry is never changed');
end;
create trigger entry_never_removed before delete on entry begin
  select raise(abort, 'a journal entry is never removed');
end;
create trigger entry_follows before insert on entry
when new.unit_number <> (select coalesce(max(unit_number), 0) + 1 from entry)
  or new.number <> (select coalesce(max(number), 0) + 1 from entry where device = new.device)
begin
  select raise(abort, 'a journal entry follows the last one');
end;
create trigger head_forward before update on head when new.unit_number <= old.unit_number begin
  select raise(abort, 'the end of the journal only moves forward');
end;
create trigger head_never_removed before delete on head begin
  select raise(abort, 'the end of the journal is never removed');
end;
create trigger head_once before insert on head when exists (select 1 from head) begin
  select raise(abort, 'the journal has one end');
end;
`;
