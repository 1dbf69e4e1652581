// What the server would refuse a device for its role the device never writes: every kind by every role, asked of the server and
// of the page's journal alike. An entry that was refused would hold back everything that comes behind it.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROLES, type Role } from '../../src/api/roles.ts';
import { createBook, type ToWrite } from '../../src/app/journal/book.ts';
import { barOf, NotOfRole } from '../../src/app/journal/roleLimit.ts';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { BODIES, device as writer, KIND_NAMES, UNIT } from '../journal/samples.ts';
import { type Client, lead, type Running, start, tablet } from './harness.ts';

let server: Running;
let chief: Client;
beforeAll(async () => {
  server = await start();
  chief = await lead(server);
});
afterAll(() => server.stop());

type Kind = (typeof KIND_NAMES)[number];
const OF_ROLE = new Set(['kind-not-allowed', 'not-allowed']);

async function refusedByServer(role: Role): Promise<readonly Kind[]> {
  const { client, device } = await tablet(server, chief, role);
  const refused: Kind[] = [];
  for (const kind of KIND_NAMES) {
    // Each as the first of the chain: what is stored only makes the next one a fork, which is no matter of the role.
    const entries = [writer(device, UNIT).write(kind)];
    const { status, text } = await client.raw('append-entries', { body: { entries } });
    const code = status === 200 ? '' : (JSON.parse(text) as { problem: { code: string } }).problem.code;
    if (OF_ROLE.has(code)) refused.push(kind);
  }
  return refused;
}

async function refusedHere(role: Role | undefined): Promise<readonly Kind[]> {
  const refused: Kind[] = [];
  for (const kind of KIND_NAMES) {
    const store = memoryStore();
    const book = createBook({
      open: () => Promise.resolve(store),
      device: 'd-one',
      unit: () => UNIT,
      role: () => role,
      now: () => new Date('2026-11-25T08:00:00.000Z'),
      written: () => undefined,
    });
    const entry = { kind, body: BODIES[kind] } as ToWrite;
    const note: ToWrite = { kind: 'note.added', body: BODIES['note.added'] };
    const wrong: unknown = await book.write({ by: 'p-aaaa', entries: [note, entry] }).then(
      () => undefined,
      (error: unknown) => error,
    );
    const kept = (await store.read(1)).length;
    if (wrong instanceof NotOfRole) refused.push(kind);
    // All of them or none.
    expect(kept).toBe(wrong === undefined ? 2 : 0);
  }
  return refused;
}

describe.each(ROLES)('a device of %s', (role) => {
  test('writes no entry that the server would refuse it for its role, and every other', async () => {
    const refused = await refusedByServer(role);
    expect(refused).toEqual(KIND_NAMES.filter((kind) => barOf(role, kind) !== undefined));
    expect(refused.length).toBeGreaterThan(0);
    expect(await refusedHere(role)).toEqual(refused);
  });
});

test('a device alone, or one whose role is not known yet, is not limited', async () => {
  expect(await refusedHere(undefined)).toEqual([]);
});

test('it says whose device this is, and whose writes such an entry', () => {
  expect(barOf('observer', 'procedure.sent-for-review')).toBe(
    'This device is paired as an observer’s. A lead’s device writes versions of procedures.',
  );
  expect(barOf('occupational-health', 'product.time-recorded')).toBe(
    'This device is paired as occupational health’s. An observer’s, a lead’s or stores’ device writes times on products’ labels.',
  );
  expect(barOf('lead', 'health.sealed')).toContain('The unit’s server alone writes this.');
});
