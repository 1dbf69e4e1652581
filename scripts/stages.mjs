// The stages of `npm test`, each a name and a function. A check that looked at nothing has failed: every tool here
// has been seen to say "no problems" about zero files.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { whyNoBrowser } from './browser.mjs';
import { ROOT } from './install.mjs';
import { NODES, otherNode, whyNoOtherNode, withNode } from './nodes.mjs';
import {
  freshReport,
  playwrightFailures,
  playwrightTotals,
  skippedNames,
  vitestFailures,
  vitestTotals,
} from './reports.mjs';
import { fetchPdfTools } from './pdfTools.mjs';
import { fetchPostgres } from './postgres.mjs';
import { bin, run } from './run.mjs';

/** @typedef {import('./reports.mjs').Totals} Totals */
/** @typedef {{ status: 'passed' | 'failed' | 'skipped', note?: string, tests?: Totals, failures?: readonly string[] }} Outcome */
/** @typedef {{ name: string, run: () => Promise<Outcome> }} Stage */

/**
 * @param {import('./run.mjs').Run} done
 * @param {RegExp} looked finds the number of files that the tool says it looked at
 * @returns {Outcome}
 */
function judged(done, looked) {
  if (done.timedOut) return { status: 'failed', note: 'took too long and was ended' };
  if (done.status !== 0) return { status: 'failed' };
  const files = Number(looked.exec(done.output)?.[1] ?? 0);
  return files > 0
    ? { status: 'passed', note: `${files} files` }
    : { status: 'failed', note: 'looked at no file' };
}

/**
 * @param {import('./run.mjs').Run} done
 * @param {Totals | undefined} tests
 * @param {readonly string[]} failures
 * @returns {Outcome}
 */
function tested(done, tests, failures) {
  if (tests === undefined) {
    return {
      status: 'failed',
      note: done.timedOut ? 'took too long and was ended' : 'died without a report',
      tests: { passed: 0, failed: 1, skipped: 0 },
    };
  }
  const note = `${tests.passed} passed, ${tests.failed} failed, ${tests.skipped} skipped`;
  const green = done.status === 0 && tests.failed === 0 && tests.passed > 0;
  return { status: green ? 'passed' : 'failed', note, tests, failures };
}

/** @param {string} name */
const tsc = (name) => ({
  name: `types: ${name}`,
  /** @returns {Promise<Outcome>} */
  run: async () => {
    const done = await run(bin('tsc'), ['-p', `tsconfig.${name}.json`, '--pretty', 'false']);
    // TypeScript itself refuses a project without files; until a folder exists that is no fault.
    if (done.output.includes('error TS18003')) return { status: 'skipped', note: 'no files yet' };
    return { status: done.status === 0 ? 'passed' : 'failed' };
  },
});

/** @type {readonly Stage[]} */
export const CHECKS = [
  {
    name: 'format and lint (biome)',
    run: async () =>
      judged(
        await run(bin('biome'), ['check', '--colors=off', '--error-on-warnings', '.']),
        /Checked (\d+) files?/,
      ),
  },
  {
    name: 'lint with types (oxlint)',
    run: async () => judged(await run(bin('oxlint'), ['--deny-warnings']), /on (\d+) files?/),
  },
  tsc('core'),
  tsc('node'),
  tsc('app'),
  tsc('browser'),
  {
    name: 'dead code (knip)',
    run: async () => ({ status: (await run(bin('knip'), [])).status === 0 ? 'passed' : 'failed' }),
  },
];

/**
 * @param {string} report
 * @param {string} program
 * @param {Record<string, string>} env
 * @param {readonly string[]} folders of tests; all when there is none
 */
async function vitest(report, program, env, folders = []) {
  const file = freshReport(report);
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--reporter=default', '--reporter=json'];
  const done = await run(program, [...args, ...folders, `--outputFile.json=${file}`], { minutes: 12, env });
  for (const name of skippedNames(file)) console.log(`skipped: ${name}`);
  return tested(done, vitestTotals(file), vitestFailures(file));
}

/**
 * What another Node could break: native modules, files, sockets, processes; and the whole check, held to what is published. The
 * rest (the page, prints, long searches, laws tried on thousands of procedures) does not touch it and would double the time of
 * the whole run.
 */
const ON_EVERY_NODE = ['cli', 'journal', 'published', 'server', 'sync'].map((folder) => `test/${folder}/`);

/** @type {Stage} */
const unitTests = {
  name: 'unit tests (vitest)',
  run: async () => {
    await fetchPdfTools();
    await fetchPostgres();
    return vitest('vitest', process.execPath, {});
  },
};

/** @type {Stage} */
const build = {
  name: 'build',
  run: async () => {
    const done = await run(process.execPath, ['scripts/build.mjs']);
    return { status: done.status === 0 ? 'passed' : 'failed' };
  },
};

/** @returns {Promise<Outcome>} */
async function browserTests() {
  if (process.env.DOFFLINE_WITHOUT_BROWSER === '1') {
    return { status: 'skipped', note: 'DOFFLINE_WITHOUT_BROWSER=1 was set' };
  }
  const why = await whyNoBrowser();
  if (why !== undefined) {
    return { status: 'failed', note: `not run: ${why}. DOFFLINE_WITHOUT_BROWSER=1 goes without` };
  }
  const folder = join(ROOT, 'test/browser');
  if (!existsSync(folder) || !readdirSync(folder).some((name) => name.includes('.spec.'))) {
    return { status: 'failed', note: 'test/browser holds no test' };
  }
  const file = freshReport('playwright');
  const done = await run(bin('playwright'), ['test'], {
    minutes: 20,
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  });
  return tested(done, playwrightTotals(file), playwrightFailures(file));
}

/**
 * @param {string} name
 * @param {string} version
 * @returns {Stage}
 */
const onNode = (name, version) => ({
  name,
  run: async () => {
    const why = whyNoOtherNode();
    if (why !== undefined) return { status: 'skipped', note: why };
    const program = await otherNode(version);
    const report = name.replace(' ', '-').toLowerCase();
    const { status, note, failures = [] } = await vitest(report, program, withNode(program), ON_EVERY_NODE);
    // The same tests again: they can fail the run, but are not counted twice.
    return { status, note: note ?? ON_EVERY_NODE.join(', '), failures };
  },
});

/** @type {readonly Stage[]} */
export const STAGES = [
  ...CHECKS,
  unitTests,
  build,
  { name: 'browser tests (playwright)', run: browserTests },
  ...(process.env.CI === 'true' ? Object.entries(NODES).map(([name, version]) => onNode(name, version)) : []),
];
