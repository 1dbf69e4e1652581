// What a broken or ill-meant client may send: all of it is refused in one form, stands in the log, and nothing that was
// stored is lost or changed by it. Asked over raw sockets where a friendly client would put things right.
import { connect } from 'node:net';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { MOST_BATCH, MOST_BODY } from '../../src/api/routes.ts';
import { MOST_ENTRIES } from '../../src/api/shapes/entries.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { verdictOf } from '../journal/contract.ts';
import { device, type Device, notes } from '../journal/samples.ts';
import { ask, type Client, client, lead, type Running, start, tablet } from './harness.ts';

const UNIT = 'larkmoor-isolation';
let server: Running;
let desk: Client;
let anteroom: Client;
let id: string;
let chain: Device;

beforeAll(async () => {
  server = await start({
    patience: { requestTimeout: 400, headersTimeout: 300, connectionsCheckingInterval: 50 },
  });
  desk = await lead(server);
});
afterAll(() => server.stop());

beforeEach(async () => {
  server.calm();
  ({ client: anteroom, device: id } = await tablet(server, desk));
  chain = device(id, UNIT);
  await anteroom.call('append-entries', { body: { entries: notes(3, chain) } });
});

/** After everything: the journal is whole, and holds what was acknowledged. */
afterEach(async () => {
  expect((await verdictOf(server.context.journal)).flaws).toEqual([]);
  const own = await server.context.journal.read(1, { device: id });
  expect(own.length).toBeGreaterThanOrEqual(3);
  expect(own.map(({ entry }) => entry.number)).toEqual(own.map((_, index) => index + 1));
});

