// Writes schema/check-1.json from the shape that `doffline check --json` fills. Run `node scripts/check-schema.mjs` after
// that shape changed; a test fails while it is out of date.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './install.mjs';
import { bin, run } from './run.mjs';

const TARGET = join(ROOT, 'schema/check-1.json');

/** @returns {Promise<unknown>} what the file must hold; Node itself cannot read the shape's TypeScript */
async function makeSchema() {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-schema-'));
  try {
    const outfile = join(folder, 'schema.mjs');
    const entryPoints = [join(ROOT, 'src/cli/reportSchema.ts')];
    await build({ entryPoints, outfile, bundle: true, platform: 'node', format: 'esm', logLevel: 'error' });
    const made = /** @type {{ checkJsonSchema: () => unknown }} */ (
      await import(pathToFileURL(outfile).href)
    );
    return made.checkJsonSchema();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

writeFileSync(TARGET, JSON.stringify(await makeSchema()));
await run(bin('biome'), ['format', '--write', TARGET]);
