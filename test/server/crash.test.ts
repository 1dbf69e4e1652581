// The server is killed at a random moment while tablets send batches, again and again over one folder: everything that it
// acknowledged is there, once, the chain holds, and the tablets go on where they were. bench/load.ts does it for longer.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../src/journal/adapters/sqlite.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { verdictOf } from '../journal/contract.ts';
import { type Device, device, notes } from '../journal/samples.ts';
import { type Client, client, LEAD } from './harness.ts';
import { buildProgram, type Program } from './program.ts';

const ROUNDS = 20;
const folder = mkdtempSync(join(tmpdir(), 'doffline-killed-'));
let program: Program;
beforeAll(async () => {
  program = await buildProgram();
});
afterAll(() => {
  program.remove();
  rmSync(folder, { recursive: true });
});

interface Tablet {
  readonly cookies: Map<string, string>;
  readonly chain: Device;
  /** Written on the tablet, and not acknowledged yet. */
  outbox: readonly Entry[];
  readonly acknowledged: Map<number, string>;
}

/** Sends batches until the server is gone. `heard` is called at each acknowledgement. */
async function send(port: number, tablet: Tablet, heard: () => void): Promise<void> {
  const one: Client = client(port, tablet.cookies);
  for (;;) {
    tablet.outbox = [...tablet.outbox, ...notes(1 + Math.floor(Math.random() * 9), tablet.chain)];
    try {
      const { acknowledged } = await one.call('append-entries', { body: { entries: tablet.outbox } });
      for (const { number, hash } of acknowledged) tablet.acknowledged.set(number, hash);
      tablet.outbox = [];
      heard();
    } catch (error) {
      if (/ECONNREFUSED|ECONNRESET|socket hang up|aborted|EPIPE/.test(String(error))) return;
      throw error;
    }
  }
}

async function paired(port: number, desk: Client): Promise<Tablet> {
  const cookies = new Map<string, string>();
  const { code } = await desk.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } });
  const { device: id } = await client(port, cookies).call('pair', { body: { code } });
  return { cookies, chain: device(id, 'larkmoor-isolation'), outbox: [], acknowledged: new Map() };
}

test(`${ROUNDS} kills: nothing that was acknowledged is lost, nothing is there twice`, async () => {
  const first = await program.start({ data: folder });
  const desk = client(first.port);
  await desk.call('create-unit', {
    body: { demo: false, code: first.code, id: 'larkmoor-isolation', title: 'Larkmoor (invented)', ...LEAD },
  });
  const tablets = [
    await paired(first.port, desk),
    await paired(first.port, desk),
    await paired(first.port, desk),
  ];
  let server = first;
  for (let round = 0; round < ROUNDS; round += 1) {
    const { signal } = server;
    let waits = false;
    const kill = (): void => {
      // At first once all have been heard: on a busy machine one may come too late in every later round.
      if (waits || tablets.some(({ acknowledged }) => acknowledged.size === 0)) return;
      setTimeout(() => signal('SIGKILL'), Math.random() * 60);
      waits = true;
    };
    await Promise.all(tablets.map((tablet) => send(server.port, tablet, kill)));
    await server.ended;
    if (round < ROUNDS - 1) server = await program.start({ data: folder });
  }
  const store = await openSqlite(join(folder, 'journal.sqlite'));
  expect((await verdictOf(store)).flaws).toEqual([]);
  for (const { chain, acknowledged, outbox } of tablets) {
    const id = chain.write('exit.started').device;
    const stored = (await store.rows(1, 100_000)).filter((row) => row.device === id);
    const hashes = new Map(stored.map((row) => [row.number, row.hash]));
    expect(hashes.size).toBe(stored.length);
    expect(acknowledged.size).toBeGreaterThan(0);
    for (const [number, hash] of acknowledged) expect(hashes.get(number)).toBe(hash);
    // At most what was under way is there besides.
    expect(stored.length - acknowledged.size).toBeLessThanOrEqual(outbox.length);
  }
  await store.close();
});
