// Reads the test runners' own reports, so that the totals are theirs and not guessed from what they print.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ROOT } from './install.mjs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Totals */

/**
 * Where a runner writes its report. An older one is removed, so that a runner that dies leaves none.
 * @param {string} name
 */
export function freshReport(name) {
  const file = join(ROOT, '.cache', 'reports', `${name}.json`);
  mkdirSync(dirname(file), { recursive: true });
  rmSync(file, { force: true });
  return file;
}

/**
 * @param {string} file
 * @returns {unknown}
 */
function readJson(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
}

/**
 * A test file that could not even be loaded holds no test; it counts as one failure, or the total would look green.
 * @param {string} file
 * @returns {Totals | undefined} undefined when there is no report
 */
export function vitestTotals(file) {
  const report =
    /** @type {undefined | { numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }} */ (
      readJson(file)
    );
  if (report === undefined) return undefined;
  const unloaded = report.testResults.filter(
    (one) => one.status === 'failed' && !one.assertionResults.some((test) => test.status === 'failed'),
  );
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/** @typedef {{ status: string, fullName: string, failureMessages?: string[] }} VitestTest */

/**
 * @param {string} file
 * @returns {VitestTest[]}
 */
function vitestTests(file) {
  const report = /** @type {undefined | { testResults: { assertionResults: VitestTest[] }[] }} */ (
    readJson(file)
  );
  return report?.testResults.flatMap((one) => one.assertionResults) ?? [];
}

/**
 * Names of the tests that were skipped, so that none is left out in silence.
 * @param {string} file
 * @returns {readonly string[]}
 */
export function skippedNames(file) {
  return vitestTests(file)
    .filter(({ status }) => !['passed', 'failed'].includes(status))
    .map(({ fullName }) => fullName);
}

/**
 * Each failed test with the first line of what it said. They are told again at the end of a run, where somebody who is shown
 * only the last lines still finds them.
 * @param {string} file
 * @returns {readonly string[]}
 */
export function vitestFailures(file) {
  return vitestTests(file)
    .filter(({ status }) => status === 'failed')
    .map(({ fullName, failureMessages }) => named(fullName, failureMessages?.[0]));
}

/**
 * @param {string} name
 * @param {string} [message]
 */
function named(name, message = '') {
  return `${name}: ${message.split('\n')[0]?.slice(0, 300) ?? ''}`;
}

/**
 * @param {string} file
 * @returns {Totals | undefined} undefined when there is no report
 */
export function playwrightTotals(file) {
  const report =
    /** @type {undefined | { stats: { expected: number, unexpected: number, flaky: number, skipped: number }, errors: unknown[] }} */ (
      readJson(file)
    );
  if (report === undefined) return undefined;
  const { expected, unexpected, flaky, skipped } = report.stats;
  const broken = unexpected + flaky === 0 && report.errors.length > 0 ? 1 : 0;
  return { passed: expected, failed: unexpected + flaky + broken, skipped };
}

/**
 * @typedef {{ ok: boolean, tests: { projectName: string, results: { error?: { message?: string } }[] }[], title: string }} Spec
 * @typedef {{ title: string, specs?: Spec[], suites?: Suite[] }} Suite
 */

/**
 * As {@link vitestFailures}.
 * @param {string} file
 * @returns {readonly string[]}
 */
export function playwrightFailures(file) {
  const report = /** @type {undefined | { suites: Suite[] }} */ (readJson(file));
  return report?.suites.flatMap(failuresOf) ?? [];
}

/**
 * @param {Suite} suite
 * @returns {readonly string[]}
 */
function failuresOf({ title, specs = [], suites = [] }) {
  const failed = specs
    .filter(({ ok }) => !ok)
    .flatMap((spec) =>
      spec.tests.map(({ projectName, results }) =>
        named(`${title} > ${spec.title} (${projectName})`, results.at(-1)?.error?.message),
      ),
    );
  return [...failed, ...suites.flatMap(failuresOf)];
}
