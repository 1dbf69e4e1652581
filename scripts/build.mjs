// Builds everything that can be run: the page into dist/app, the server and the command line into one file each.
// `node scripts/build.mjs` builds all; a name (app, server, serve, typeset, cli) builds only that.
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { BUNDLES, bundle, isFresh, newest } from './bundle.mjs';
import { ensureInstalled, ROOT } from './install.mjs';

/** @returns {Promise<void>} */
export async function buildApp() {
  if (!existsSync(join(ROOT, 'src/app/index.html'))) throw new Error('src/app/index.html is missing');
  const { build } = await import('vite');
  await build({ root: join(ROOT, 'src/app'), configFile: join(ROOT, 'vite.config.ts'), logLevel: 'warn' });
}

/** What `doffline serve` needs beside the command line: the page and the server, built where they are missing or stale. */
export async function prepareServe() {
  const page = join(ROOT, 'dist/app/index.html');
  const isStale = !existsSync(page) || newest(join(ROOT, 'src'), 'server') > statSync(page).mtimeMs;
  if (isStale) {
    console.error('Building the page ...');
    await buildApp();
  }
  for (const name of /** @type {const} */ (['serve', 'typeset'])) if (!isFresh(name)) await bundle(name);
}

/** @param {string} name */
async function buildOne(name) {
  if (name === 'app') await buildApp();
  else if (name === 'cli' || name === 'server' || name === 'serve' || name === 'typeset') {
    if (!existsSync(join(ROOT, BUNDLES[name].entry))) throw new Error(`${BUNDLES[name].entry} is missing`);
    await bundle(name);
  } else throw new Error(`Unknown part "${name}": app, server, serve, typeset or cli`);
  console.log(`built ${name}`);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ensureInstalled();
  const names = process.argv.slice(2);
  for (const name of names.length > 0 ? names : ['app', 'server', 'serve', 'typeset', 'cli']) {
    await buildOne(name).catch((/** @type {unknown} */ error) => {
      console.error(`build ${name} failed: ${error instanceof Error ? error.message : String(error)}`);
      process.exitCode = 1;
    });
  }
}
