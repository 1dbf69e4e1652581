// The published JSON Schema, judged by an independent validator: what the reader takes it takes, and what is wrong in
// shape it refuses. Names inside a file (is there such a zone?) are beyond a schema and the reader's alone.
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { makeSchema } from '../../scripts/procedure-schema.mjs';
import { ITEM_IDS } from '../../src/domain/items.ts';
import { printProcedure, procedureJsonSchema, readProcedure } from '../../src/language/index.ts';
import { procedure } from './arbitrary.ts';
import { FULL, SMALL } from './samples.ts';

const PUBLISHED = JSON.parse(
  readFileSync(new URL('../../schema/procedure-1.json', import.meta.url), 'utf8'),
) as object;

/** Calendar dates are the reader's to check; a title that looks like a number needs no quotes in our files. */
const ajv = new Ajv2020({
  allErrors: true,
  strict: true,
  allowUnionTypes: true,
  strictTypes: false,
  validateFormats: false,
});
const validate = ajv.compile(PUBLISHED);

const holds = (text: string): boolean => validate(parse(text));

test('the published file is what the script writes now', async () => {
  expect(PUBLISHED).toEqual(await makeSchema());
  expect(PUBLISHED).toEqual(procedureJsonSchema());
});

test('it is valid against the meta-schema it names', () => {
  expect(PUBLISHED).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
  expect(ajv.validateSchema(PUBLISHED)).toBe(true);
});

test.each([
  ['the smallest file', SMALL],
  ['every key', FULL],
  ['a version without quotes', SMALL.replace('"1"', '1.10')],
])('takes %s', (_, text) => {
  holds(text);
  expect(validate.errors ?? []).toEqual([]);
});

test('takes every procedure that the reader can print', () => {
  fc.assert(
    fc.property(procedure, (made) => {
      holds(printProcedure(made));
      expect(validate.errors ?? []).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

describe('takes every procedure file of this house', () => {
  const folder = new URL('../../procedures/', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
  test.each(files)('%s', (name) => {
    holds(readFileSync(new URL(name, folder), 'utf8'));
    expect(validate.errors ?? []).toEqual([]);
  });
});

test.each([
  ['another format version', 'doffline: 1', 'doffline: 2'],
  ['a missing title', 'title: Gown and gloves\n', ''],
  ['an unknown key', 'kind: doffing', 'kind: doffing\nauthor: me'],
  ['an unknown item', 'wears: [gown, gloves]', 'wears: [gwon, gloves]'],
  ['a list that is a word', 'wears: [gown, gloves]', 'wears: gown'],
  ['an unknown product', 'products: [alcohol-hand-rub]', 'products: [alcohol]'],
  ['an unknown place', 'leaves-bare: [scalp, wrist]', 'leaves-bare: [skalp]'],
  ['an unknown action', 'do: sanitise', 'do: sanitize'],
  ['a technique of another action', 'item: [gown, gloves]}', 'item: gown, technique: zip-one-hand}'],
  ['a field that the action does not take', 'with: alcohol-hand-rub', 'with: alcohol-hand-rub, item: gloves'],
  ['a field that the action lacks', ', to: clean-side', ''],
  ['a name with a space', 'assistant: {hand', 'the assistant: {role: assistant, hand'],
])('refuses %s, as the reader does', (_, from, to) => {
  const wrong = SMALL.replace(from, to);
  expect(wrong).not.toBe(SMALL);
  expect(holds(wrong)).toBe(false);
  expect(readProcedure(wrong).procedure).toBeUndefined();
});

test('offers the words of the domain', () => {
  expect(PUBLISHED).toMatchObject({ $defs: { item: { enum: ITEM_IDS } } });
});
