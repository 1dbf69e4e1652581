// The local server: what it serves, and that no address reaches beyond the built page. Asked over a real socket,
// with raw paths, because fetch would tidy '..' away before the server sees it.
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer, type IncomingHttpHeaders, request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createStaticServer, listen } from '../../src/server/static.ts';

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

const folder = mkdtempSync(join(tmpdir(), 'static-'));
const site = join(folder, 'app');
let server: Server;
let address: URL;

function ask(
  path: string,
  options: { method?: string; headers?: Record<string, string> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const call = request({ host: address.hostname, port: address.port, path, ...options }, (response) => {
      let body = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => {
        body += part;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    call.on('error', reject);
    call.end();
  });
}

beforeAll(async () => {
  mkdirSync(join(site, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'SECRET');
  writeFileSync(join(site, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(site, 'assets', 'a-1.js'), 'export {};');
  writeFileSync(join(site, '.hidden'), 'SECRET');
  symlinkSync(join(folder, 'secret.txt'), join(site, 'link.txt'));
  server = createStaticServer(site);
  address = new URL(await listen(server, 0));
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

describe('serves the built page', () => {
  test('/ is the page, always asked for anew', async () => {
    const answer = await ask('/');
    expect(answer.status).toBe(200);
    expect(answer.body).toContain('<title>page</title>');
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['cache-control']).toBe('no-cache');
  });

  test('a file whose name carries its hash may be kept', async () => {
    const answer = await ask('/assets/a-1.js?x=1');
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toContain('text/javascript');
    expect(answer.headers['cache-control']).toContain('immutable');
  });

  test('HEAD gives the headers and no body', async () => {
    const answer = await ask('/assets/a-1.js', { method: 'HEAD' });
    expect(answer.status).toBe(200);
    expect(answer.headers['content-length']).toBe('10');
    expect(answer.body).toBe('');
  });

  test('an unchanged file is not sent again', async () => {
    const { etag } = (await ask('/')).headers;
    const again = await ask('/', { headers: { 'if-none-match': etag ?? '' } });
    expect(again.status).toBe(304);
    expect(again.body).toBe('');
  });

  test('a place inside the page gets the page, only when a page is asked for', async () => {
    const asPage = await ask('/check/step/4', { headers: { accept: 'text/html,*/*' } });
    expect(asPage.status).toBe(200);
    expect(asPage.body).toContain('<title>page</title>');
    expect((await ask('/check/step/4')).status).toBe(404);
    expect((await ask('/missing.js', { headers: { accept: 'text/html' } })).status).toBe(404);
  });
});

describe('gives nothing else', () => {
  test.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..\\secret.txt',
    '//../secret.txt',
    '/secret.txt%00.html',
    '/.hidden',
    '/link.txt',
    '/assets',
    '/assets/',
  ])('%s is not found', async (path) => {
    const answer = await ask(path);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('SECRET');
  });

  test.each(['/%', '/%ff', 'http://other/'])('%s is no address', async (path) => {
    expect((await ask(path)).status).toBe(400);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is refused', async (method) => {
    const answer = await ask('/', { method });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD');
  });

  test.each(['ward.example', 'localhost.example:4173', 'evil:80'])('host %s is refused', async (host) => {
    expect((await ask('/', { headers: { host } })).status).toBe(421);
  });

  test.each(['/', '/missing.js', '/assets/a-1.js'])('%s answers with the security headers', async (path) => {
    const { headers } = await ask(path);
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['referrer-policy']).toBe('no-referrer');
  });
});

describe('port', () => {
  test('listens on the loopback address only', () => {
    expect(server.address()).toMatchObject({ address: '127.0.0.1' });
  });

  test('takes the next free port when the first is taken', async () => {
    const blocker = createServer();
    const taken = Number(new URL(await listen(blocker, 0)).port);
    const second = createStaticServer(site);
    const got = Number(new URL(await listen(second, taken)).port);
    second.close();
    blocker.close();
    expect(got).toBeGreaterThan(taken);
  });

  test('a folder without a page is refused at once', () => {
    expect(() => createStaticServer(join(site, 'assets'))).toThrow('build the page first');
  });
});
