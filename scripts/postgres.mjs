// Makes PostgreSQL available to the tests: fetches it from Debian's packages where that is possible unattended, and starts a
// server of its own in a temporary folder. A server that runs already is neither needed nor touched.
import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from './run.mjs';
import { freePort } from './freePort.mjs';

const APT = { DEBIAN_FRONTEND: 'noninteractive' };
const INSTALLED = '/usr/lib/postgresql';
const BY_HAND = 'install Debian’s package postgresql';

/** @returns {string | undefined} the folder of the newest server's programs */
function programs() {
  const versions = existsSync(INSTALLED) ? readdirSync(INSTALLED) : [];
  return versions
    .filter((version) => existsSync(join(INSTALLED, version, 'bin', 'initdb')))
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(INSTALLED, version, 'bin'))[0];
}

/** @returns {string | undefined} why there is no PostgreSQL here; undefined when there is one */
export function whyNoPostgres() {
  if (process.env.DOFFLINE_WITHOUT_POSTGRES === '1') return 'DOFFLINE_WITHOUT_POSTGRES=1 was set';
  if (programs() !== undefined) return undefined;
  if (!existsSync('/usr/bin/apt-get')) return `PostgreSQL is missing and there is no apt-get: ${BY_HAND}`;
  return process.getuid?.() === 0
    ? `PostgreSQL is missing and could not be installed: ${BY_HAND}`
    : `PostgreSQL is missing and only root may install it: ${BY_HAND}`;
}

/** Installs it if it is missing and that is possible. Says what it could not get. */
export async function fetchPostgres() {
  if (whyNoPostgres() === undefined) return;
  const mayTry = process.env.DOFFLINE_WITHOUT_POSTGRES !== '1';
  if (mayTry && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    console.log('Installing PostgreSQL from Debian’s packages ...');
    await run('apt-get', ['update'], { env: APT, quiet: true });
    const install = ['install', '-y', '--no-install-recommends', 'postgresql'];
    const done = await run('apt-get', install, { env: APT, quiet: true, minutes: 5 });
    if (done.status !== 0) console.log(done.output.trim().split('\n').slice(-3).join('\n'));
  }
  const why = whyNoPostgres();
  if (why !== undefined) console.log(`${why}. Its tests are skipped, by name.`);
}

/** @returns {{ uid: number, gid: number } | undefined} the account to run as; undefined for one's own */
function owner() {
  if (process.getuid?.() !== 0) return undefined;
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((one) => one.startsWith('postgres:'));
  const [, , uid, gid] = line?.split(':') ?? [];
  return uid === undefined ? undefined : { uid: Number(uid), gid: Number(gid) };
}

/**
 * Runs one of the server's programs. It refuses to run as root, so root lends it the account of Debian's package.
 * @param {string} folder
 * @param {string} program
 * @param {readonly string[]} args
 */
function call(folder, program, args) {
  const done = spawnSync(join(programs() ?? '', program), [...args], {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
    ...owner(),
  });
  if (done.status !== 0) throw new Error(`${program}: ${done.stderr || String(done.error)}`);
}

const FRESH = ['-U', 'postgres', '-A', 'trust', '--no-sync', '-E', 'UTF8', '--locale=C.UTF-8'];

/**
 * A server of one's own, with an empty database.
 * @returns {Promise<{ url: string, stop: () => void }>}
 */
export async function startPostgres() {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-postgres-'));
  const own = owner();
  if (own) chownSync(folder, own.uid, own.gid);
  const data = join(folder, 'data');
  const port = await freePort();
  call(folder, 'initdb', ['-D', data, ...FRESH]);
  const settings = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`;
  call(folder, 'pg_ctl', ['-D', data, '-w', '-l', join(folder, 'log'), '-o', settings, 'start']);
  return {
    url: `postgres://postgres@127.0.0.1:${port}/postgres`,
    stop: () => {
      call(folder, 'pg_ctl', ['-D', data, '-w', '-m', 'immediate', 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
