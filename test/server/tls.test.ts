// The unit's own authority: a certificate that a client accepts by it, for the unit's names and no others, renewed before
// its end and never readable by others.
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, createServer } from 'node:tls';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isGood, newAuthority, newCertificate, type Pair } from '../../src/server/tls/certificates.ts';
import { ownTls } from '../../src/server/tls/files.ts';

const NOW = new Date();
const DAY = 86_400_000;
const NAMES = ['isolation.example', 'localhost', '127.0.0.1', '192.168.1.20', '203.0.113.5', '::1'];
const later = (days: number): Date => new Date(NOW.getTime() + days * DAY);

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'doffline-tls-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** What a client that trusts the authority alone says to a server: undefined where it accepts it. */
function verdict(authority: string, pair: Pair, servername: string): Promise<string | undefined> {
  return new Promise((resolve, reject) => {
    const server = createServer({ ...pair }, (socket) => socket.on('error', () => undefined).end());
    server.on('tlsClientError', () => undefined);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      if (address === null || typeof address === 'string') return reject(new Error('no port'));
      const socket = connect({ port: address.port, host: '127.0.0.1', servername, ca: authority });
      const end = (said: string | undefined): void => {
        socket.destroy();
        server.close(() => resolve(said));
      };
      socket.once('secureConnect', () => end(undefined));
      return socket.once('error', (error: NodeJS.ErrnoException) => end(`${error.code}: ${error.message}`));
    });
  });
}

describe('a certificate under the authority', () => {
  test('is accepted for the unit’s names by who trusts the authority', async () => {
    const authority = await newAuthority(NAMES, 'a1b2c3', NOW);
    const pair = await newCertificate(authority, NAMES, NOW);
    expect(await verdict(authority.cert, pair, 'isolation.example')).toBeUndefined();
    expect(await verdict(authority.cert, pair, 'localhost')).toBeUndefined();
    expect(await verdict(authority.cert, pair, 'other.example')).toMatch(/^ERR_TLS_CERT_ALTNAME_INVALID/);
    const other = await newAuthority(NAMES, 'd4e5f6', NOW);
    expect(await verdict(other.cert, pair, 'localhost')).toMatch(/UNABLE_TO_(VERIFY|GET)|SELF_SIGNED/);
  });

  test('for another site is refused, even when the authority signed it', async () => {
    const authority = await newAuthority(NAMES, 'a1b2c3', NOW);
    const stolen = await newCertificate(authority, ['bank.example'], NOW);
    expect(await verdict(authority.cert, stolen, 'bank.example')).toMatch(/permitted subtree|PERMITTED/i);
    const elsewhere = await newCertificate(authority, ['198.51.100.1', 'isolation.example'], NOW);
    expect(await verdict(authority.cert, elsewhere, 'isolation.example')).toMatch(
      /permitted subtree|PERMITTED/i,
    );
  });

  test('says what tablets ask for: server use, names, no longer than they take', async () => {
    const authority = await newAuthority(NAMES, 'a1b2c3', NOW);
    const { cert } = await newCertificate(authority, NAMES, NOW);
    const read = new X509Certificate(cert);
    expect(read.ca).toBe(false);
    expect(new X509Certificate(authority.cert).ca).toBe(true);
    // Node lists extended key usages by number: 1.3.6.1.5.5.7.3.1 is serverAuth.
    expect((read as { keyUsage?: readonly string[] }).keyUsage).toContain('1.3.6.1.5.5.7.3.1');
    for (const name of ['DNS:isolation.example', 'IP Address:192.168.1.20', 'IP Address:0:0:0:0:0:0:0:1'])
      expect(read.subjectAltName).toContain(name);
    // 825 days: support.apple.com/103769.
    expect(Date.parse(read.validTo) - Date.parse(read.validFrom)).toBeLessThan(825 * DAY);
    expect(Date.parse(read.validFrom)).toBeLessThan(NOW.getTime());
  });

  test('is good until some weeks before its end, for its own names, by its own authority', async () => {
    const authority = await newAuthority(NAMES, 'a1b2c3', NOW);
    const { cert } = await newCertificate(authority, NAMES, NOW);
    expect(isGood(cert, authority.cert, NAMES, NOW)).toBe(true);
    expect(isGood(cert, authority.cert, NAMES, later(120))).toBe(true);
    expect(isGood(cert, authority.cert, NAMES, later(140))).toBe(false);
    expect(isGood(cert, authority.cert, [...NAMES, 'new.example'], NOW)).toBe(false);
    const other = await newAuthority(NAMES, 'a1b2c3', NOW);
    expect(isGood(cert, other.cert, NAMES, NOW)).toBe(false);
  });
});

describe('in the unit’s folder', () => {
  const names = { given: ['isolation.example'], found: ['127.0.0.1'], known: ['ward-pc'] };

  test('keys are the owner’s alone', async () => {
    await ownTls(join(folder, 'tls'), names, NOW);
    for (const name of ['authority-key.pem', 'server-key.pem'])
      expect(statSync(join(folder, 'tls', name)).mode & 0o777).toBe(0o600);
    expect(statSync(join(folder, 'tls')).mode & 0o777).toBe(0o700);
  });

  test('the same again while it is good, renewed before its end, the authority kept throughout', async () => {
    const first = await ownTls(folder, names, NOW);
    expect((await ownTls(folder, names, later(100))).server).toEqual(first.server);
    const renewed = await ownTls(folder, names, later(150));
    expect(renewed.server.cert).not.toBe(first.server.cert);
    expect(renewed.authority).toEqual(first.authority);
    expect([first.isNew, renewed.isNew]).toEqual([true, false]);
    expect(readFileSync(join(folder, 'server.pem'), 'utf8')).toBe(renewed.server.cert);
  });

  test('names found later are taken where the authority permits them; given ones must be', async () => {
    await ownTls(folder, names, NOW);
    const moved = await ownTls(
      folder,
      { ...names, found: ['10.1.2.3', 'fd00::7', 'ward-pc', 'elsewhere'] },
      NOW,
    );
    expect(moved.names).toEqual(['isolation.example', '10.1.2.3', 'fd00::7', 'ward-pc']);
    await expect(ownTls(folder, { ...names, given: ['other.example'] }, NOW)).rejects.toThrow(
      /not made for other\.example/,
    );
  });
});
