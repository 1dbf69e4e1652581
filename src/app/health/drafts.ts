// What is typed on this page, and what it makes: the request for a reading, a record; or what is missing, in words. And a
// record's content as lines to be read.
import { type HealthRecord, healthRecord } from '../../api/shapes/health.ts';
import type { Plain, PlainObject } from '../../journal/canonical.ts';
import { READING_REASONS } from '../../journal/kinds/unit.ts';
import { personId } from '../../journal/kinds/values.ts';
import { slugOf } from '../../versions/naming.ts';
import type { HealthReading } from './model.ts';

export const WHICHES = ['person', 'number', 'all'] as const;
export type Which = (typeof WHICHES)[number];

export interface Asked {
  readonly why: string;
  readonly which: Which;
  readonly person: string;
  readonly number: string;
}

export const NOTHING_ASKED: Asked = { why: '', which: 'person', person: '', number: '' };

const whole = (typed: string): number | undefined =>
  /^[1-9]\d{0,9}$/.test(typed.trim()) ? Number(typed) : undefined;

const PERSON_MISSING = 'Say whose: choose somebody, or type their id, p- and letters and digits.';
const isPerson = (typed: string): boolean => personId.safeParse(typed.trim()).success;

/** The body of a request; or what is missing. */
export function readingOf({ why, which, person, number }: Asked): HealthReading | string {
  const reason = READING_REASONS.find((one) => one === why);
  if (reason === undefined) return 'Choose a reason: the journal keeps it.';
  if (which === 'all') return { why: reason };
  if (which === 'person') return isPerson(person) ? { why: reason, person: person.trim() } : PERSON_MISSING;
  const from = whole(number);
  return from === undefined
    ? 'Give the number of the record: a whole number from 1.'
    : { why: reason, from, most: 1 };
}

export interface Line {
  /** Stays while lines come and go. */
  readonly key: number;
  readonly name: string;
  readonly value: string;
}

export interface Draft {
  readonly person: string;
  readonly form: string;
  readonly version: string;
  readonly lines: readonly Line[];
}

export const EMPTY_DRAFT: Draft = {
  person: '',
  form: '',
  version: '1',
  lines: [{ key: 1, name: '', value: '' }],
};

export const withLine = (draft: Draft): Draft => ({
  ...draft,
  lines: [
    ...draft.lines,
    { key: Math.max(0, ...draft.lines.map(({ key }) => key)) + 1, name: '', value: '' },
  ],
});

export const lineChanged = (draft: Draft, key: number, change: Partial<Line>): Draft => ({
  ...draft,
  lines: draft.lines.map((line) => (line.key === key ? { ...line, ...change } : line)),
});

export const withoutLine = (draft: Draft, key: number): Draft => ({
  ...draft,
  lines: draft.lines.filter((line) => line.key !== key),
});

/** What is wrong with the lines. Which line is said by its place, never by what stands in it. */
function faultInLines(lines: readonly Line[]): string | undefined {
  const names = lines.map(({ name }) => name.trim());
  const nameless = names.indexOf('');
  if (nameless >= 0) return `Say what line ${nameless + 1} records.`;
  const blank = lines.findIndex(({ value }) => value.trim() === '');
  if (blank >= 0) return `Line ${blank + 1} has nothing to be kept. Fill it in or take it out.`;
  const twice = names.findIndex((name, at) => names.indexOf(name) < at);
  return twice < 0
    ? undefined
    : `Lines ${names.indexOf(names[twice] ?? '') + 1} and ${twice + 1} have the same name. Name one otherwise.`;
}

/** The record as it is sent; or what is missing. Every value is kept as the text that was typed. */
export function recordOf({ person, form, version, lines }: Draft): HealthRecord | string {
  if (!isPerson(person)) return PERSON_MISSING;
  if (slugOf(form) === '') return 'Say what the record is, in letters or digits.';
  const edition = whole(version);
  if (edition === undefined) return 'The version of the form is a whole number from 1.';
  if (lines.length === 0) return 'Add a line: there is nothing to be kept.';
  const fault = faultInLines(lines);
  if (fault !== undefined) return fault;
  const record = Object.fromEntries(lines.map(({ name, value }) => [name.trim(), value.trim()]));
  const made = { person: person.trim(), form: slugOf(form), version: edition, record };
  const read = healthRecord.safeParse(made);
  return read.success ? read.data : 'The name of what it is is too long.';
}

export interface Told {
  readonly name: string;
  readonly text: string;
}

const textOf = (value: string | number | boolean | null): string =>
  value === null ? 'nothing' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);

function told(name: string, value: Plain): readonly Told[] {
  if (value === null || typeof value !== 'object') return [{ name, text: textOf(value) }];
  const inner: readonly (readonly [string, Plain])[] = Array.isArray(value)
    ? (value as readonly Plain[]).map((one, at) => [String(at + 1), one] as const)
    : Object.entries(value as PlainObject);
  if (inner.length === 0) return [{ name, text: 'nothing' }];
  return inner.flatMap(([key, one]) => told(`${name}, ${key}`, one));
}

/** A record's content, line by line; what lies deeper is named by the way to it. */
export const linesOf = (record: PlainObject): readonly Told[] =>
  Object.entries(record).flatMap(([name, value]) => told(name, value));
