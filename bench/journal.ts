// The journal in a SQLite file: how fast a journal of a million entries shows the logbook (every stay worked out, and who is in the
// room), from its snapshot and from its beginning; how fast it verifies; and how many appends are forced to the disk in a
// second. The million is made once for a version of the view and kept in .cache; making it is not timed.
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqlite, readSqlite } from '../src/journal/adapters/sqlite.ts';
import { audit } from '../src/journal/audit.ts';
import { type Entry, headOf, nextEntry, START } from '../src/journal/entry.ts';
import { show } from '../src/journal/fold.ts';
import { KINDS } from '../src/journal/kinds/index.ts';
import { versionOf } from '../src/journal/kinds/kind.ts';
import { isInside, roomView, staysOf } from '../src/journal/views/room.ts';
import { type Row, report } from './harness.ts';

const MILLION = 1_000_000;
const FOLDER = join('.cache', 'bench-journal');
const FILE = join(FOLDER, 'journal.sqlite');

const DONE = join(FOLDER, `done-room-${roomView.version}`);
const VISITS = MILLION / 20;

const WORN = { procedure: 'suit-donning', version: '3', content: '5'.repeat(64) };

/** As a donning that is read aloud signs its wearer in, and an exit signs them out. */
const IN = {
  role: 'wearer',
  worn: WORN,
  ensemble: null,
  items: [],
  observer: 'p-9x2q',
  limit: { minutes: 120, source: 'The unit’s rule (invented)' },
  drill: false,
  late: null,
} as const;

/** Lines of exits, and every tenth entry somebody's way in or out of the room. */
function writer(name: string): () => Entry {
  let head = START;
  let count = 0;
  return () => {
    const visit = `visit-${Math.floor(count / 20)}`;
    const happened = new Date(1_764_000_000_000 + count * 1000).toISOString();
    const place = { visit, person: `p-${1000 + (Math.floor(count / 20) % 40)}`, room: 'red-1', happened };
    const [kind, body] =
      count % 20 === 0
        ? (['room.entered', { ...place, ...IN }] as const)
        : count % 20 === 10
          ? (['room.left', { ...place, exit: visit, asked: 'asked', late: null }] as const)
          : ([
              'exit.line-confirmed',
              { exit: visit, line: count % 90, step: `s${count % 90}`, means: 'pedal' },
            ] as const);
    count += 1;
    const entry = nextEntry(head, {
      unit: 'larkmoor',
      device: name,
      kind,
      version: versionOf(KINDS[kind]),
      at: happened,
      by: 'p-9x2q',
      body,
    });
    head = headOf(entry);
    return entry;
  };
}

const some = (write: () => Entry, count: number): readonly Entry[] => Array.from({ length: count }, write);

async function made(): Promise<void> {
  if (existsSync(DONE)) return;
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  const store = await openSqlite(FILE);
  const write = writer('tablet-1');
  for (let left = MILLION - 100; left > 0; left -= 5000)
    await store.append(some(write, Math.min(5000, left)));
  await show(roomView, { journal: store, snapshots: store.snapshots });
  // What came since: fewer than would leave another snapshot.
  await store.append(some(write, 100));
  await store.close();
  mkdirSync(DONE);
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return (performance.now() - from) / 1000;
}

async function room(withSnapshot: boolean): Promise<void> {
  const store = await readSqlite(FILE);
  const snapshots = withSnapshot
    ? store.snapshots
    : { ...store.snapshots, load: async () => Promise.resolve(undefined) };
  const { state, unitNumber, since } = await show(roomView, { journal: store, snapshots });
  const stays = staysOf(state);
  const inside = stays.filter(isInside);
  if (unitNumber !== MILLION || since > 0 !== withSnapshot || stays.length !== VISITS || inside.length > 1)
    throw new Error(`the room view stands at ${unitNumber}, since ${since}`);
  await store.close();
}

async function appends(batch: number, runs: number): Promise<readonly number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-journal-'));
  const store = await openSqlite(join(folder, 'journal.sqlite'));
  const write = writer('tablet-1');
  const samples: number[] = [];
  await store.append(some(write, 500));
  for (let run = 0; run < runs; run += 1) {
    const calls = batch === 1 ? 500 : 20;
    const batches = Array.from({ length: calls }, () => some(write, batch));
    const took = await seconds(async () => {
      for (const entries of batches) await store.append(entries);
    });
    samples.push((calls * batch) / took);
  }
  await store.close();
  rmSync(folder, { recursive: true });
  return samples;
}

async function verified(): Promise<void> {
  const store = await readSqlite(FILE);
  const { entries, flaws } = await audit(store, {});
  await store.close();
  if (entries !== MILLION || flaws.length > 0) throw new Error(`${entries} entries, ${flaws.length} flaws`);
}

await made();
const times = async (name: string, runs: number, work: () => Promise<void>, goal?: string): Promise<Row> => {
  const samples: number[] = [];
  for (let run = 0; run < runs; run += 1) samples.push(await seconds(work));
  return { name, samples, unit: 's', ...(goal === undefined ? {} : { goal }) };
};
report([
  await times(
    '1,000,000 entries: opened, the logbook shown from its snapshot',
    5,
    () => room(true),
    'under 2 s',
  ),
  await times('the same without a snapshot', 1, () => room(false)),
  await times('1,000,000 entries verified', 1, verified),
  { name: 'durable appends, one entry a call', samples: await appends(1, 4), unit: 'entries/s' },
  { name: 'durable appends, 100 entries a call', samples: await appends(100, 4), unit: 'entries/s' },
]);
