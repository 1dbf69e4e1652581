// Bundles the shells that run on Node into one file each. Plain Node 20 cannot read TypeScript, and one file
// starts faster than many. Written beside and renamed, so two commands started at once never read half a file.
import { existsSync, mkdirSync, readdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { ROOT } from './install.mjs';

/** Some packages are CommonJS and call require at run time. */
const REQUIRE = "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);";

/** Native packages cannot be put into one file; they are found in node_modules, and loaded only by what needs them. */
const NATIVE = ['@myriaddreamin/typst-ts-node-compiler', '@node-rs/argon2', 'libsql'];

/** Each bundle: its first file, its result, and the folders whose change makes it stale. */
export const BUNDLES = {
  cli: { entry: 'src/cli/main.ts', out: 'dist/cli.js', sources: ['src', 'evidence'], leaveOut: 'app' },
  server: {
    entry: 'src/server/main.ts',
    out: 'dist/server.js',
    sources: ['src/server', 'src/api', 'src/journal'],
    leaveOut: '',
  },
  /** The program that sets one paper, started by both servers. */
  typeset: {
    entry: 'src/typeset/main.ts',
    out: 'dist/typeset.js',
    sources: ['src', 'evidence'],
    leaveOut: 'app',
  },
  serve: {
    entry: 'src/server/serve.ts',
    out: 'dist/serve.js',
    sources: ['src/server', 'src/api', 'src/journal'],
    leaveOut: '',
  },
};

/**
 * The newest change below a folder, in milliseconds. The folder's own time counts too: it moves when a file goes.
 * @param {string} folder
 * @param {string} leaveOut name of a subfolder that does not count
 * @returns {number}
 */
export function newest(folder, leaveOut) {
  let latest = statSync(folder).mtimeMs;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isFile()) latest = Math.max(latest, statSync(path).mtimeMs);
    else if (entry.isDirectory() && entry.name !== leaveOut) latest = Math.max(latest, newest(path, ''));
  }
  return latest;
}

/**
 * @param {keyof typeof BUNDLES} name
 * @returns {boolean}
 */
export function isFresh(name, root = ROOT) {
  const { out, sources, leaveOut } = BUNDLES[name];
  const file = join(root, out);
  if (!existsSync(file)) return false;
  const built = statSync(file).mtimeMs;
  const folders = sources.map((source) => join(root, source)).filter((folder) => existsSync(folder));
  return (
    folders.every((folder) => newest(folder, leaveOut) < built) &&
    statSync(join(root, 'package-lock.json')).mtimeMs < built
  );
}

/**
 * @param {keyof typeof BUNDLES} name
 * @returns {Promise<string>} the bundle's path
 */
export async function bundle(name, root = ROOT) {
  const { entry, out } = BUNDLES[name];
  const { build } = await import('esbuild');
  const target = join(root, out);
  const result = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile: target,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    sourcemap: 'linked',
    external: NATIVE,
    banner: { js: REQUIRE },
    logLevel: 'silent',
    write: false,
  });
  mkdirSync(dirname(target), { recursive: true });
  for (const file of result.outputFiles) {
    const temporary = join(dirname(target), `.${basename(file.path)}.${process.pid}`);
    writeFileSync(temporary, file.contents);
    renameSync(temporary, file.path);
  }
  return target;
}
