// Writes the schemas of what the command line prints with --json from the shapes that it fills. Run
// `node scripts/check-schema.mjs` after one of them changed; a test fails while a schema is out of date.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './install.mjs';
import { bin, run } from './run.mjs';

/** Schema file, the module of its shape, and the function there that makes it. */
const SCHEMAS = /** @type {const} */ ([
  ['check-1', 'reportSchema', 'checkJsonSchema'],
  ['compare-1', 'compareSchema', 'compareJsonSchema'],
  ['cost-1', 'costSchema', 'costJsonSchema'],
  ['order-1', 'orderSchema', 'orderJsonSchema'],
  ['journal-verify-1', 'journalSchema', 'journalJsonSchema'],
]);

/**
 * @param {string} module
 * @param {string} maker
 * @returns {Promise<unknown>} what the file must hold; Node itself cannot read the shape's TypeScript
 */
async function makeSchema(module, maker) {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-schema-'));
  try {
    const outfile = join(folder, 'schema.mjs');
    const entryPoints = [join(ROOT, `src/cli/${module}.ts`)];
    await build({ entryPoints, outfile, bundle: true, platform: 'node', format: 'esm', logLevel: 'error' });
    const made = /** @type {Record<string, () => unknown>} */ (await import(pathToFileURL(outfile).href));
    return made[maker]?.();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

for (const [name, module, maker] of SCHEMAS) {
  const target = join(ROOT, `schema/${name}.json`);
  writeFileSync(target, JSON.stringify(await makeSchema(module, maker)));
  await run(bin('biome'), ['format', '--write', target]);
}