const json = { 'content-type': 'application/json' };
const cookieOf = (one: Client): string =>
  [...one.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
const logged = (code: string): void => expect(server.log()).toContain(`"code":"${code}"`);

function post(path: string, body: string | Buffer, headers: Record<string, string> = json, by = anteroom) {
  return ask(server.port, { method: 'POST', path, headers: { cookie: cookieOf(by), ...headers } }, body);
}

describe('entries', () => {
  const append = (entries: readonly unknown[]) => anteroom.refused('append-entries', { body: { entries } });

  test('of another device are refused, and nothing of their batch is stored', async () => {
    const mine = chain.write('exit.started');
    const forged = device('tablet-other', UNIT).write('exit.started');
    expect(await append([mine, forged])).toMatchObject({
      code: 'forged-device',
      status: 403,
      todo: 'keep-and-tell-lead',
      index: 1,
      device: 'tablet-other',
    });
    expect((await anteroom.call('read-device')).head.number).toBe(3);
    logged('forged-device');
  });

  test.each(['server', 'server-health'])('in the name of %s are refused', async (name) => {
    expect(await append([device(name, UNIT).write('note.added')])).toMatchObject({ code: 'forged-device' });
  });

  test.each([
    'unit.created',
    'device.paired',
    'device.revoked',
    'health.sealed',
    'procedure.approved',
  ] as const)('of kind %s are not an observer’s to record', async (kind) => {
    expect(await append([chain.write(kind)])).toMatchObject({ code: 'kind-not-allowed', index: 0 });
    logged('kind-not-allowed');
  });

  test('that are sent again are acknowledged again and stored once', async () => {
    const entries = notes(5, chain);
    const first = await anteroom.call('append-entries', { body: { entries } });
    for (let turn = 0; turn < 5; turn += 1)
      expect((await anteroom.call('append-entries', { body: { entries } })).acknowledged).toEqual(
        first.acknowledged,
      );
    expect(first.head.number).toBe(8);
  });

  test('that leave a gap: it says where to send from', async () => {
    const [, second] = notes(2, chain);
    expect(await append([second])).toMatchObject({
      code: 'gap',
      status: 409,
      todo: 'send-from-expected',
      expected: '4',
    });
  });

  test('that fork, break the chain or were altered are refused, each by its name', async () => {
    const head = chain.head();
    const [fourth] = notes(1, chain) as [Entry];
    await anteroom.call('append-entries', { body: { entries: [fourth] } });
    const fork = device(id, UNIT, head).write('exit.started');
    expect(await append([fork])).toMatchObject({ code: 'fork', todo: 'keep-and-tell-lead', status: 409 });
    const astray = device(id, UNIT, { number: 4, hash: 'f'.repeat(64) }).write('exit.started');
    expect(await append([astray])).toMatchObject({ code: 'chain-broken', expected: fourth.hash });
    const fifth = chain.write('exit.started');
    expect(await append([{ ...fifth, at: '2020-01-01T00:00:00.000Z' }])).toMatchObject({
      code: 'hash-wrong',
    });
    const elsewhere = device(id, 'elsewhere', chain.head()).write('exit.started');
    expect(await append([elsewhere])).toMatchObject({ code: 'other-unit', expected: UNIT });
    for (const code of ['fork', 'chain-broken', 'hash-wrong', 'other-unit']) logged(code);
  });

  test.each([[null], [1], ['entry'], [[]], [{}], [{ device: 7 }], [{ device: null, kind: {}, number: 'x' }]])(
    'that are none: %j',
    async (entry) => {
      expect(await append([entry])).toMatchObject({ code: 'malformed', status: 422, index: 0 });
    },
  );

  test('whose body holds a name where an id belongs: refused, and the name is repeated nowhere', async () => {
    const named = { visit: 'v', person: 'Jane Roe', room: 'red-1', happened: '2026-11-25T08:00:00.000Z' };
    const answer = await anteroom.raw('append-entries', {
      body: { entries: [chain.writeAny('room.entered', named)] },
    });
    expect(answer.status).toBe(422);
    expect(answer.text + server.log()).not.toContain('Jane');
    logged('body-wrong');
  });

  test('deeply nested', async () => {
    const deep = `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`;
    const answer = await post('/api/entries', `{"entries":[${deep}]}`);
    expect(answer).toMatchObject({ status: 422 });
    const lists = await post('/api/entries', `{"entries":${'['.repeat(200_000)}${']'.repeat(200_000)}}`);
    expect(lists).toMatchObject({ status: 422 });
    logged('malformed');
  });

  test('with a prototype in them', async () => {
    const answer = await post('/api/entries', '{"entries":[{"__proto__":{"device":"x"},"constructor":1}]}');
    expect(answer.status).toBe(422);
    expect(({} as { device?: string }).device).toBeUndefined();
  });

  test('too many at once', async () => {
    const entries = notes(MOST_ENTRIES + 1, chain);
    expect(await append(entries)).toMatchObject({ code: 'wrong-shape', where: ['entries'] });
  });
});

describe('bodies', () => {
  test('longer than is taken: refused when the length is said, and when it is not', async () => {
    const long = Buffer.alloc(MOST_BATCH + 1, ' ');
    expect(await post('/api/entries', long)).toMatchObject({ status: 413 });
    const chunked = await post('/api/session', Buffer.alloc(MOST_BODY + 1, ' '), {
      ...json,
      'transfer-encoding': 'chunked',
    });
    expect(chunked).toMatchObject({ status: 413 });
    logged('too-large');
  });

  test('sent in pieces of unsaid length are read like others', async () => {
    const body = JSON.stringify({ entries: notes(2, chain) });
    const answer = await post('/api/entries', body, { ...json, 'transfer-encoding': 'chunked' });
    expect(answer.status).toBe(200);
  });

  test.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/json; charset=utf-16',
    'application/jsonp',
    '',
  ])('of type %j', async (type) => {
    const answer = await post('/api/entries', '{"entries":[]}', { 'content-type': type });
    expect(answer.status).toBe(415);
    logged('wrong-type');
  });

  test.each(['', '{', '[1,', '{"entries":[]}}', 'undefined', "{'entries':[]}", '\u0000'])(
    'that are no JSON: %j',
    async (text) => expect(await post('/api/entries', text)).toMatchObject({ status: 400 }),
  );

  test('that are no UTF-8', async () => {
    const answer = await post('/api/entries', Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x3a, 0x31, 0x7d]));
    expect(answer.status).toBe(400);
    logged('not-json');
  });

  test('with fields that are not asked for', async () => {
    const body = { name: 'x', role: 'reader', disabled: false, id: 'mine' };
    expect(await desk.refused('create-account', { body })).toMatchObject({ code: 'wrong-shape' });
  });

  test('that come too slowly: the connection ends, and others are served meanwhile', async () => {
    const slow = connect(server.port, '127.0.0.1');
    const ended = new Promise<string>((resolve) => {
      let text = '';
      slow.on('data', (part: Buffer) => {
        text += part.toString();
      });
      slow.on('close', () => resolve(text));
      slow.on('error', () => resolve(text));
    });
    slow.write(
      `POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: ${cookieOf(anteroom)}\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{`,
    );
    await desk.call('read-session');
    expect(await ended).toMatch(/^HTTP\/1\.1 408/);
    logged('unreadable');
  });

  test('heads that come too slowly or are too large', async () => {
    const slow = connect(server.port, '127.0.0.1');
    const ended = new Promise<void>((resolve) => slow.on('close', () => resolve()));
    slow.on('error', () => undefined).resume();
    slow.write('GET /api/unit HTTP/1.1\r\nHost: 127.0');
    await ended;
    const large = await ask(server.port, { path: '/api/unit', headers: { 'x-large': 'x'.repeat(20_000) } });
    expect(large.status).toBe(431);
    const socket = connect(server.port, '127.0.0.1');
    socket.write(
      'GET /api/unit HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Injected: a\rb\r\nContent-Length: x\r\n\r\n',
    );
    let text = '';
    for await (const part of socket as AsyncIterable<Buffer>) text += part.toString();
    expect(text).toMatch(/^HTTP\/1\.1 400/);
    expect(server.log()).toContain('"why":"HPE_');
  });
});

