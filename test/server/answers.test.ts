// What a wearer answered at the end of an exit: told to who runs exits, judges them or follows people; withheld from everybody
// else, whose devices read on all the same.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { mayReadAnswers } from '../../src/api/access.ts';
import { ROLES } from '../../src/api/roles.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { audit } from '../../src/journal/audit.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { START_STATE, type SyncState } from '../../src/sync/state.ts';
import { take, type Wire } from '../../src/sync/exchange.ts';
import { verdictOf } from '../journal/contract.ts';
import { BODIES, device, notes } from '../journal/samples.ts';
import { type Client, client, lead, person, type Running, start, tablet } from './harness.ts';

const KIND = 'exit.question-answered';
const UNIT = 'larkmoor-isolation';

let server: Running;
let desk: Client;
let written: readonly Entry[];
let anteroom: Awaited<ReturnType<typeof tablet>>;

beforeAll(async () => {
  server = await start();
  desk = await lead(server);
  anteroom = await tablet(server, desk);
  const pen = device(anteroom.device, UNIT);
  written = [
    pen.write('exit.started'),
    pen.write(KIND, { ...BODIES[KIND], answer: 'yes' }),
    ...notes(1, pen),
  ];
  await anteroom.client.call('append-entries', { body: { entries: written } });
});
afterAll(() => server.stop());

async function answerFor(one: Client): Promise<Entry> {
  const { entries } = await one.call('read-entries');
  return entries.map(({ entry }) => entry as Entry).find(({ kind }) => kind === KIND)!;
}

test('who needs it: observers, the lead, occupational health', () => {
  expect(ROLES.filter(mayReadAnswers)).toEqual(['observer', 'lead', 'occupational-health']);
});

test.each(ROLES)('as %s, signed in and as a device', async (role) => {
  const clients = [await person(server, desk, role), (await tablet(server, desk, role)).client];
  for (const one of clients) {
    const found = await answerFor(one);
    if (mayReadAnswers(role)) expect(found).toEqual(written[1]);
    else {
      expect(found).toMatchObject({ hash: written[1]!.hash, body: { answer: 'withheld', salt: null } });
      expect((await one.raw('read-entries')).text).not.toMatch(/"yes"|5a5a/);
    }
  }
});

test('a device reads as what it is, whoever is signed in on it: what it reads stays there', async () => {
  const both = (one: Client, other: Client): Client =>
    client(server.port, new Map([...one.cookies, ...other.cookies]));
  const stores = (await tablet(server, desk, 'stores')).client;
  expect((await answerFor(both(stores, desk))).body.answer).toBe('withheld');
  const keeper = await person(server, desk, 'stores');
  expect((await answerFor(both(anteroom.client, keeper))).body.answer).toBe('yes');
});

test('a tablet of stores reads all of it, and its chains hold', async () => {
  const { client: stores, device: id } = await tablet(server, desk, 'stores');
  const store = memoryStore();
  const wire: Wire = {
    ask: async () => ({ is: 'answer', body: await stores.call('read-device') }),
    send: async (entries) => ({
      is: 'answer',
      body: await stores.call('append-entries', { body: { entries } }),
    }),
    read: async (from) => ({ is: 'answer', body: await stores.call('read-entries', { query: { from } }) }),
  };
  const ends = { store, wire, device: id };
  let state: SyncState = { ...START_STATE, met: true };
  while (state.more && !state.refused)
    state = await take(ends, state, { do: 'read', from: Math.max(1, state.next - 1) }, { now: 0, chance: 0 });
  expect(state.refused).toBeUndefined();
  const kept = (await store.read(1, { device: anteroom.device })).map(({ entry }) => entry);
  expect(kept.map(({ hash }) => hash)).toEqual(written.map(({ hash }) => hash));
  expect((await audit(store, { received: true })).flaws).toEqual([]);
});

test('a device that is paired again as another role gets its own back whole', async () => {
  const { client: first, device: id } = await tablet(server, desk);
  const own = device(id, UNIT).write(KIND, { ...BODIES[KIND], answer: 'not-sure' });
  await first.call('append-entries', { body: { entries: [own] } });
  const { code } = await desk.call('offer-pairing', {
    body: { label: 'Now read', role: 'reader', device: id },
  });
  await first.call('pair', { body: { code } });
  const { entries } = await first.call('read-entries');
  const answers = entries.map(({ entry }) => entry as Entry).filter(({ kind }) => kind === KIND);
  expect(answers.map(({ body }) => body.answer)).toEqual(['withheld', 'not-sure']);
});

test('the journal itself keeps it, and takes no entry with the mark for one', async () => {
  const { client: other, device: id } = await tablet(server, desk);
  const whole = device(id, UNIT).write(KIND);
  const marked = { ...whole, body: { ...whole.body, answer: 'withheld' } };
  expect(await other.refused('append-entries', { body: { entries: [marked] } })).toMatchObject({
    code: 'hash-wrong',
  });
  const hidden = device(id, UNIT).write(KIND, { ...BODIES[KIND], answer: 'withheld' });
  const told = device(id, UNIT).write('exit.started');
  expect(await other.refused('append-entries', { body: { entries: [hidden] } })).toMatchObject({
    code: 'body-wrong',
    todo: 'keep-and-tell-lead',
    index: 0,
    number: 1,
  });
  await other.call('append-entries', { body: { entries: [told] } });
  expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
});
