// How long what people write may be: to the last character that is taken and the first that is not, the same for the reader and for
// the published schema; what is taken prints, is named on every page and is no longer than the journal takes.
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { headOf } from '../../src/app/model/head.ts';
import { asCopy } from '../../src/app/compose/model/draft.ts';
import { freeName, renamed } from '../../src/app/compose/model/names.ts';
import { freshId } from '../../src/check/edit.ts';
import { cutName, cutTo, LONGEST } from '../../src/domain/lengths.ts';
import { code, freeText, versionName } from '../../src/journal/kinds/values.ts';
import type { Plain } from '../../src/language/yaml.ts';
import { printProcedure, readProcedure } from '../../src/language/index.ts';
import { goodDoffing } from '../support/good.ts';

const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(
  JSON.parse(readFileSync('schema/procedure-1.json', 'utf8')) as object,
);

type Tree = { [key: string]: Plain | Tree | Tree[] };

/** A file in which everything that people write stands, as plain values: YAML reads JSON. */
const FILE = (): Tree => ({
  doffline: 1 as unknown as Plain,
  title: 'T',
  kind: 'doffing',
  version: '1',
  about: 'A',
  source: { title: 'T', publisher: 'P', year: 'Y', where: 'W', seen: 'S', memory: 'M', interpreted: 'I' },
  donning: 'd.yaml',
  people: { wearer: { wears: ['gown', 'gloves'] } },
  room: { zones: { ward: 'patient', out: 'doffing', desk: 'clean' } },
  start: [{ surface: 'wearer.gown.front', state: 'maybe', reason: 'R' }],
  steps: [{ id: 'off', do: 'remove', item: ['gown', 'gloves'], note: 'N' }],
  accepted: [{ finding: 'F', reason: 'R', by: 'B', date: '2026-01-01', review: '2026-02-01' }],
});

const FIELDS: readonly (readonly [path: string, longest: number])[] = [
  ['title', LONGEST.label],
  ['version', LONGEST.version],
  ['about', LONGEST.text],
  ['source.title', LONGEST.label],
  ['source.publisher', LONGEST.label],
  ['source.year', LONGEST.label],
  ['source.where', LONGEST.text],
  ['source.seen', LONGEST.text],
  ['source.memory', LONGEST.text],
  ['source.interpreted', LONGEST.text],
  ['donning', LONGEST.label],
  ['start.0.reason', LONGEST.note],
  ['steps.0.id', LONGEST.name],
  ['steps.0.note', LONGEST.note],
  ['accepted.0.finding', LONGEST.label],
  ['accepted.0.reason', LONGEST.text],
  ['accepted.0.by', LONGEST.label],
];

function written(path: string, text: string): string {
  const file = FILE();
  const keys = path.split('.');
  const last = keys.pop()!;
  const holder = keys.reduce<Tree>((at, key) => at[key] as Tree, file);
  holder[last] = text;
  return JSON.stringify(file);
}

const codes = (text: string): readonly string[] =>
  readProcedure(text).diagnostics.flatMap(({ code: of, severity }) => (severity === 'error' ? [of] : []));
const holds = (text: string): boolean => validate(JSON.parse(text));

describe.each(FIELDS)('%s', (path, longest) => {
  test(`is taken with ${longest} characters and no more, with its place and by how much`, () => {
    const fits = written(path, 'x'.repeat(longest));
    expect(codes(fits)).toEqual([]);
    expect(holds(fits)).toBe(true);
    for (const length of [longest + 1, 5000, 100_000]) {
      const long = written(path, 'x'.repeat(length));
      const { diagnostics, procedure } = readProcedure(long);
      expect(procedure).toBeUndefined();
      const [one, ...others] = diagnostics.filter(({ severity }) => severity === 'error');
      expect(others).toEqual([]);
      expect(one).toMatchObject({
        code: 'too-long',
        params: { name: path.split('.').at(-1), length, limit: longest, over: length - longest },
      });
      expect(one?.text.length).toBeLessThanOrEqual(80);
      expect(holds(long)).toBe(false);
    }
  });
});

test('names of people, fixtures and zones', () => {
  const named = (key: 'person' | 'zone' | 'fixture', name: string): string => {
    const file = FILE();
    if (key === 'person') file.people = { ...(file.people as Tree), [name]: { role: 'observer' } };
    if (key === 'zone')
      (file.room as Tree).zones = { ...((file.room as Tree).zones as Tree), [name]: 'clean' };
    if (key === 'fixture') (file.room as Tree).fixtures = { [name]: { kind: 'chair', zone: 'out' } };
    return JSON.stringify(file);
  };
  for (const [key, longest] of [
    ['person', LONGEST.name],
    ['fixture', LONGEST.name],
    ['zone', LONGEST.zone],
  ] as const) {
    expect(codes(named(key, 'n'.repeat(longest)))).toEqual([]);
    expect(holds(named(key, 'n'.repeat(longest)))).toBe(true);
    expect(codes(named(key, 'n'.repeat(longest + 1)))).toEqual(['too-long']);
    expect(holds(named(key, 'n'.repeat(longest + 1)))).toBe(false);
    expect(codes(named(key, '?'.repeat(longest)))).toEqual(['bad-name']);
  }
  // A step may go to the floor of the zone with the longest name.
  expect(`${'n'.repeat(LONGEST.zone)}-floor`).toHaveLength(LONGEST.name);
});

test('the journal takes all that a version says there', () => {
  expect(freeText.safeParse('x'.repeat(LONGEST.text)).success).toBe(true);
  expect(versionName.safeParse('x'.repeat(LONGEST.version)).success).toBe(true);
  for (const longest of [LONGEST.name, LONGEST.label])
    expect(code.safeParse('x'.repeat(longest)).success).toBe(true);
});

test('nobody makes a name or a title that the reader would refuse', () => {
  const good = goodDoffing();
  const name = 'n'.repeat(LONGEST.name);
  expect(freeName([name], name).length).toBeLessThanOrEqual(LONGEST.name);
  expect(freshId([], `rub-${name}`).length).toBeLessThanOrEqual(LONGEST.name);
  expect(cutName(`${'n'.repeat(LONGEST.name - 1)}-x`)).toBe('n'.repeat(LONGEST.name - 1));
  const zone = renamed(good, 'zone', good.zones[0]?.id ?? '', 'z'.repeat(500));
  expect(readProcedure(printProcedure(zone)).procedure).toEqual(zone);
  const copy = asCopy({ ...good, title: 'T'.repeat(LONGEST.label) });
  expect(readProcedure(printProcedure(copy)).procedure).toEqual(copy);
  expect(cutTo(4, 'abcd')).toBe('abcd');
  expect(cutTo(4, 'ab😀d')).toBe('ab…');
});

test('the head of a file that is refused is shown by its beginning only', () => {
  const { title, about = '' } = headOf(
    `doffline: 1\ntitle: ${'x'.repeat(900)}\nabout: ${'y'.repeat(2100)}\n`,
  );
  expect(title).toHaveLength(LONGEST.label);
  expect(about).toHaveLength(LONGEST.text);
});
