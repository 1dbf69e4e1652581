// Every route as everybody: nobody, people of each role, devices of each role, one that was taken out. The table of
// src/api/access.ts says who may; the server must do exactly that, and say it in the log.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ACCESS, type Access, mayRecord, type RouteName } from '../../src/api/access.ts';
import { ROLES, type Role } from '../../src/api/roles.ts';
import { type Route, ROUTE_NAMES, ROUTES } from '../../src/api/routes.ts';
import { KINDS } from '../../src/journal/kinds/index.ts';
import { type Client, client, lead, person, type Running, start, tablet } from './harness.ts';

let server: Running;
const people = new Map<Role, Client>();
const devices = new Map<Role, Client>();
let revoked: Client;

beforeAll(async () => {
  server = await start();
  const first = await lead(server);
  for (const role of ROLES) {
    people.set(role, await person(server, first, role));
    devices.set(role, (await tablet(server, first, role)).client);
  }
  const gone = await tablet(server, first);
  await first.call('revoke-device', { params: { device: gone.device }, body: { reason: 'Lost.' } });
  revoked = gone.client;
});
afterAll(() => server.stop());

const isClosed = (name: RouteName): boolean => !('open' in ACCESS[name]);

async function refusal(one: Client, name: RouteName): Promise<string> {
  const { code, status, request } = await one.refused(name);
  const line = server
    .log()
    .split('\n')
    .find((entry) => entry.includes(request));
  expect(line).toContain(`"code":"${code}"`);
  expect(line).toContain(`"status":${status}`);
  return `${status} ${code}`;
}

const NO = ['401 not-signed-in', '401 not-paired', '403 not-allowed', '404 not-found'];

describe.each(ROUTE_NAMES.filter(isClosed))('%s', (name) => {
  const access: Access = ACCESS[name];

  test('is refused to nobody in particular', async () => {
    const nobody = client(server.port);
    expect(await refusal(nobody, name)).toBe(
      access.people.length > 0 ? '401 not-signed-in' : '401 not-paired',
    );
    const guessed = client(server.port, new Map([['doffline-session', 'x'.repeat(43)]]));
    expect(await refusal(guessed, name)).toMatch(/^401/);
  });

  test('is refused to a device that was taken out', async () => {
    expect(await refusal(revoked, name)).toBe('401 device-revoked');
  });

  const expected = access.hidden ? '404 not-found' : '403 not-allowed';

  test.each(ROLES)('as %s, signed in', async (role) => {
    const one = people.get(role)!;
    if (!access.people.includes(role)) expect(await refusal(one, name)).toBe(expected);
    else if (name !== 'sign-out') await allowed(one, name);
  });

  test.each(ROLES)('as a device of %s', async (role) => {
    const one = devices.get(role)!;
    if (access.devices.includes(role)) await allowed(one, name);
    else expect(await refusal(one, name)).toBe(expected);
  });
});

test('a device that was taken out is told so, whoever has signed in on it', async () => {
  const both = client(server.port, new Map([...people.get('observer')!.cookies, ...revoked.cookies]));
  for (const name of ['read-device', 'append-entries'] as const)
    expect(await refusal(both, name)).toBe('401 device-revoked');
  expect(await refusal(both, 'list-accounts')).toBe('403 not-allowed');
});

/** Who may is not refused for it; without a body most routes then ask for one. */
async function allowed(one: Client, name: RouteName): Promise<void> {
  const route: Route = ROUTES[name];
  const { status, text } = await one.raw(name);
  expect(status).toBe(route.body ? 415 : 200);
  for (const no of NO) expect(text).not.toContain(`"${no.slice(4)}"`);
}

test('signing out is everybody’s who is signed in', async () => {
  for (const role of ROLES) {
    const one = client(server.port, new Map(people.get(role)!.cookies));
    await one.call('sign-out');
    expect(await one.refused('read-session')).toMatchObject({ code: 'not-signed-in' });
  }
});

test('each role has somewhere it may not go and somewhere it may', () => {
  for (const role of ROLES) {
    const may = ROUTE_NAMES.filter((name) => (ACCESS[name] as Access).people.includes(role));
    expect(may.length).toBeGreaterThan(0);
    expect(may.length).toBeLessThan(ROUTE_NAMES.filter(isClosed).length);
  }
});

test('what the server writes itself no device may record, and a reader’s nothing', () => {
  for (const kind of Object.keys(KINDS)) {
    expect(mayRecord('reader', kind, true)).toBe(false);
    const own = /^(unit|device|health)\./.test(kind);
    if (own) for (const role of ROLES) expect(mayRecord(role, kind, true)).toBe(false);
    else expect(mayRecord('lead', kind, true)).toBe(true);
  }
  expect(mayRecord('observer', 'procedure.approved', true)).toBe(false);
  // Whoever signs somebody in at night lists them.
  expect(mayRecord('observer', 'staff.listed', true)).toBe(true);
  expect(mayRecord('stores', 'staff.listed', true)).toBe(false);
  expect(mayRecord('stores', 'room.corrected', true)).toBe(false);
  expect(mayRecord('stores', 'exit.ended', true)).toBe(false);
  expect(mayRecord('observer', 'health.other', false)).toBe(false);
  expect(mayRecord('observer', 'later.kind', false)).toBe(true);
});
