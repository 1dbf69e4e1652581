// The real command from a shell: the bundle, the streams and the exit status that the in-process tests take on trust.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { gloves } from './run.ts';

const COMMAND = join(process.cwd(), 'doffline');

const shell = (args: readonly string[], input = '', env: Readonly<Record<string, string>> = {}) =>
  spawnSync(COMMAND, [...args], { encoding: 'utf8', input, env: { ...process.env, ...env } });

test('--version', () => {
  const manifest: unknown = JSON.parse(readFileSync('package.json', 'utf8'));
  expect(manifest).toMatchObject({ version: shell(['--version']).stdout.trim() });
});

test('standard input, a pipe without colour, status 0', () => {
  const { status, stdout, stderr } = shell(['check', '-'], gloves(), { FORCE_COLOR: '1' });
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('Gloves only (invented)');
  expect(stdout).not.toContain(String.fromCodePoint(27));
});

test('an unknown command ends with 2', () => {
  const { status, stdout, stderr } = shell(['inspect']);
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain("unknown command 'inspect'");
});

test('a reader that stops early ends it quietly', () => {
  const { stdout, stderr } = spawnSync(
    'bash',
    ['-c', './doffline check --json procedures/everyday-example-1-doffing.yaml | head -c 20'],
    { encoding: 'utf8' },
  );
  expect(stdout).toHaveLength(20);
  expect(stderr).toBe('');
});
