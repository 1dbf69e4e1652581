// Sessions, other people's pages and guessing: what a thief of tokens or codes may try. A clock that can be turned shows the
// ends of sessions and codes.
import { connect } from 'node:net';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { device, type Device, notes } from '../journal/samples.ts';
import { type Client, client, LEAD, lead, person, type Running, start, tablet } from './harness.ts';

let server: Running;
let desk: Client;

beforeEach(async () => {
  server = await start();
  desk = await lead(server);
});
afterEach(() => server.stop());

const logged = (code: string): void => expect(server.log()).toContain(`"code":"${code}"`);

describe('sessions', () => {
  const signIn = (one: Client) => one.call('sign-in', { body: { ...LEAD } });

  test('a token that was put into the browser is worth nothing after signing in', async () => {
    const planted = 'planted-by-somebody-else-0000000000000000000';
    const victim = client(server.port, new Map([['doffline-session', planted]]));
    await signIn(victim);
    expect(victim.cookies.get('doffline-session')).not.toBe(planted);
    const thief = client(server.port, new Map([['doffline-session', planted]]));
    expect(await thief.refused('read-session')).toMatchObject({ code: 'not-signed-in' });
  });

  test('signing in again begins another session and ends the one before', async () => {
    const one = client(server.port);
    await signIn(one);
    const before = new Map(one.cookies);
    await signIn(one);
    expect(one.cookies.get('doffline-session')).not.toBe(before.get('doffline-session'));
    expect(await client(server.port, before).refused('read-session')).toMatchObject({ status: 401 });
  });

  test('the cookie is out of reach for scripts and other sites', async () => {
    const { headers } = await client(server.port).raw('sign-in', { body: { ...LEAD } });
    const [cookie] = headers['set-cookie'] ?? [];
    expect(cookie).toMatch(/^doffline-session=[\w-]{43}; /);
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(part);
    expect(cookie).not.toMatch(/Domain|Max-Age|Expires/);
  });

  test('end when idle, end with age, and end when signed out', async () => {
    const one = client(server.port);
    await signIn(one);
    server.wait(29 * 60_000);
    await one.call('read-session');
    server.wait(29 * 60_000);
    await one.call('read-session');
    server.wait(31 * 60_000);
    expect(await one.refused('read-session')).toMatchObject({ code: 'not-signed-in' });
    await signIn(one);
    for (let half = 0; half < 24; half += 1) {
      await one.call('read-session');
      server.wait(29.9 * 60_000);
    }
    server.wait(5 * 60_000);
    expect(await one.refused('read-session')).toMatchObject({ code: 'not-signed-in' });
    await signIn(one);
    const kept = new Map(one.cookies);
    await one.call('sign-out');
    expect(await client(server.port, kept).refused('read-session')).toMatchObject({ status: 401 });
    await signIn(desk);
  });

  test('a disabled account’s sessions end at once, and its password no longer works', async () => {
    const reader = await person(server, desk, 'reader');
    const { account } = await reader.call('read-session');
    await desk.call('change-account', { params: { account: account.id }, body: { disabled: true } });
    expect(await reader.refused('read-session')).toMatchObject({ status: 401 });
    expect(
      await reader.refused('sign-in', { body: { name: account.name, password: 'violet kettle seventeen' } }),
    ).toMatchObject({ code: 'wrong-password' });
  });

  test.each([
    { origin: 'https://evil.example' },
    { origin: 'null' },
    { origin: 'http://127.0.0.1' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('another page may not act for who is signed in: %j', async (headers) => {
    const refused = await desk.refused('create-account', { body: { name: 'x', role: 'lead' }, headers });
    expect(refused).toMatchObject({ code: 'foreign-page', status: 403 });
    logged('foreign-page');
  });

  test('its own page may', async () => {
    const headers = { origin: `http://127.0.0.1:${server.port}`, 'sec-fetch-site': 'same-origin' };
    await desk.call('create-account', {
      body: { name: 'x', role: 'reader' },
      headers: { ...headers, host: `127.0.0.1:${server.port}` },
    });
  });
});

describe('guessing', () => {
  test('passwords of one name: after ten from one address it says how long to wait', async () => {
    const one = client(server.port);
    for (let turn = 0; turn < 10; turn += 1)
      expect(
        await one.refused('sign-in', { body: { name: LEAD.name, password: `guess ${turn}` } }),
      ).toMatchObject({
        code: 'wrong-password',
      });
    const refused = await one.refused('sign-in', { body: { ...LEAD } });
    expect(refused).toMatchObject({ code: 'too-many', status: 429, todo: 'retry-later' });
    expect(refused.after).toBeGreaterThan(0);
    await desk.call('read-session');
    logged('too-many');
  });

  test('codes: a pairing code works once, for minutes, and few wrong ones may be tried', async () => {
    const { code } = await desk.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } });
    const one = client(server.port);
    await one.call('pair', { body: { code: ` ${code.toLowerCase().replace('-', ' ')} ` } });
    expect(await one.refused('pair', { body: { code } })).toMatchObject({ code: 'code-wrong' });
    const late = await desk.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } });
    server.wait(11 * 60_000);
    expect(await one.refused('pair', { body: { code: late.code } })).toMatchObject({ code: 'code-wrong' });
    let last = '';
    for (let turn = 0; turn < 40 && last !== 'too-many'; turn += 1)
      last = (await one.refused('pair', { body: { code: `WRNG-${1000 + turn}` } })).code;
    expect(last).toBe('too-many');
  });

  test('a code to pair a device again is void once the device is taken out', async () => {
    const { device: id } = await tablet(server, desk);
    const { code } = await desk.call('offer-pairing', {
      body: { label: 'Again', role: 'observer', device: id },
    });
    await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Stolen.' } });
    expect(await client(server.port).refused('pair', { body: { code } })).toMatchObject({
      code: 'code-wrong',
    });
  });

  test('codes of somebody whose account was closed are void, others are not', async () => {
    const other = await person(server, desk, 'lead');
    const offer = { body: { label: 'Tablet', role: 'lead' } } as const;
    const theirs = await other.call('offer-pairing', offer);
    const mine = await desk.call('offer-pairing', offer);
    const { account } = await other.call('read-session');
    await desk.call('change-account', { params: { account: account.id }, body: { disabled: true } });
    const one = client(server.port);
    expect(await one.refused('pair', { body: { code: theirs.code } })).toMatchObject({ code: 'code-wrong' });
    await one.call('pair', { body: { code: mine.code } });
  });

  test('two tablets with one code: one is paired', async () => {
    const { code } = await desk.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } });
    const answers = await Promise.all(
      [1, 2, 3, 4].map(() => client(server.port).raw('pair', { body: { code } })),
    );
    expect(answers.map(({ status }) => status).sort((a, b) => a - b)).toEqual([200, 403, 403, 403]);
  });

  test('a device that was taken out sends nothing more, and may come back where it was', async () => {
    const { client: anteroom, device: id } = await tablet(server, desk);
    const chain: Device = device(id, 'larkmoor-isolation');
    await anteroom.call('append-entries', { body: { entries: notes(3, chain) } });
    await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Left in the red room.' } });
    const [next] = notes(1, chain);
    expect(await anteroom.refused('append-entries', { body: { entries: [next] } })).toMatchObject({
      code: 'device-revoked',
      todo: 'ask-lead',
    });
    const { code } = await desk.call('offer-pairing', {
      body: { label: 'Again', role: 'observer', device: id },
    });
    const again = client(server.port);
    expect(await again.call('pair', { body: { code } })).toMatchObject({ device: id, head: { number: 3 } });
    await again.call('append-entries', { body: { entries: [next] } });
    expect(await anteroom.refused('read-device')).toMatchObject({ code: 'not-paired' });
  });
  test('what a device was still sending when it was taken out is not stored', async () => {
    const { client: anteroom, device: id } = await tablet(server, desk);
    const body = JSON.stringify({ entries: notes(1, device(id, 'larkmoor-isolation')) });
    const cookie = [...anteroom.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
    const socket = connect(server.port, '127.0.0.1');
    const answered = new Promise<string>((resolve) => socket.once('data', (part) => resolve(String(part))));
    socket.write(
      `POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body.slice(0, 20)}`,
    );
    await new Promise((resolve) => setTimeout(resolve, 200));
    await desk.call('revoke-device', { params: { device: id }, body: { reason: 'Stolen.' } });
    socket.write(body.slice(20));
    expect(await answered).toMatch(/^HTTP\/1\.1 401 [\s\S]*device-revoked/);
    socket.destroy();
    expect(await server.context.journal.read(1, { device: id })).toEqual([]);
  });
});
