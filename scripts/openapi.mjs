// Writes schema/openapi.json from the table that the server answers from. Run `node scripts/openapi.mjs` after a route or a
// shape of src/api changed; a test fails while the file is out of date.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from './install.mjs';
import { bin, run } from './run.mjs';

const folder = join(ROOT, `dist/.openapi-${process.pid}`);
mkdirSync(folder, { recursive: true });
try {
  const outfile = join(folder, 'openapi.mjs');
  const entryPoints = [join(ROOT, 'src/server/openapi.ts')];
  await build({ entryPoints, outfile, bundle: true, platform: 'node', format: 'esm', logLevel: 'error' });
  const made = /** @type {{ openApiDocument: () => object }} */ (await import(pathToFileURL(outfile).href));
  const target = join(ROOT, 'schema/openapi.json');
  writeFileSync(target, JSON.stringify(made.openApiDocument()));
  await run(bin('biome'), ['format', '--write', target]);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
