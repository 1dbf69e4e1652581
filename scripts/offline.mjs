// What the build adds so that the page works without a network: the list of its files with the hash of each, put into the
// service worker, and a name for the version in the page itself. A Vite plugin of our own, because this is all there is to it.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const WORKER = fileURLToPath(new URL('../src/app/offline/serviceWorker.ts', import.meta.url));
/** Stands in index.html until the version is known. */
const PLACE = '__version__';

/** @param {string | Buffer} content */
const hashOf = (content) => createHash('sha256').update(content).digest();

/**
 * Addresses of all files below a folder, sorted. Source maps are for people who look for a fault, with the server in reach.
 * @param {string} folder
 * @returns {readonly string[]}
 */
function addressesIn(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.') && !entry.name.endsWith('.map'))
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length).replaceAll('\\', '/'))
    .filter((address) => address !== '/sw.js')
    .sort();
}

/**
 * Writes the version into `folder`/index.html and makes `folder`/sw.js of the service worker's source.
 * @param {string} folder
 * @param {string} release as package.json has it
 * @returns {Promise<string>} the version's name
 */
async function makeOffline(folder, release) {
  const page = join(folder, 'index.html');
  const addresses = addressesIn(folder);
  const all = createHash('sha256');
  for (const address of addresses) all.update(`${address}\0`).update(hashOf(readFileSync(folder + address)));
  const version = `${release}-${all.digest('hex').slice(0, 8)}`;
  writeFileSync(page, readFileSync(page, 'utf8').replace(PLACE, version));
  const files = addresses.map((address) => [
    address,
    `sha256-${hashOf(readFileSync(folder + address)).toString('base64')}`,
  ]);
  const { build } = await import('esbuild');
  await build({
    entryPoints: [WORKER],
    outfile: join(folder, 'sw.js'),
    bundle: true,
    format: 'iife',
    target: 'es2023',
    define: { VERSION: JSON.stringify(version), FILES: JSON.stringify(files) },
    logLevel: 'silent',
  });
  return version;
}

/**
 * @param {string} release
 * @returns {import('vite').Plugin}
 */
export function offline(release) {
  let folder = '';
  let failed = false;
  return {
    name: 'doffline:offline',
    apply: 'build',
    configResolved: ({ root, build }) => {
      folder = resolve(root, build.outDir);
    },
    buildEnd: (error) => {
      failed = error !== undefined;
    },
    closeBundle: async () => {
      if (!failed) await makeOffline(folder, release);
    },
  };
}
