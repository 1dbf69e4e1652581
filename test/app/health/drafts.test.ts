// What is typed on the page of health records: nothing is sent before it is whole, and what is sent is what the server takes.
import { describe, expect, test } from 'vitest';
import { healthReading, healthRecord } from '../../../src/api/shapes/health.ts';
import { READING_REASONS } from '../../../src/journal/kinds/unit.ts';
import { REASONS } from '../../../src/app/health/labels.ts';
import {
  type Draft,
  EMPTY_DRAFT,
  lineChanged,
  linesOf,
  NOTHING_ASKED,
  readingOf,
  recordOf,
  withLine,
  withoutLine,
} from '../../../src/app/health/drafts.ts';

const ASKED = { ...NOTHING_ASKED, why: 'follow-up' };

describe('a reading', () => {
  test('is not asked for without a reason, however much else is said', () => {
    expect(readingOf({ ...NOTHING_ASKED, which: 'all' })).toMatch(/Choose a reason/);
    expect(readingOf({ ...ASKED, which: 'all', why: 'curiosity' })).toMatch(/Choose a reason/);
  });

  test('has every reason that the journal knows', () => {
    expect(Object.keys(REASONS)).toEqual(READING_REASONS);
    for (const why of READING_REASONS) expect(readingOf({ ...ASKED, which: 'all', why })).toEqual({ why });
  });

  test('is of one person where nothing else is chosen, and never of all by leaving the person out', () => {
    expect(readingOf({ ...ASKED, person: ' p-3k7m ' })).toEqual({ why: 'follow-up', person: 'p-3k7m' });
    for (const person of ['', 'Ada Invented', 'p-', 'P-3K7M', 'p-3k 7m'])
      expect(readingOf({ ...ASKED, person })).toMatch(/Say whose/);
  });

  test('of one record asks for that one alone, whatever stands in the field that is not shown', () => {
    const one = readingOf({ ...ASKED, which: 'number', number: ' 7', person: 'p-3k7m' });
    expect(one).toEqual({ why: 'follow-up', from: 7, most: 1 });
    expect(healthReading.safeParse(one).success).toBe(true);
    for (const number of ['', '0', '-1', '1.5', 'one', '7 8', '99999999999'])
      expect(readingOf({ ...ASKED, which: 'number', number })).toMatch(/whole number/);
  });
});

const DRAFT: Draft = {
  person: 'p-3k7m',
  form: 'Follow-up day',
  version: '1',
  lines: [
    { key: 1, name: 'Day', value: '4' },
    { key: 2, name: 'Note', value: ' Shivers.\nSince noon. ' },
  ],
};

describe('a record', () => {
  test('is what was typed, as text, in the form that the server takes', () => {
    const made = recordOf(DRAFT);
    expect(made).toEqual({
      person: 'p-3k7m',
      form: 'follow-up-day',
      version: 1,
      record: { Day: '4', Note: 'Shivers.\nSince noon.' },
    });
    expect(healthRecord.safeParse(made).success).toBe(true);
  });

  test.each([
    ['whose', { person: 'Ada' }, /Say whose/],
    ['what', { form: ' – ' }, /what the record is/],
    ['the version', { version: '0' }, /version of the form/],
    ['a line', { lines: [] }, /Add a line/],
    ['a name', { lines: [DRAFT.lines[0]!, { key: 2, name: ' ', value: 'x' }] }, /line 2 records/],
    ['a value', { lines: [{ key: 1, name: 'SECRET', value: ' ' }] }, /Line 1 has nothing/],
    [
      'another name',
      { lines: [DRAFT.lines[0]!, { key: 2, name: 'Day ', value: 'x' }] },
      /Lines 1 and 2 .*same name/,
    ],
  ])('lacks %s: said by its place, never by what stands there', (_, change, says) => {
    const missing = recordOf({ ...DRAFT, ...change });
    expect(missing).toMatch(says);
    expect(missing).not.toMatch(/SECRET|Ada/);
  });

  test('the empty one is not sent', () => expect(recordOf(EMPTY_DRAFT)).toBeTypeOf('string'));

  test('lines come, change and go, and no two have one key', () => {
    let draft = withLine(withLine(EMPTY_DRAFT));
    draft = withLine(withoutLine(draft, 2));
    expect(new Set(draft.lines.map(({ key }) => key)).size).toBe(3);
    draft = lineChanged(draft, 3, { name: 'Day' });
    expect(draft.lines.map(({ name }) => name)).toEqual(['', 'Day', '']);
    expect(withLine(withoutLine(EMPTY_DRAFT, 1)).lines).toHaveLength(1);
  });

  test('a line may be named as no object should be', () => {
    const made = recordOf({ ...DRAFT, lines: [{ key: 1, name: '__proto__', value: 'x' }] });
    expect(linesOf((made as { record: Record<string, string> }).record)).toEqual([
      { name: '__proto__', text: 'x' },
    ]);
  });
});

test('a content that another program wrote is read line by line, whatever is in it', () => {
  expect(
    linesOf({ day: 4, ill: false, left: null, at: { site: 'hand', side: ['left', 'right'] }, none: [] }),
  ).toEqual([
    { name: 'day', text: '4' },
    { name: 'ill', text: 'no' },
    { name: 'left', text: 'nothing' },
    { name: 'at, site', text: 'hand' },
    { name: 'at, side, 1', text: 'left' },
    { name: 'at, side, 2', text: 'right' },
    { name: 'none', text: 'nothing' },
  ]);
  expect(linesOf({})).toEqual([]);
});
