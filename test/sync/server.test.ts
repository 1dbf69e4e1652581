// The same exchange with the real server: what the model promises of it is so. Two devices, messages lost and doubled.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { RouteName } from '../../src/api/access.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { accountOf, clockNotes, isOfExit } from '../../src/sync/account.ts';
import { type Answer, restored, take, type Wire, writtenBy } from '../../src/sync/exchange.ts';
import { statusOf } from '../../src/sync/status.ts';
import { nextStep } from '../../src/sync/step.ts';
import { BODIES, device as writer } from '../journal/samples.ts';
import { type Client, type Given, lead, type Running, tablet } from '../server/harness.ts';
import { badWire, type Fault } from './model.ts';
import { startUnit } from './unitServer.ts';

let folder: string;
let server: Running;
let chief: Client;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'doffline-sync-'));
  server = await startUnit(folder);
  chief = await lead(server);
});

afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** `ahead`: by so many milliseconds the device's clock is ahead. */
function wireOf(client: Client, ahead: number): Wire {
  const sentAt = (): string => new Date(Date.now() + ahead).toISOString();
  const through = async <Body>(name: RouteName, given: Given): Promise<Answer<Body>> => {
    const { status, text } = await client.raw(name, given);
    const json = JSON.parse(text) as { readonly problem: never };
    return status === 200 ? { is: 'answer', body: json as Body } : { is: 'refused', problem: json.problem };
  };
  return {
    ask: async () => through('read-device', { query: { sentAt: sentAt() } }),
    send: async (entries) => through('append-entries', { body: { entries, sentAt: sentAt() } }),
    read: async (from) => through('read-entries', { query: { from, most: 5, sentAt: sentAt() } }),
  };
}

async function sideOf(ahead = 0) {
  const joined = await tablet(server, chief);
  const { device } = await joined.client.call('read-device', {});
  const store = memoryStore();
  const line = badWire(wireOf(joined.client, ahead));
  const ends = { store, wire: line.wire, device };
  let state = await restored(ends);
  let now = 0;
  return {
    device,
    client: joined.client,
    pen: writer(device),
    store,
    state: () => state,
    reload: async (): Promise<void> => {
      state = await restored(ends);
    },
    /** Steps with these faults, then without, until nothing is to be done. */
    run: async (faults: readonly Fault[] = []): Promise<void> => {
      for (let at = 0; at < 100; at += 1) {
        now += 61_000;
        const step = nextStep(
          { ...state, more: state.more || at === 0 },
          await writtenBy(store, device),
          now,
        );
        if (step.do === 'wait') return;
        line.fault = faults[at] ?? 'none';
        state = await take(ends, state, step, { now, chance: 0.5 });
        const isSent = state.met && state.acknowledged === (await writtenBy(store, device));
        if (at >= faults.length && ((isSent && !state.more) || state.refused)) return;
      }
      throw new Error('never settled');
    },
    account: async () =>
      accountOf(
        (await store.read(1)).map(({ entry }: { readonly entry: Entry }) => entry),
        state.runs,
      ),
  };
}

test('two devices that were cut off on one exit end with one account that shows both', async () => {
  const one = await sideOf();
  const two = await sideOf(90_000);
  const lines = async (side: typeof one, count: number): Promise<void> => {
    const made = Array.from({ length: count }, (_, line) =>
      side.pen.write('exit.line-confirmed', { ...BODIES['exit.line-confirmed'], line }),
    );
    await side.store.append(made);
  };
  await one.store.append([one.pen.write('exit.started')]);
  await lines(one, 7);
  await lines(two, 6);
  await one.run(['answer', 'none', 'answer', 'twice', 'request', 'twice']);
  await two.run(['none', 'answer', 'twice', 'answer']);
  await lines(one, 3);
  await one.run(['late', 'twice']);
  await two.run();
  await one.run();
  const [first, second] = [await one.account(), await two.account()];
  expect(first).toEqual(second);
  const exit = first.filter(({ entry }) => isOfExit(entry, 'exit-1'));
  expect(exit).toHaveLength(17);
  expect(exit.every(({ at }) => at !== null)).toBe(true);
  for (const { device, pen } of [one, two])
    expect(exit.filter(({ entry }) => entry.device === device).map(({ entry }) => entry.number)).toEqual(
      Array.from({ length: pen.head().number }, (_, index) => index + 1),
    );
  // The second clock is ahead, and said to be; nothing that it wrote was changed.
  expect(clockNotes(first).get(two.device)).toMatch(/9\d seconds ahead|8\d seconds ahead/);
  expect(clockNotes(first).has(one.device)).toBe(false);
});

test('a device that was taken out is told so, and keeps what it has', async () => {
  const side = await sideOf();
  await side.run();
  await chief.call('revoke-device', {
    params: { device: side.device },
    body: { reason: 'Lost (invented).' },
  });
  await side.store.append([side.pen.write('note.added')]);
  await side.run();
  const status = statusOf(side.state(), 1);
  expect(status).toMatchObject({
    is: 'refused',
    count: 1,
    refused: { code: 'device-revoked', stops: 'all' },
  });
});

test('an entry that its role may not send stops there, and what stands before it has arrived', async () => {
  const side = await sideOf();
  await side.store.append([
    side.pen.write('note.added'),
    side.pen.write('note.added'),
    side.pen.write('departure.accepted'),
    side.pen.write('note.added'),
  ]);
  await side.run();
  expect(side.state().acknowledged).toBe(2);
  expect(statusOf(side.state(), 4)).toMatchObject({
    is: 'refused',
    count: 2,
    refused: { code: 'kind-not-allowed', todo: 'ask-lead', number: 3 },
  });
});

test('taken out and paired again under its id as a lead’s, it goes on and sends the rest', async () => {
  const side = await sideOf();
  const kinds = ['note.added', 'departure.accepted', 'exit.started'] as const;
  await side.store.append(kinds.map((kind) => side.pen.write(kind)));
  await side.run();
  expect(side.state()).toMatchObject({ acknowledged: 1, refused: { code: 'kind-not-allowed', number: 2 } });
  const { device } = side;
  await chief.call('revoke-device', { params: { device }, body: { reason: 'Another role (invented).' } });
  const offer = { label: 'Tablet in the anteroom', role: 'lead', device } as const;
  const { code } = await chief.call('offer-pairing', { body: offer });
  expect(await side.client.call('pair', { body: { code } })).toMatchObject({ device, role: 'lead' });
  await side.reload();
  await side.run();
  expect(statusOf(side.state(), 3)).toMatchObject({ is: 'sent' });
  expect(side.state().acknowledged).toBe(3);
});
