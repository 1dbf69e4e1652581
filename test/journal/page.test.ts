// docs/journal.md names every code that a program can meet, and only commands that there are.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MOST_TEXT } from '../../src/journal/entry.ts';
import { FAILURES, REFUSALS } from '../../src/journal/problems.ts';
import { FLAWS } from '../../src/journal/verify.ts';
import { run } from '../cli/run.ts';

const TEXT = readFileSync('docs/journal.md', 'utf8');

/** First cells of the table that stands under a heading. */
function codesUnder(heading: string): readonly string[] {
  const part = TEXT.split(/^## /m).find((one) => one.startsWith(heading)) ?? '';
  return [...part.matchAll(/^\| `([a-z-]+)` \|/gm)].map((found) => found[1] ?? '');
}

test('every refusal and every flaw is in its table, in order', () => {
  expect(codesUnder('What append refuses')).toEqual(REFUSALS);
  expect(codesUnder('What verify finds')).toEqual(FLAWS);
});

test('every failure is named', () => {
  for (const code of FAILURES) expect(TEXT).toContain(`\`${code}\``);
});

test('the longest entry is the one that is kept', () => {
  expect(TEXT).toContain(`${MOST_TEXT.toLocaleString('en')} characters`);
});

test('its commands and options are the program’s', async () => {
  const commands = [...TEXT.matchAll(/^\$ \.\/doffline journal ([a-z]+)(.*)$/gm)];
  expect(commands.length).toBeGreaterThan(3);
  for (const [, command = '', rest = ''] of commands) {
    const help = await run(['journal', command, '--help']);
    expect([command, help.status]).toEqual([command, 0]);
    for (const [option] of rest.matchAll(/--[a-z]+/g)) expect(help.out).toContain(option);
  }
});
