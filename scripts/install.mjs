// Installs the packages of the lock file when they are missing or out of date. Uses nothing but Node itself,
// because it is the first thing that runs on a fresh clone. Everything it says goes to stderr: the command line
// keeps stdout for its own output.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** @typedef {Record<string, { version?: string, optional?: boolean }>} LockPackages */

/**
 * @param {string} file
 * @returns {LockPackages}
 */
function packagesOf(file) {
  /** @type {unknown} */
  const lock = JSON.parse(readFileSync(file, 'utf8'));
  return /** @type {{ packages: LockPackages }} */ (lock).packages;
}

/**
 * True when node_modules holds what the lock asks for. File times answer in the usual case; where they disagree
 * (a checkout touches the lock) the versions decide, so that nothing is deleted and fetched again for nothing.
 */
export function isInstalled(root = ROOT) {
  const lock = join(root, 'package-lock.json');
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return false;
  if (statSync(installed).mtimeMs >= statSync(lock).mtimeMs) return true;
  const have = packagesOf(installed);
  return Object.entries(packagesOf(lock)).every(
    ([path, wanted]) => path === '' || wanted.optional === true || have[path]?.version === wanted.version,
  );
}

/** Runs `npm ci` if it is needed. Throws when npm fails or warns that a package does not fit this Node. */
export function ensureInstalled(root = ROOT) {
  if (isInstalled(root)) return;
  console.error('Installing packages (npm ci) ...');
  const npm = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=warn'], {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (npm.status !== 0) {
    throw new Error(`npm ci failed (${npm.error?.message ?? `exit status ${npm.status}`})\n${npm.stderr}`);
  }
  if (npm.stderr.includes('EBADENGINE')) throw new Error(`A package does not fit this Node:\n${npm.stderr}`);
}
