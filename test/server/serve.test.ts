// `doffline serve` as a program: what it shows, how it is reached over https and behind files of others, how it stops, and
// what it says when it cannot start.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request as secureRequest } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { serve } from '../../src/server/serve.ts';
import { newAuthority, newCertificate } from '../../src/server/tls/certificates.ts';
import { device, notes } from '../journal/samples.ts';
import { ask, client, LEAD } from './harness.ts';
import { buildProgram, type Program, type Served } from './program.ts';

let program: Program;
let folder: string;
let running: Served | undefined;
beforeAll(async () => {
  program = await buildProgram();
});
afterAll(() => program.remove());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'doffline-serve-'));
});
afterEach(async () => {
  running?.signal('SIGKILL');
  await running?.ended;
  running = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const start = async (asked: object, env?: Readonly<Record<string, string>>): Promise<Served> => {
  running = await program.start({ data: folder, ...asked }, env);
  return running;
};

/** In this process: it does not come to serving. */
async function failing(asked: object, env: Readonly<Record<string, string>> = {}) {
  let err = '';
  const status = await serve(
    { port: 0, ...asked },
    {
      env,
      page: program.page,
      typeset: '',
      out: () => undefined,
      err: (text) => {
        err += text;
      },
    },
  );
  return { status, err };
}

const create = (code: string) => ({
  body: { demo: false, code, id: 'larkmoor-isolation', title: 'Larkmoor (invented)', ...LEAD },
});

interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly text: string;
}

function securely(port: number, path: string, ca: Buffer | string, body?: object): Promise<Got> {
  return new Promise((resolve, reject) => {
    const headers = body ? { 'content-type': 'application/json' } : {};
    const method = body ? 'POST' : 'GET';
    const call = secureRequest(
      { host: '127.0.0.1', port, path, ca, headers, method, agent: false },
      (response) => {
        let text = '';
        response.on('data', (part: Buffer) => {
          text += part.toString();
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
        );
      },
    );
    call.on('error', reject);
    call.end(body && JSON.stringify(body));
  });
}

describe('starting and stopping', () => {
  test('shows where it is and the code for the lead, stops at SIGTERM, and begins where it was', async () => {
    const first = await start({});
    expect(first.out()).toContain('(this machine only');
    expect(first.out()).toContain(`/unit#setup=${first.code}`);
    const desk = client(first.port);
    await desk.call('create-unit', create(first.code));
    first.signal('SIGTERM');
    expect((await first.ended).status).toBe(0);
    const again = await start({});
    expect(again.code).toBe('');
    await client(again.port, desk.cookies).call('read-session');
    again.signal('SIGINT');
    expect((await again.ended).status).toBe(0);
  });

  test('a request under way when the signal comes is answered, and what it sent is kept', async () => {
    const { port, code, signal, ended } = await start({});
    const desk = client(port);
    await desk.call('create-unit', create(code));
    const offer = await desk.call('offer-pairing', { body: { label: 'Tablet', role: 'observer' } });
    // The page with the field for it, which fills it in.
    expect(offer.address).toMatch(new RegExp(`/device#pair=${offer.code}$`));
    const anteroom = client(port);
    const { device: id } = await anteroom.call('pair', { body: { code: offer.code } });
    const body = JSON.stringify({ entries: notes(3, device(id, 'larkmoor-isolation')) });
    const cookie = [...anteroom.cookies].map(([key, value]) => `${key}=${value}`).join('; ');
    const socket = connect(port, '127.0.0.1');
    const answered = new Promise<string>((resolve) => {
      let text = '';
      socket.on('data', (part: Buffer) => {
        text += part.toString();
      });
      socket.on('close', () => resolve(text));
    });
    socket.write(
      `POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body.slice(0, 20)}`,
    );
    await new Promise((resolve) => setTimeout(resolve, 100));
    signal('SIGTERM');
    await new Promise((resolve) => setTimeout(resolve, 100));
    await expect(ask(port, { path: '/health' })).rejects.toThrow(/ECONNREFUSED|ECONNRESET/);
    socket.write(body.slice(20));
    expect(await answered).toMatch(/^HTTP\/1\.1 200 [\s\S]*"number":3/);
    expect((await ended).status).toBe(0);
    const again = await start({});
    expect((await client(again.port, anteroom.cookies).call('read-device')).head.number).toBe(3);
    // The log was brought into the file when it stopped; nothing is left beside it but what was opened anew.
    expect(statSync(join(folder, 'journal.sqlite')).size).toBeGreaterThan(4096);
  });

  test('the records without their journal: it says so, and begins none anew', async () => {
    const first = await start({ demo: true });
    first.signal('SIGTERM');
    await first.ended;
    for (const end of ['', '-wal', '-shm']) rmSync(join(folder, `journal.sqlite${end}`), { force: true });
    const { status, err } = await failing({ data: folder });
    expect(status).toBe(2);
    expect(err).toMatch(/records are of unit larkmoor-isolation, but the journal is empty/);
  });

  test('records that are damaged are named', async () => {
    const first = await start({ demo: true });
    first.signal('SIGTERM');
    await first.ended;
    writeFileSync(join(folder, 'unit.sqlite'), 'no database');
    const { status, err } = await failing({ data: folder });
    expect(status).toBe(2);
    expect(err).toContain('unit.sqlite: ');
  });

  test('the demonstration is one flag, marked invented, and its passwords are in no log', async () => {
    const { port, out, err } = await start({ demo: true });
    const [, name = '', password = ''] = /^ {2}(observer) +(\S+) /m.exec(out()) ?? [];
    const { unit, account } = await client(port).call('sign-in', { body: { name, password } });
    expect(unit).toMatchObject({ invented: true, title: 'Larkmoor General Hospital (invented)' });
    expect(account.role).toBe('observer');
    expect(err()).toContain('"what":"started"');
    for (const line of out().matchAll(/^ {2}\S+ +(\w{4}-\w{4}-\w{4}-\w{4}) /gm))
      expect(err()).not.toContain(line[1]);
  });

  test('another lead is made with a code that only the terminal shows', async () => {
    const first = await start({ demo: true });
    first.signal('SIGTERM');
    await first.ended;
    const { port, code } = await start({ newLead: true });
    const body = {
      demo: false,
      code,
      id: 'larkmoor-isolation',
      title: 'ignored',
      name: 'Second Lead',
      password: LEAD.password,
    };
    expect((await client(port).refused('create-unit', { body: { ...body, id: 'other' } })).code).toBe(
      'other-unit-there',
    );
    expect((await client(port).call('create-unit', { body })).unit.invented).toBe(true);
  });
});

describe('https', () => {
  test('with the unit’s own authority: fetched from the page for trusting, and accepted by it', async () => {
    const { port, out, code } = await start({ https: true, name: ['isolation.example'] });
    const [, trustPort = ''] = /at http:\/\/isolation\.example:(\d+)\//.exec(out()) ?? [];
    const page = await ask(Number(trustPort), { path: '/' });
    const [fingerprint = ''] = /([0-9A-F]{2}:){31}[0-9A-F]{2}/.exec(out()) ?? [];
    expect(page.text).toContain(fingerprint);
    expect(page.text).toContain('<svg role="img"');
    expect(page.text).not.toContain('<script');
    const authority = readFileSync(join(folder, 'tls', 'authority.pem'), 'utf8');
    const fetched = await ask(Number(trustPort), { path: '/doffline-authority.crt' });
    expect(fetched.headers['content-type']).toBe('application/x-x509-ca-cert');
    for (const path of ['/api/unit', '/health', '/index.html', '/tls/authority-key.pem', '/..%2f'])
      expect((await ask(Number(trustPort), { path })).status).toBe(404);
    const made = await securely(port, '/api/unit', authority, create(code).body);
    expect(made.status).toBe(200);
    expect(made.headers['set-cookie']?.[0]).toMatch(/^__Host-doffline-session=.*; Secure/);
    expect(made.headers['strict-transport-security']).toBeUndefined();
    expect((await securely(port, '/address', authority)).text).toContain('This address is secure');
  });

  test('with the hospital’s certificate, and without it when the key is another’s', async () => {
    const now = new Date();
    const authority = await newAuthority(['127.0.0.1'], 'aaaaaa', now);
    const pair = await newCertificate(authority, ['127.0.0.1', 'localhost'], now);
    const other = await newCertificate(authority, ['127.0.0.1'], now);
    const [cert, key, wrong] = ['cert.pem', 'key.pem', 'wrong.pem'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ];
    for (const [file, text] of [
      [cert, pair.cert],
      [key, pair.key],
      [wrong, other.key],
    ] as const)
      writeFileSync(file, text);
    const { port } = await start({ cert, key });
    const { headers, status } = await securely(port, '/', authority.cert);
    expect([status, headers['strict-transport-security']]).toEqual([200, 'max-age=31536000']);
    const failed = await failing({ data: folder, cert, key: wrong });
    expect([failed.status, failed.err]).toEqual([2, expect.stringMatching(/^error: .*key/i)]);
  });
});

test('at an address that is not secure the page says what does not work there', async () => {
  const { port, out } = await start({ host: '0.0.0.0', name: ['ward.example'] });
  expect(out()).toMatch(/not secure: no offline use/);
  const { text, headers } = await ask(port, { path: '/address', headers: { host: `ward.example:${port}` } });
  for (const part of [
    'not secure',
    'No offline use',
    'screen does not stay on',
    'cannot be installed',
    'passwords',
  ])
    expect(text).toContain(part);
  expect(String(headers['content-security-policy'])).toContain("default-src 'none'");
  expect((await ask(port, { path: '/address' })).text).toContain('This address is secure');
});

describe('what cannot start says why, and ends with status 2', () => {
  test('a port that is taken', async () => {
    const { port } = await start({});
    const { status, err } = await failing({ port, data: join(folder, 'other') });
    expect(err).toMatch(/^error: The port is taken/);
    expect(status).toBe(2);
  });

  test.each<[string, object, RegExp, Record<string, string>]>([
    ['a name that is none', { name: ['no name'] }, /--name .*neither a name nor an address/, {}],
    ['a certificate without its key', { cert: 'x' }, /--cert and --key go together/, {}],
    ['a proxy without a name', { behindProxy: ['10.0.0.1'] }, /needs --name/, {}],
    ['a proxy that is no address', { behindProxy: ['proxy'], name: ['a.example'] }, /no address/, {}],
    ['a key for health that cannot be read', {}, /_KEY, key 1/, { DOFFLINE_HEALTH_KEY: 'one:SECRET-PART' }],
    ['an address of another machine', { host: '203.0.113.9' }, /no such address/, {}],
    [
      'a database that is not there',
      { data: undefined },
      /be reached/,
      { DATABASE_URL: 'postgres://127.0.0.1:9/x' },
    ],
  ])('%s', async (_, asked, why, env) => {
    const { status, err } = await failing({ data: folder, ...asked }, env);
    expect(err).toMatch(why);
    expect(err).toMatch(/^error: /);
    expect(err).not.toContain('SECRET-PART');
    expect(status).toBe(2);
  });
});
