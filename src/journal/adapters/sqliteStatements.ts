// The few statements that a SQLite journal needs, prepared once.
import type { Asked, Standing } from '../admit.ts';
import { type Head, type Row, START } from '../entry.ts';
import { readState } from '../fold.ts';
import type { Range, Snapshot } from '../port.ts';
import { USUAL_PAGE } from '../port.ts';
import type { Db } from './sqliteFile.ts';
import { unitOf } from './memory.ts';

const COLUMNS = `unit_number as unitNumber, device, number, hash, unit_previous as unitPrevious,
  unit_hash as unitHash, text`;

const rowOf = ({ unitNumber, device, number, hash, unitPrevious, unitHash, text }: Row): Row => ({
  unitNumber,
  device,
  number,
  hash,
  unitPrevious,
  unitHash,
  text,
});

export function statementsOf(db: Db) {
  const all = (sql: string) => {
    const statement = db.prepare(`select ${COLUMNS} from entry ${sql}`);
    return (...values: readonly (string | number)[]) => (statement.all(...values) as Row[]).map(rowOf);
  };
  const first = all('where unit_number = 1');
  const between = all('where device = ? and number between ? and ? order by number');
  const lastOf = all('where device = ? order by number desc limit 1');
  const forwards = all('where unit_number >= ? order by unit_number limit ?');
  const backwards = all('where unit_number <= ? order by unit_number desc limit ?');
  const ownForwards = all('where device = ? and number >= ? order by number limit ?');
  const ownBackwards = all('where device = ? and number <= ? order by number desc limit ?');
  const end = db.prepare('select unit_number as number, unit_hash as hash from head where id = 1');
  const head = (): Head => {
    const noted = end.get() as Head | undefined;
    return noted ? { number: noted.number, hash: noted.hash } : START;
  };
  const headOf = (device: string): Head => {
    const [row] = lastOf(device);
    return row ? { number: row.number, hash: row.hash } : START;
  };
  return {
    head,
    standing: (asked: readonly Asked[]): Standing => ({
      unit: unitOf(first()[0]),
      head: head(),
      devices: new Map(asked.map(({ device }) => [device, headOf(device)])),
      stored: asked.flatMap(({ device, from, to }) => between(device, from, to)),
    }),
    rows: (from: number, { most = USUAL_PAGE, device, backwards: down }: Range): readonly Row[] =>
      device === undefined
        ? (down ? backwards : forwards)(from, most)
        : (down ? ownBackwards : ownForwards)(device, from, most),
  };
}

export function writersOf(db: Db) {
  const insert = db.prepare(`insert into entry
    (unit_number, device, number, hash, unit_previous, unit_hash, text) values (?, ?, ?, ?, ?, ?, ?)`);
  const note = db.prepare(`insert into head (id, unit_number, unit_hash) values (1, ?, ?)`);
  const move = db.prepare(`update head set unit_number = ?, unit_hash = ? where id = 1`);
  return {
    insert: (rows: readonly Row[]): void => {
      for (const { unitNumber, device, number, hash, unitPrevious, unitHash, text } of rows)
        insert.run(unitNumber, device, number, hash, unitPrevious, unitHash, text);
    },
    /** Notes the end; `before` is the number that it stood at. */
    note: ({ number, hash }: Head, before: number): void => {
      (before === 0 ? note : move).run(number, hash);
    },
  };
}

interface Kept extends Omit<Snapshot, 'state'> {
  readonly state: string;
}

export function snapshotStatements(db: Db) {
  const load = db.prepare(`select view, version, unit_number as unitNumber, unit_hash as unitHash, state
    from snapshot where view = ?`);
  const save = db.prepare(`insert or replace into snapshot (view, version, unit_number, unit_hash, state)
    values (?, ?, ?, ?, ?)`);
  return {
    load: (view: string): Snapshot | undefined => {
      const kept = load.get(view) as Kept | undefined;
      if (!kept) return undefined;
      const { version, unitNumber, unitHash, state } = kept;
      return { view, version, unitNumber, unitHash, state: readState(view, state) };
    },
    save: ({ view, version, unitNumber, unitHash, state }: Snapshot): void => {
      save.run(view, version, unitNumber, unitHash, JSON.stringify(state));
    },
  };
}
