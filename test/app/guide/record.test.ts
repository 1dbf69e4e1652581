// The record of an exit for whoever takes it along: what the wearer answered at the end is of their health and stays out unless
// it is asked for; that something was told still stands out, so that nobody reads 'no deviation seen'.
import { expect, test } from 'vitest';
import type { Recorded } from '../../../src/app/guide/log/exits.ts';
import { recordLines } from '../../../src/app/guide/log/record.ts';
import { wordsFor } from '../../../src/words/index.ts';
import { scriptFor, SMALL } from '../../guide/support.ts';

const AT = '2026-11-25T12:00:00.000Z';
const answers: readonly Recorded[] = [
  { kind: 'exit.question-answered', body: { exit: 'x-1', question: 'tear', answer: 'no' }, at: AT, by: null },
  {
    kind: 'exit.question-answered',
    body: { exit: 'x-1', question: 'faint', answer: 'yes' },
    at: AT,
    by: null,
  },
];
const reader = { script: scriptFor(SMALL), words: wordsFor('en'), staff: {} };

test('a wearer’s answers are left out, and stand out all the same', () => {
  const lines = recordLines({ ...reader, answers: false }, answers);
  expect(lines.map(({ text }) => text).join(' ')).not.toMatch(/tear|faint|Yes|No\b/);
  expect(lines.map(({ stands }) => stands)).toEqual([false, true]);
});

test('they are told where somebody asks for them', () => {
  const lines = recordLines({ ...reader, answers: true }, answers);
  expect(lines.map(({ text }) => text)).toEqual(['Did anything tear? No', 'Did you feel faint or sick? Yes']);
});

test('an answer that this device is not told says so, and does not stand out', () => {
  const withheld = answers.map((one) => ({
    ...one,
    body: { ...one.body, answer: 'withheld' },
  })) as unknown as readonly Recorded[];
  const lines = recordLines({ ...reader, answers: true }, withheld);
  expect(lines.map(({ stands }) => stands)).toEqual([false, false]);
  expect(lines[0]?.text).toContain('not told the answer');
});

test('a time is told by what it is for and by its step or its emergency, never by an id', () => {
  const ended = (timer: string): Recorded => ({
    kind: 'exit.timer-ended',
    body: { exit: 'x-1', timer, how: 'cut-short', seconds: 0 },
    at: AT,
    by: null,
  });
  const timers = ['rub-rub', 'sharps-rinse', 'wear', 'a-step-of-another-way-rub'];
  const lines = recordLines({ ...reader, answers: false }, timers.map(ended));
  const label = wordsFor('en').stepLabel(SMALL, SMALL.steps[2]!);
  expect(lines.map(({ text }) => text)).toEqual([
    `Step 3, ${label}; Rub the hands: time was cut short, after 0 s`,
    'Needle or cut; Rinse: time was cut short, after 0 s',
    'Time in the suit: time was cut short, after 0 s',
    'Rub the hands: time was cut short, after 0 s',
  ]);
});
