// Writes schema/procedure-1.json from the shape that the reader uses. Run `node scripts/procedure-schema.mjs` after
// the words or the shape of the file changed; a test fails while it is out of date.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { bin, run } from './run.mjs';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const TARGET = join(ROOT, 'schema/procedure-1.json');

/** @returns {Promise<object>} what the file must hold; Node itself cannot read the shape's TypeScript */
export async function makeSchema() {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-schema-'));
  try {
    const outfile = join(folder, 'schema.cjs');
    const entryPoints = [join(ROOT, 'src/language/json-schema.ts')];
    await build({ entryPoints, outfile, bundle: true, platform: 'node', format: 'cjs', logLevel: 'error' });
    const made = /** @type {{ procedureJsonSchema: () => object }} */ (
      createRequire(import.meta.url)(outfile)
    );
    return made.procedureJsonSchema();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(TARGET, JSON.stringify(await makeSchema()));
  await run(bin('biome'), ['format', '--write', TARGET]);
}
