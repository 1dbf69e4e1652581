// The server is killed (SIGKILL) again and again while tablets send batches, until 1,000 batches were acknowledged
// (KILLS_BATCHES changes that). Then the journal is read by itself: nothing acknowledged may be missing, nothing there
// twice, the chain whole. test/server/crash.test.ts does the same for 20 rounds.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readJournal } from '../src/journal/adapters/open.ts';
import { audit } from '../src/journal/audit.ts';
import type { Entry } from '../src/journal/entry.ts';
import { report } from './harness.ts';
import { post, type Served, start, type Tablet, tablets } from './served.ts';

const BATCHES = Number(process.env.KILLS_BATCHES ?? 1000);
const TABLETS = 8;
const PER_ROUND = 25;

interface Sending {
  readonly tablet: Tablet;
  /** Written, and not acknowledged yet. */
  outbox: Entry[];
}

const acknowledged = new Map<string, string>();
const count = { batches: 0 };

/** Sends until the server is gone. */
async function send({ port }: Served, sending: Sending, note: () => void): Promise<void> {
  const { tablet } = sending;
  for (;;) {
    const length = 1 + Math.floor(Math.random() * 9);
    sending.outbox.push(...Array.from({ length }, () => tablet.write()));
    const body = { entries: sending.outbox };
    const answer = await post(port, '/api/entries', body, tablet.cookie).catch(() => undefined);
    if (!answer) return;
    if (answer.status !== 200) throw new Error(answer.text);
    const told = JSON.parse(answer.text) as { acknowledged: { number: number; hash: string }[] };
    for (const { number, hash } of told.acknowledged) acknowledged.set(`${tablet.id} ${number}`, hash);
    sending.outbox = [];
    count.batches += 1;
    note();
  }
}

async function round(server: Served, all: readonly Sending[]): Promise<void> {
  const enough = count.batches + PER_ROUND;
  let isDoomed = false;
  const note = (): void => {
    if (count.batches < enough || isDoomed) return;
    isDoomed = true;
    setTimeout(() => server.signal('SIGKILL'), Math.random() * 20);
  };
  await Promise.all(all.map((one) => send(server, one, note)));
  await server.ended;
}

const folder = mkdtempSync(join(tmpdir(), 'doffline-kills-'));
let server = await start(folder);
const all = (await tablets(server, TABLETS)).map((tablet): Sending => ({ tablet, outbox: [] }));
let kills = 0;
const again: number[] = [];
while (count.batches < BATCHES) {
  await round(server, all);
  kills += 1;
  const from = performance.now();
  server = await start(folder);
  again.push(performance.now() - from);
}
server.signal('SIGTERM');
await server.ended;
const store = (await readJournal({ in: 'folder', file: join(folder, 'journal.sqlite') }))!;
const { flaws, damage } = await audit(store, {});
const rows = await store.rows(1, 1_000_000);
await store.close();
rmSync(folder, { recursive: true, force: true });
const stored = new Map(rows.map(({ device, number, hash }) => [`${device} ${number}`, hash]));
const lost = [...acknowledged].filter(([key, hash]) => stored.get(key) !== hash);
const told = `${count.batches} batches (${acknowledged.size} entries) acknowledged over ${kills} kills: ${lost.length} lost, ${rows.length - stored.size} twice, ${flaws.length + damage.length} flaws`;
if (lost.length > 0 || rows.length > stored.size || flaws.length + damage.length > 0) throw new Error(told);
report([{ name: 'from the start to listening, after a kill', samples: again, unit: 'ms', note: told }]);
