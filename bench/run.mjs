// Runs the benches: `node bench/run.mjs [NAME ...] [--runs=N]`; without a name, all. Each bench is bundled to one file
// and run in fresh processes, its cases in alternating order, so that neither a warmed-up machine nor the case before
// favours one of them. A row's number is the median over processes of each process's median.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { bundle } from '../scripts/bundle.mjs';

/** @typedef {{ name: string, samples: number[], unit: string, goal?: string, note?: string }} Row */
/** @typedef {{ rows: Row[], notes: string[], missing?: string }} Report */

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** How many fresh processes each bench gets; a long one needs fewer. */
const BENCHES = {
  order: 1,
  continue: 1,
  check: 6,
  edit: 6,
  page: 1,
  engine: 6,
  variants: 4,
  draws: 6,
  spin: 1,
  memory: 3,
  journal: 1,
  load: 1,
  kills: 1,
  tablet: 1,
};

/** Those that need the server as a program of its own. */
const SERVED = ['load', 'kills', 'tablet'];

/** @param {string} name */
async function bundled(name) {
  if (SERVED.includes(name)) await bundle('serve');
  const outfile = join(ROOT, 'dist', 'bench', `${name}.mjs`);
  mkdirSync(dirname(outfile), { recursive: true });
  await build({
    absWorkingDir: ROOT,
    entryPoints: [join('bench', `${name}.ts`)],
    outfile,
    bundle: true,
    platform: 'node',
    external: ['@playwright/test', 'esbuild', 'libsql'],
    format: 'esm',
    target: 'node20.19',
    sourcemap: 'linked',
    banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
    logLevel: 'error',
  });
  return outfile;
}

/**
 * One process; its last line is the report.
 * @param {string} file
 * @param {number} round
 * @returns {Report}
 */
function once(file, round) {
  const env = { ...process.env, BENCH_ORDER: round % 2 === 0 ? 'forward' : 'backward' };
  const done = spawnSync(process.execPath, [file], {
    cwd: ROOT,
    encoding: 'utf8',
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (done.status !== 0) throw new Error(`${file} ended with ${done.status ?? done.signal}`);
  return /** @type {Report} */ (JSON.parse(done.stdout.trim().split('\n').at(-1) ?? ''));
}

/** @param {readonly number[]} values @param {number} share */
const quantile = (values, share) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
};

/** @param {number} value */
const shown = (value) =>
  Number.isInteger(value) ? String(value) : value >= 100 ? value.toFixed(0) : value.toPrecision(3);

/** @param {readonly Report[]} reports */
function table(reports) {
  const names = [...new Set(reports.flatMap(({ rows }) => rows.map(({ name }) => name)))];
  return names.map((name) => {
    const rows = reports.flatMap((report) => report.rows.filter((row) => row.name === name));
    const all = rows.flatMap(({ samples }) => samples);
    const { unit = '', goal = '', note = '' } = rows[0] ?? {};
    const median = quantile(
      rows.map(({ samples }) => quantile(samples, 0.5)),
      0.5,
    );
    const [least, p95] = all.length > 1 ? [shown(Math.min(...all)), shown(quantile(all, 0.95))] : ['', ''];
    return [name, shown(median), least, p95, unit, String(all.length), goal, note];
  });
}

/** @param {readonly (readonly string[])[]} lines */
function print(lines) {
  const head = ['what', 'median', 'least', 'p95', 'unit', 'samples', 'goal', 'note'];
  console.log(`| ${head.join(' | ')} |\n|${head.map(() => '---').join('|')}|`);
  for (const line of lines) console.log(`| ${line.join(' | ')} |`);
}

/** @param {string} name @param {number} runs */
async function bench(name, runs) {
  const file = await bundled(name);
  const busy = loadavg()[0] ?? 0;
  /** @type {Report[]} */
  const reports = [];
  for (let round = 0; round < runs; round += 1) reports.push(once(file, round));
  console.log(
    `\n## ${name} (${runs} fresh process${runs === 1 ? '' : 'es'}, load before ${busy.toFixed(1)})\n`,
  );
  const missing = reports.find((report) => report.missing)?.missing;
  if (missing) console.log(`Not run: ${missing}`);
  print(table(reports));
  for (const note of new Set(reports.flatMap(({ notes }) => notes))) console.log(`\n${note}`);
}

async function main() {
  const flags = process.argv.slice(2);
  const asked = flags.filter((flag) => !flag.startsWith('--'));
  const runs = Number(flags.find((flag) => flag.startsWith('--runs='))?.slice(7) ?? 0);
  const unknown = asked.filter((name) => !(name in BENCHES));
  if (unknown.length > 0)
    throw new Error(`no bench ${unknown.join(', ')}; there are ${Object.keys(BENCHES).join(', ')}`);
  const cores = availableParallelism();
  console.log(`Node ${process.version}, ${process.platform} ${process.arch}, ${cores} cores`);
  const load = loadavg()[0] ?? 0;
  if (load > cores / 2)
    console.log(`Warning: load average ${load.toFixed(1)} on ${cores} cores: read ratios, not times.`);
  for (const [name, usual] of Object.entries(BENCHES)) {
    if (asked.length === 0 || asked.includes(name)) await bench(name, runs || usual);
  }
}

await main();
