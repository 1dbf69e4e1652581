// A ward at its busiest and far beyond: 200 tablets, each sending an entry every 2 seconds, over SQLite and over PostgreSQL.
// Times run from the moment an entry should have been sent to its acknowledgement, so that a server which stalls is not
// spared. At the end the journal is read by itself: every acknowledged entry must be there, once, in a whole chain.
// LOAD_TABLETS, LOAD_SECONDS and LOAD_EVERY (seconds) change the load; LOAD_SECONDS=300 is the full one.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startPostgres, whyNoPostgres } from '../scripts/postgres.mjs';
import { readJournal } from '../src/journal/adapters/open.ts';
import { audit } from '../src/journal/audit.ts';
import { type Row, report } from './harness.ts';
import { post, start, type Tablet, tablets } from './served.ts';

const setting = (name: string, usual: number): number => Number(process.env[name] ?? usual);
const TABLETS = setting('LOAD_TABLETS', 200);
const SECONDS = setting('LOAD_SECONDS', 20);
const EVERY = setting('LOAD_EVERY', 2) * 1000;

interface Sent {
  readonly times: number[];
  /** Hashes of acknowledged entries, by device and number. */
  readonly acknowledged: Map<string, string>;
  readonly refused: string[];
}

const until = (at: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, Math.max(0, at - performance.now())));

/** One tablet from its own moment on, until the end. */
async function work(port: number, tablet: Tablet, from: number, end: number, sent: Sent): Promise<void> {
  for (let due = from; due < end; due += EVERY) {
    await until(due);
    const entry = tablet.write();
    const body = { entries: [entry], sentAt: new Date().toISOString() };
    const { status, text } = await post(port, '/api/entries', body, tablet.cookie, tablet.agent);
    sent.times.push(performance.now() - due);
    if (status === 200) sent.acknowledged.set(`${entry.device} ${entry.number}`, entry.hash);
    else sent.refused.push(text);
  }
}

/** How many acknowledged entries are not in the journal, and what is wrong with it. */
async function missing(folder: string, address: string | undefined, { acknowledged }: Sent) {
  const place =
    address === undefined
      ? ({ in: 'folder', file: join(folder, 'journal.sqlite') } as const)
      : ({ in: 'database', address } as const);
  const store = (await readJournal(place))!;
  const left = new Map(acknowledged);
  let twice = 0;
  const seen = new Set<string>();
  for (let from = 1; ; ) {
    const rows = await store.rows(from, 5000);
    for (const { device, number, hash } of rows) {
      const key = `${device} ${number}`;
      if (seen.has(key)) twice += 1;
      seen.add(key);
      if (left.get(key) === hash) left.delete(key);
    }
    if (rows.length < 5000) break;
    from = rows.at(-1)!.unitNumber + 1;
  }
  const { flaws } = await audit(store, {});
  await store.close();
  return { lost: left.size, twice, flaws: flaws.length };
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? 0;

/** Evenly chosen from the sorted ones: the report is one line, and must not be megabytes long. */
function thinned(values: readonly number[], most = 2000): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length <= most) return sorted;
  return Array.from(
    { length: most },
    (_, index) => sorted[Math.floor(((index + 0.5) / most) * sorted.length)]!,
  );
}

async function load(name: string, address?: string): Promise<Row> {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-load-'));
  const server = await start(folder, address);
  const sent: Sent = { times: [], acknowledged: new Map(), refused: [] };
  try {
    const all = await tablets(server, TABLETS);
    const begin = performance.now() + 500;
    const end = begin + SECONDS * 1000;
    const starts = all.map((_, index) => begin + (index / all.length) * EVERY);
    await Promise.all(all.map((tablet, index) => work(server.port, tablet, starts[index]!, end, sent)));
    for (const { agent } of all) agent.destroy();
    server.signal('SIGTERM');
    await server.ended;
    const found = await missing(folder, address, sent);
    const [p50, p99] = [quantile(sent.times, 0.5), quantile(sent.times, 0.99)].map((ms) => ms.toFixed(1));
    const told = `${sent.acknowledged.size} acknowledged in ${SECONDS} s, ${sent.refused.length} refused, ${found.lost} lost, ${found.twice} twice, ${found.flaws} flaws; p50 ${p50} ms, p99 ${p99} ms`;
    console.error(`${name}: ${told}`);
    if (found.lost + found.twice + found.flaws > 0) throw new Error(`${name}: ${told}`);
    return {
      name: `acknowledgement, ${TABLETS} tablets, ${name}`,
      samples: thinned(sent.times),
      unit: 'ms',
      note: told,
    };
  } finally {
    server.signal('SIGKILL');
    await server.ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

const rows = [await load('SQLite')];
const notes: string[] = [];
const why = whyNoPostgres();
if (why === undefined) {
  const database = await startPostgres();
  try {
    rows.push(await load('PostgreSQL', database.url));
  } finally {
    database.stop();
  }
} else notes.push(`PostgreSQL was not measured: ${why}`);
report(rows, notes);
