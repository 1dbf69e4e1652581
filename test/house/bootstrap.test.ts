// What stands between a fresh clone and a running program: the command's first start, when it builds again, and how
// the totals of npm test are made. Run on a small copy of the house with a command line of its own.
import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { isFresh } from '../../scripts/bundle.mjs';
import { isInstalled } from '../../scripts/install.mjs';
import {
  playwrightFailures,
  playwrightTotals,
  skippedNames,
  vitestFailures,
  vitestTotals,
} from '../../scripts/reports.mjs';
import { ROOT } from './imports.ts';

const house = mkdtempSync(join(tmpdir(), 'clone-'));
const inHouse = (path: string): string => join(house, path);

function write(path: string, text: string): void {
  mkdirSync(join(inHouse(path), '..'), { recursive: true });
  writeFileSync(inHouse(path), text);
}

/** Sets a file's time to `seconds` from now, so that no test waits for a clock. */
function date(path: string, seconds: number): void {
  const time = Date.now() / 1000 + seconds;
  utimesSync(inHouse(path), time, time);
}

const doffline = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, [inHouse('doffline'), ...args], { cwd: tmpdir(), encoding: 'utf8', input });

const MAIN = `
import { text } from './text.ts';
import { readFileSync } from 'node:fs';
const given: string = readFileSync(0, 'utf8');
console.log(text, JSON.stringify(process.argv.slice(2)), given);
console.error('a word aside');
process.exitCode = 3;
`;

beforeAll(() => {
  for (const name of ['package.json', 'package-lock.json', 'doffline'])
    copyFileSync(join(ROOT, name), inHouse(name));
  cpSync(join(ROOT, 'scripts'), inHouse('scripts'), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), inHouse('node_modules'));
  write('src/cli/text.ts', "export const text: string = 'first';\n");
  write('src/cli/main.ts', MAIN);
});

afterAll(() => rmSync(house, { recursive: true }));

describe('./doffline', () => {
  test('builds itself on first use, from any folder, and passes everything through', () => {
    const { status, stdout, stderr } = doffline(['check', 'two words', '--x=1'], 'from stdin');
    expect(stdout).toBe('first ["check","two words","--x=1"] from stdin\n');
    expect(stderr).toBe('a word aside\n');
    expect(status).toBe(3);
    expect(existsSync(inHouse('dist/cli.js'))).toBe(true);
  });

  test('is not built again while no source is newer', () => {
    for (const path of ['src/cli/text.ts', 'src/cli/main.ts', 'src/cli', 'src', 'package-lock.json'])
      date(path, -60);
    const before = statSync(inHouse('dist/cli.js')).mtimeMs;
    expect(isFresh('cli', house)).toBe(true);
    doffline([]);
    expect(statSync(inHouse('dist/cli.js')).mtimeMs).toBe(before);
  });

  test('is built again when a source has changed', () => {
    write('src/cli/text.ts', "export const text: string = 'second';\n");
    date('src/cli/text.ts', 1);
    expect(isFresh('cli', house)).toBe(false);
    expect(doffline([]).stdout).toMatch(/^second /);
  });

  test('a change of the page does not make it stale', () => {
    for (const path of ['src/cli/text.ts', 'src/cli', 'src', 'package-lock.json']) date(path, -60);
    write('src/app/page.ts', 'export {};\n');
    date('src', -60);
    expect(isFresh('cli', house)).toBe(true);
  });

  test('a source that does not compile is named on stderr, with nothing on stdout', () => {
    write('src/cli/text.ts', 'export const text = ;\n');
    date('src/cli/text.ts', 2);
    const { status, stdout, stderr } = doffline([]);
    expect(status).toBe(70);
    expect(stdout).toBe('');
    expect(stderr).toContain('src/cli/text.ts:1');
  });
});

describe('installed packages', () => {
  const lock = (version: string) =>
    JSON.stringify({
      packages: { '': {}, 'node_modules/a': { version }, 'node_modules/b': { version: '1', optional: true } },
    });

  test('are current when no lock is newer, or when the newer lock asks for the same versions', () => {
    write('one/package-lock.json', lock('1.0.0'));
    expect(isInstalled(inHouse('one'))).toBe(false);
    write(
      'one/node_modules/.package-lock.json',
      JSON.stringify({ packages: { 'node_modules/a': { version: '1.0.0' } } }),
    );
    date('one/package-lock.json', 60);
    expect(isInstalled(inHouse('one'))).toBe(true);
    write('one/package-lock.json', lock('1.0.1'));
    date('one/package-lock.json', 60);
    expect(isInstalled(inHouse('one'))).toBe(false);
  });
});

describe('totals', () => {
  const report = (value: unknown): string => {
    write('report.json', JSON.stringify(value));
    return inHouse('report.json');
  };

  test('a test file that could not be loaded counts as a failure', () => {
    const file = report({
      numPassedTests: 5,
      numFailedTests: 1,
      numPendingTests: 2,
      numTodoTests: 0,
      testResults: [
        { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] },
        { status: 'failed', assertionResults: [] },
        { status: 'passed', assertionResults: [{ status: 'passed' }] },
      ],
    });
    expect(vitestTotals(file)).toEqual({ passed: 5, failed: 2, skipped: 2 });
  });

  test('a browser test that passed only when tried again has failed', () => {
    const stats = { expected: 7, unexpected: 1, flaky: 1, skipped: 3 };
    expect(playwrightTotals(report({ stats, errors: [] }))).toEqual({ passed: 7, failed: 2, skipped: 3 });
  });

  test('browser tests that broke before the first one count as a failure', () => {
    const stats = { expected: 0, unexpected: 0, flaky: 0, skipped: 0 };
    expect(playwrightTotals(report({ stats, errors: [{}] }))).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  test('a skipped test is named', () => {
    const assertionResults = [
      { status: 'passed', fullName: 'one' },
      { status: 'skipped', fullName: 'two' },
      { status: 'pending', fullName: 'three' },
    ];
    expect(skippedNames(report({ testResults: [{ status: 'passed', assertionResults }] }))).toEqual([
      'two',
      'three',
    ]);
    expect(skippedNames(inHouse('none.json'))).toEqual([]);
  });

  test('a failed test is named, with the first line of what it said', () => {
    const assertionResults = [
      { status: 'passed', fullName: 'one' },
      { status: 'failed', fullName: 'two', failureMessages: ['not 3\n  at line 9'] },
      { status: 'failed', fullName: 'three' },
    ];
    expect(vitestFailures(report({ testResults: [{ status: 'failed', assertionResults }] }))).toEqual([
      'two: not 3',
      'three: ',
    ]);
    const run = (message: string) => ({ projectName: 'desk', results: [{ error: { message } }] });
    const specs = [
      { title: 'opens', ok: true, tests: [{ projectName: 'desk', results: [{}] }] },
      { title: 'closes', ok: false, tests: [run('still open\nat once')] },
    ];
    const suites = [{ title: 'door.spec.ts', specs: [], suites: [{ title: 'door', specs }] }];
    expect(playwrightFailures(report({ suites }))).toEqual(['door > closes (desk): still open']);
    expect(vitestFailures(inHouse('none.json'))).toEqual([]);
    expect(playwrightFailures(inHouse('none.json'))).toEqual([]);
  });

  test('no report is no total', () => {
    expect(vitestTotals(inHouse('none.json'))).toBeUndefined();
    expect(playwrightTotals(inHouse('none.json'))).toBeUndefined();
  });
});
