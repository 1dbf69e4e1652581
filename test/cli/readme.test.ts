// The README's own commands: each is one that the program has, on files that are there, and the quick ones are run.
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { run } from './run.ts';

const TEXT = readFileSync('README.md', 'utf8');
const COMMANDS = [...TEXT.matchAll(/^\.\/doffline (.+)$/gm)].map((found) => (found[1] ?? '').split(' '));
/** A search takes its time and a print writes a file: their help must do. */
const RUN = new Set(['check', 'explain', 'compare', 'cost']);

test('there are commands', () => {
  expect(COMMANDS.length).toBeGreaterThan(3);
});

describe.each(COMMANDS.map((words) => [words.join(' '), words] as const))('./doffline %s', (_, words) => {
  const [command = ''] = words;

  test('is a command on files that are there', async () => {
    for (const path of words.filter((word) => word.includes('/'))) expect(existsSync(path)).toBe(true);
    const help = await run([command, '--help']);
    expect(help.status).toBe(0);
    expect(help.out + help.err).toContain(`doffline ${command}`);
  });
});

test.each(
  COMMANDS.filter(([command = '']) => RUN.has(command)).map((words) => [words.join(' '), words] as const),
)('./doffline %s can be run as it stands', async (_, words) => {
  const { status, out } = await run(words);
  expect([0, 1]).toContain(status);
  expect(out).not.toBe('');
});

test('every page it links to is there', () => {
  const links = [...TEXT.matchAll(/\]\(([^)#]+)\)/g)].map((found) => found[1] ?? '');
  expect(links.length).toBeGreaterThan(5);
  for (const link of links) expect(existsSync(link), link).toBe(true);
});
