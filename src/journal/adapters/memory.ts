// The journal in memory: for tests, for the demonstration, and as the plainest telling of what a store does.
import { admit, askedOf, checkAlone, type Standing } from '../admit.ts';
import { type Content, contentOf, type Head, type Row, START } from '../entry.ts';
import { readRows } from '../fold.ts';
import { type Range, type Snapshot, type Store, USUAL_PAGE } from '../port.ts';

export const unitOf = (row: Row | undefined): string | undefined =>
  row && (contentOf(row) as unknown as Content).unit;

function selected(rows: readonly Row[], from: number, { most = USUAL_PAGE, device, backwards }: Range) {
  const own = device === undefined ? rows : rows.filter((row) => row.device === device);
  const at = (row: Row): number => (device === undefined ? row.unitNumber : row.number);
  const asked = own.filter((row) => (backwards ? at(row) <= from : at(row) >= from));
  return (backwards ? asked.reverse() : asked).slice(0, most);
}

export function memoryStore(): Store {
  const rows: Row[] = [];
  const devices = new Map<string, Head>();
  const saved = new Map<string, Snapshot>();
  const head = (): Head => {
    const last = rows.at(-1);
    return last ? { number: last.unitNumber, hash: last.unitHash } : START;
  };
  const standing = (asked: ReturnType<typeof askedOf>): Standing => ({
    unit: unitOf(rows[0]),
    head: head(),
    devices: new Map(asked.map(({ device }) => [device, devices.get(device) ?? START])),
    stored: asked.flatMap(({ device, from, to }) =>
      rows.filter((row) => row.device === device && row.number >= from && row.number <= to),
    ),
  });
  return {
    append: async (entries, how) => {
      checkAlone(entries, how);
      const admitted = admit(standing(askedOf(entries)), entries);
      for (const row of admitted.rows) {
        rows.push(row);
        devices.set(row.device, { number: row.number, hash: row.hash });
      }
      return Promise.resolve(admitted.acknowledged);
    },
    read: async (from, range = {}) => Promise.resolve(readRows(selected(rows, from, range))),
    rows: async (from, most) => Promise.resolve(selected(rows, from, { most })),
    head: async () => Promise.resolve(head()),
    snapshots: {
      load: async (view) => Promise.resolve(saved.get(view)),
      save: async (snapshot) => {
        saved.set(snapshot.view, snapshot);
        return Promise.resolve();
      },
    },
    close: async () => Promise.resolve(),
  };
}
