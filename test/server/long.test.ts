// What is long: texts without an end, answers that nobody could hold, and answers that nobody takes.
import { connect } from 'node:net';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { device, type Device } from '../journal/samples.ts';
import { ask, type Client, lead, type Running, start, tablet } from './harness.ts';

let server: Running;
let desk: Client;
let anteroom: Client;
let chain: Device;

async function begin(options?: Parameters<typeof start>[0]): Promise<void> {
  server = await start(options);
  desk = await lead(server);
  const paired = await tablet(server, desk);
  anteroom = paired.client;
  chain = device(paired.device, 'larkmoor-isolation');
}
beforeEach(() => begin());
afterEach(() => server.stop());

/** Entries as long as they may be. */
async function writeLong(count: number): Promise<readonly Entry[]> {
  const long = Array.from({ length: count }, () =>
    chain.writeAny('exit.of-later', { text: 'x'.repeat(260_000) }),
  );
  await anteroom.call('append-entries', { body: { entries: long } });
  return long;
}

test.each(['unit', 'kind'])('an entry with a %s of millions of characters is none', async (field) => {
  const entry = { ...chain.write('exit.started'), [field]: 'a-'.repeat(3_900_000) };
  expect(await anteroom.refused('append-entries', { body: { entries: [entry] } })).toMatchObject({
    code: 'malformed',
    status: 422,
    index: 0,
  });
});

test('a batch of a million fields is refused before anything is made of it', async () => {
  const fields = Array.from({ length: 500_000 }, (_, index) => [`k${index}`, 0] as const);
  const entry = chain.writeAny('exit.of-later', {});
  const many = { ...entry, body: Object.fromEntries(fields) };
  expect(await anteroom.refused('append-entries', { body: { entries: [many] } })).toMatchObject({
    code: 'too-large',
    status: 413,
  });
  // As full of commas as one entry can be.
  const full = device(entry.device, entry.unit).writeAny('exit.of-later', { text: ','.repeat(261_000) });
  await anteroom.call('append-entries', { body: { entries: [full] } });
});

test('batches of one device that hang: so many and no more, and others come through', async () => {
  const cookie = [...anteroom.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
  const hung = Array.from({ length: 4 }, () => {
    const socket = connect(server.port, '127.0.0.1').on('error', () => undefined);
    socket.write(
      `POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: 9\r\n\r\n{`,
    );
    return socket;
  });
  const send = () => anteroom.raw('append-entries', { body: { entries: [] } });
  await expect.poll(async () => (await send()).status).toBe(429);
  const { client: other } = await tablet(server, desk);
  await other.call('append-entries', { body: { entries: [] } });
  for (const one of hung) one.destroy();
  await expect.poll(async () => (await send()).status).toBe(200);
});

describe('long entries', () => {
  test('come a part at a time, and all of them once', async () => {
    const long = await writeLong(24);
    const read: unknown[] = [];
    let [from, more, turns] = [1, true, 0];
    for (; more; turns += 1) {
      const { text } = await desk.raw('read-entries', { query: { from, most: 500 } });
      expect(text.length).toBeLessThan(5_000_000);
      const page = JSON.parse(text) as { entries: { entry: Entry }[]; next: number; more: boolean };
      read.push(...page.entries.map(({ entry }) => entry));
      ({ next: from, more } = page);
    }
    expect(turns).toBe(2);
    expect(read.slice(-24)).toEqual(long);
  });

  test('that nobody takes are held for so long and no longer', async () => {
    // Only here: a busy machine is silent for so long by itself.
    await server.stop();
    await begin({ patience: { silence: 400 } });
    await writeLong(12);
    const cookie = [...desk.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
    const socket = connect(server.port, '127.0.0.1');
    socket.on('error', () => undefined).pause();
    socket.write(`GET /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: ${cookie}\r\n\r\n`.repeat(10));
    // Whoever asked went away: so it stands in the log where the server hung up.
    await expect.poll(() => server.log(), { timeout: 10_000 }).toContain('"status":499');
    socket.destroy();
    await desk.call('read-session');
  });
});

test('one address holds so many connections and no more; whoever comes after that is served when some have gone', async () => {
  const narrow = await start({ patience: { fromOne: 5 } });
  const idle = Array.from({ length: 5 }, () =>
    connect(narrow.port, '127.0.0.1').on('error', () => undefined),
  );
  await Promise.all(idle.map((one) => new Promise((resolve) => one.once('connect', resolve))));
  await expect(ask(narrow.port, { path: '/health' })).rejects.toThrow(/ECONNRESET|hang up/);
  for (const one of idle) one.destroy();
  await expect
    .poll(async () => (await ask(narrow.port, { path: '/health' }).catch(() => undefined))?.status)
    .toBe(200);
  await narrow.stop();
});
