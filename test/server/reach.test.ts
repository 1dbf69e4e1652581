// By which names and through whom the server may be reached: behind a proxy, over https, and for the monitor.
import { afterEach, describe, expect, test } from 'vitest';
import { blockList } from '../../src/server/reach.ts';
import { ask, client, LEAD, lead, type Options, type Running, start } from './harness.ts';

let server: Running | undefined;
const open = async (options: Options): Promise<Running> => {
  server = await start(options);
  return server;
};
afterEach(async () => {
  await server?.stop();
  server = undefined;
});

const BEHIND = {
  reach: {
    secure: true,
    names: new Set(['isolation.example']),
    proxies: blockList(['127.0.0.0/8', '10.1.2.3']),
    address: 'https://isolation.example',
  },
} as const;
const FORWARDED = { 'x-forwarded-host': 'isolation.example', 'x-forwarded-for': '192.0.2.9' };

describe('behind a proxy', () => {
  test('the forwarded name counts, and cookies are for https alone', async () => {
    const { port } = await open(BEHIND);
    expect(await ask(port, { path: '/api/unit', headers: FORWARDED })).toMatchObject({ status: 200 });
    expect(await ask(port, { path: '/api/unit' })).toMatchObject({ status: 421 });
    const one = client(port);
    const { headers } = await one.raw('create-unit', {
      headers: { ...FORWARDED, origin: 'https://isolation.example' },
      body: { demo: false, code: 'TEST-CODE', id: 'u', title: 'Larkmoor (invented)', ...LEAD },
    });
    const [cookie] = headers['set-cookie'] ?? [];
    expect(cookie).toMatch(/^__Host-doffline-session=/);
    expect(cookie).toContain('Secure');
  });

  test('who comes past the proxy is refused', async () => {
    const { port } = await open({ reach: { ...BEHIND.reach, proxies: blockList(['10.1.2.3']) } });
    const { status, text } = await ask(port, { path: '/', headers: FORWARDED });
    expect(status).toBe(421);
    expect(text).toContain('not-through-proxy');
  });

  test('tries are counted by the address that the proxy saw, whatever was written before it', async () => {
    const running = await open(BEHIND);
    const one = client(running.port);
    const guess = (forwarded: string) =>
      one.refused('sign-in', {
        headers: { ...FORWARDED, 'x-forwarded-for': forwarded },
        body: { name: 'x', password: 'y' },
      });
    for (let turn = 0; turn < 10; turn += 1)
      expect((await guess(`203.0.113.${turn}, 192.0.2.9, 10.1.2.3`)).code).toBe('wrong-password');
    expect((await guess('203.0.113.77, 192.0.2.9')).code).toBe('too-many');
    expect((await guess('192.0.2.10')).code).toBe('wrong-password');
    expect(running.log()).not.toMatch(/192\.0\.2|203\.0\.113/);
  });
});

test('a list of addresses takes addresses and blocks of both families, and nothing else', () => {
  const list = blockList(['10.0.0.0/8', 'fd00::/8', '192.0.2.1']);
  expect([list.check('10.9.9.9'), list.check('192.0.2.1'), list.check('192.0.2.2')]).toEqual([
    true,
    true,
    false,
  ]);
  expect(list.check('fd12::1', 'ipv6')).toBe(true);
  for (const wrong of ['proxy.example', '10.0.0.0/40', '10.0.0', ''])
    expect(() => blockList([wrong])).toThrow(/address/i);
});

test('browsers are told to come by https for good only where the certificate stays', async () => {
  const { port } = await open({ reach: { secure: true, lasting: true } });
  expect((await ask(port, { path: '/' })).headers['strict-transport-security']).toBe('max-age=31536000');
  await server?.stop();
  const plain = await open({});
  expect((await ask(plain.port, { path: '/' })).headers['strict-transport-security']).toBeUndefined();
});

describe('watching', () => {
  test('health says whether the data can be read', async () => {
    const running = await open({});
    expect(await ask(running.port, { path: '/health' })).toMatchObject({
      status: 200,
      text: '{"status":"ok"}',
    });
    await running.context.records.close();
    const { status, text } = await ask(running.port, { path: '/health' });
    expect([status, JSON.parse(text)]).toEqual([503, { status: 'failing', code: 'unavailable' }]);
    server = undefined;
  });

  test('counts are in Prometheus’ form and say nothing of people', async () => {
    const running = await open({});
    await lead(running);
    const { text, headers } = await ask(running.port, { path: '/metrics' });
    expect(headers['content-type']).toContain('version=0.0.4');
    for (const line of text.trim().split('\n'))
      expect(line).toMatch(/^(# (HELP|TYPE) doffline_\w+ .+|doffline_\w+(\{(\w+="[^"]*",?)+\})? [\d.e+-]+)$/);
    expect(text).toContain('doffline_requests_total{route="create-unit",method="POST",status="200"} 1');
    expect(text).toMatch(/doffline_request_seconds_bucket\{route="create-unit",le="\+Inf"\} 1/);
    expect(text).not.toMatch(/Ada|Larkmoor|127\.0/);
  });

  test('counts are for this machine, or for who has the token', async () => {
    const { port } = await open({ metricsToken: 'let-me-count' });
    expect((await ask(port, { path: '/metrics' })).status).toBe(404);
    const headers = { authorization: 'Bearer let-me-count' };
    expect((await ask(port, { path: '/metrics', headers })).status).toBe(200);
    await server?.stop();
    const behind = await open(BEHIND);
    expect((await ask(behind.port, { path: '/metrics', headers: FORWARDED })).status).toBe(404);
  });
});
