// The samples of docs/command-line.md, run as they stand there. `...` stands for any lines; `$ echo $?` is the status of
// the command before it.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../src/words/index.ts';
import { run } from './run.ts';

const TEXT = readFileSync('docs/command-line.md', 'utf8');
const BLOCKS = [...TEXT.matchAll(/```console\n([\s\S]*?)```/g)].map((found) => found[1] ?? '');

interface Sample {
  readonly command: string;
  readonly expected: string;
  /** Expected status, where the document shows it. */
  readonly status: number | undefined;
}

function samplesIn(block: string): readonly Sample[] {
  const parts = block.split(/^\$ /m).slice(1);
  return parts.flatMap((part, index) => {
    const [command = '', ...lines] = part.split('\n');
    if (command === 'echo $?') return [];
    const next = parts[index + 1] ?? '';
    const status = next.startsWith('echo $?') ? Number(next.split('\n')[1]) : undefined;
    return [{ command, expected: lines.join('\n'), status }];
  });
}

const SAMPLES = BLOCKS.flatMap(samplesIn);

const asPattern = (expected: string): RegExp =>
  new RegExp(
    `^${expected
      .split(/^\.\.\.\n/m)
      .map((part) => part.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'))
      .join('(?:.*\\n)*?')}$`,
  );

test('there are samples', () => {
  expect(SAMPLES.length).toBeGreaterThan(5);
});

describe.each(SAMPLES)('$command', ({ command, expected, status }) => {
  test('prints what the document shows', async () => {
    const [program, ...args] = command.split(' ');
    expect(program).toBe('doffline');
    const ran = await run(args);
    expect(ran.err + ran.out).toMatch(asPattern(expected));
    if (status !== undefined) expect(ran.status).toBe(status);
  });
});

test('the document carries the first, the second and the last caution', () => {
  const flat = TEXT.replaceAll(/\s+/g, ' ');
  expect(flat).toContain(CAUTIONS[0]);
  expect(flat).toContain('does not mean that a procedure is safe');
  expect(flat).toContain(CAUTIONS[3]);
});