describe('text', () => {
  const SCRIPT = '<script>alert(1)</script><img src=x onerror=alert(1)>"\'&';

  test('with script in every field comes back as the text that it is, and never as a page', async () => {
    const { account } = await desk.call('create-account', { body: { name: SCRIPT, role: 'reader' } });
    expect(account.name).toBe(SCRIPT);
    await desk.call('offer-pairing', { body: { label: SCRIPT, role: 'observer' } });
    const { code } = await desk.call('offer-pairing', { body: { label: SCRIPT, role: 'observer' } });
    await client(server.port).call('pair', { body: { code } });
    const slip = { exit: 'exit-1', line: 1, step: 's1', slip: 'brush', surfaces: [], text: SCRIPT };
    await anteroom.call('append-entries', { body: { entries: [chain.write('exit.slip-recorded', slip)] } });
    for (const name of ['list-accounts', 'list-devices', 'read-entries'] as const) {
      const { headers, text } = await desk.raw(name);
      expect(headers['content-type']).toMatch(/^application\/json/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(String(headers['content-security-policy'])).toContain("default-src 'none'");
      expect(text).toContain(JSON.stringify(SCRIPT).slice(1, -1));
    }
    expect(server.log()).not.toContain('alert(1)');
  });

  test.each([
    'line\nbreak',
    'tab\there',
    '\u001b[31mred',
    '\u202Ereversed',
    '\u0000',
    '\ud800',
    '   ',
    'line\u2028break',
    'le\u200bad',
    'le\u00adad',
    '\u3164',
    '\u200d',
    'tag\u{e0041}',
  ])('that steers a terminal, turns text around or is not seen is no name: %j', async (text) => {
    for (const [name, body] of [
      ['create-account', { name: text, role: 'reader' }],
      ['offer-pairing', { label: text, role: 'observer' }],
    ] as const)
      expect(await desk.refused(name, { body })).toMatchObject({ code: 'wrong-shape' });
  });

  test.each(["' or 1=1 --", "'; drop table account; --", '@account', '?', '$1'])(
    'that would be SQL elsewhere: %j',
    async (text) => {
      expect(await desk.refused('sign-in', { body: { name: text, password: text } })).toMatchObject({
        code: 'wrong-password',
      });
      await desk.call('create-account', { body: { name: text, role: 'reader' } });
      const { accounts } = await desk.call('list-accounts');
      expect(accounts.map(({ name }) => name)).toContain(text);
    },
  );
});

describe('addresses', () => {
  test.each([
    '/api',
    '/api/',
    '/api/nothing',
    '/api/../api/session',
    '/api//session',
    '/api/session/',
    '/api/%73ession%2f..',
    '/api/accounts/..%2f..%2fetc%2fpasswd',
    '/api/devices/%00/revocation',
    '/api/entries%0d%0aX-Injected:1',
    encodeURI('/api/ＳＥＳＳＩＯＮ'),
    '/API/session',
    '//api/session',
    '/journal.sqlite',
    '/..%2funit.sqlite',
  ])('%s leads nowhere', async (path) => {
    const { status, headers, text } = await ask(server.port, { path, headers: { cookie: cookieOf(desk) } });
    expect(status).toBe(404);
    expect(headers['x-injected']).toBeUndefined();
    expect(text).not.toMatch(/SQLite|root:/);
  });

  test.each(['PUT', 'PATCH', 'OPTIONS', 'DELETE', 'TRACE', 'PROPFIND'])(
    '%s is no method here',
    async (method) => {
      const answer = await ask(server.port, {
        method,
        path: '/api/entries',
        headers: { cookie: cookieOf(desk) },
      });
      expect(answer.status).toBe(404);
      expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  test.each([
    'evil.example',
    'evil.example:80',
    '127.0.0.1.evil.example',
    'localhost@evil.example',
    '127.0.0.1:80:80',
  ])('another’s name is refused: %j', async (host) => {
    const { status } = await ask(server.port, { path: '/api/unit', headers: { host } });
    expect(status).toBe(421);
    logged('wrong-host');
  });

  test('no name is refused', async () => {
    const socket = connect(server.port, '127.0.0.1');
    socket.write('GET /api/unit HTTP/1.1\r\nHost: \r\nConnection: close\r\n\r\n');
    let text = '';
    for await (const part of socket as AsyncIterable<Buffer>) text += part.toString();
    expect(text).toMatch(/^HTTP\/1\.1 421 /);
  });

  test('a forwarded name or address is not believed without a proxy', async () => {
    const headers = {
      'x-forwarded-host': 'evil.example',
      'x-forwarded-for': '10.9.9.9',
      forwarded: 'for=10.9.9.9',
    };
    expect(await ask(server.port, { path: '/api/unit', headers })).toMatchObject({ status: 200 });
    expect(
      await ask(server.port, { path: '/api/unit', headers: { ...headers, host: 'evil.example' } }),
    ).toMatchObject({ status: 421 });
    expect(server.log()).not.toContain('10.9.9.9');
  });

  test('what is not in the query’s form', async () => {
    for (const query of [
      'from=0',
      'from=-1',
      'from=1e3',
      'from=x',
      'most=501',
      'from=1&extra=1',
      `from=${'9'.repeat(16)}`,
    ])
      expect(
        await ask(server.port, { path: `/api/entries?${query}`, headers: { cookie: cookieOf(desk) } }),
      ).toMatchObject({ status: 400 });
  });
});
