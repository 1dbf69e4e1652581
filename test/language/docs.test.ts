// The page on the procedure file cannot rot: its samples are read, its wrong sample says what the page says, and its
// lists of words are those of the tables. `UPDATE=1 npx vitest run test/language/docs` writes lists and messages.
import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { ACTIONS, type StepField } from '../../src/domain/actions.ts';
import { ITEMS } from '../../src/domain/items.ts';
import { LONGEST } from '../../src/domain/lengths.ts';
import { PLACE_NAMES, PLACES } from '../../src/domain/places.ts';
import { AGENTS, PRODUCT_IDS } from '../../src/domain/products.ts';
import { FIXTURE_KINDS } from '../../src/domain/room.ts';
import { TECHNIQUES } from '../../src/domain/techniques/index.ts';
import { printDiagnostic, readProcedure } from '../../src/language/index.ts';
import { FIELD_KEYS } from '../../src/language/shape-steps.ts';

const PAGE = new URL('../../docs/procedure-file.md', import.meta.url);
const code = (id: string) => `\`${id}\``;
const list = (ids: readonly string[]) => ids.map(code).join(', ');
const keys = (fields: readonly StepField[]) => list(fields.map((field) => FIELD_KEYS[field])) || '-';

const actionTable = (): string =>
  [
    '| `do` | needs | may have |',
    '|---|---|---|',
    ...ACTIONS.map(({ id, needs, may }) => `| ${code(id)} | ${keys(needs)} | ${keys(may)} |`),
    '',
    'All may have `who`, `id`, `pinned` and `note`. `wipe` needs an `item` or an `on`; `touch` an `item`, an `on` or a `place`.',
  ].join('\n');

const parts = (item: (typeof ITEMS)[number]) => list(item.parts.map((part) => part.id));

const wordList = (): string =>
  [
    `Agents: ${list(AGENTS)}.`,
    `Products: ${list(PRODUCT_IDS)}.`,
    `Places: ${list(PLACE_NAMES)}; written with a side where there are two, as ${code(PLACES.find((place) => place.includes('.')) ?? '')}.`,
    `Kinds of fixture: ${FIXTURE_KINDS.map((kind) => `${code(kind.id)}${'worked' in kind ? ` (worked by ${list(kind.worked)}; the first unless written)` : ''}`).join(', ')}.`,
    '| item | comes as a pair | parts |\n|---|---|---|\n' +
      ITEMS.map((item) => `| ${code(item.id)} | ${item.pair ? 'yes' : 'no'} | ${parts(item)} |`).join('\n'),
    '| `do` | techniques |\n|---|---|\n' +
      ACTIONS.map(
        ({ id }) =>
          `| ${code(id)} | ${list(TECHNIQUES.filter(({ action }) => action === id).map((way) => way.id))} |`,
      ).join('\n'),
  ].join('\n\n');

const LENGTHS: readonly (readonly [keyof typeof LONGEST, string])[] = [
  [
    'label',
    '`title`; of a source `title`, `publisher` and `year`; `donning`; of what is accepted `finding`, `surface` and `by`',
  ],
  ['version', '`version`'],
  ['name', 'names of people, fixtures and steps'],
  ['zone', 'names of zones'],
  ['note', '`note` of a step, `reason` of a start'],
  ['text', '`about`; of a source `where`, `seen`, `memory` and `interpreted`; `reason` of what is accepted'],
];

const lengthTable = (): string =>
  [
    '| characters at most | what |',
    '|---|---|',
    ...LENGTHS.map(([of, what]) => `| ${LONGEST[of]} | ${what} |`),
  ].join('\n');

const blocks = (text: string, kind: string): readonly string[] =>
  [...text.matchAll(new RegExp(`^\`\`\`${kind}\n([\\s\\S]*?)^\`\`\`$`, 'gm'))].map(([, body = '']) => body);

const said = (text: string): string =>
  readProcedure(text, 'gown.yaml')
    .diagnostics.map((one) => `${printDiagnostic(one)}\n`)
    .join('');

/** The page with its written-by-program pieces renewed. */
function renewed(text: string): string {
  const between = (whole: string, mark: string, body: string): string =>
    whole.replace(
      new RegExp(`(<!-- ${mark}:begin -->\n)[\\s\\S]*(<!-- ${mark}:end -->)`),
      (_, first: string, last: string) => `${first}\n${body}\n\n${last}`,
    );
  const [wrong = ''] = blocks(text, 'yaml wrong');
  const tables = between(between(text, 'actions', actionTable()), 'lengths', lengthTable());
  const lists = between(tables, 'words', wordList());
  return lists.replace(/^```text\n[\s\S]*?^```$/m, () => `\`\`\`text\n${said(wrong)}\`\`\``);
}

let page = '';
beforeAll(() => {
  page = readFileSync(PAGE, 'utf8');
  if (process.env.UPDATE !== '1') return;
  page = renewed(page);
  writeFileSync(PAGE, page);
});

test('its lists and messages are those of the program', () => {
  expect(page).toBe(renewed(page));
  expect(blocks(page, 'text')[0]).toContain('Did you mean "gown"?');
});

describe('its samples are read without a fault', () => {
  test('the whole file', () => {
    const whole = blocks(page, 'yaml');
    expect(whole).toHaveLength(1);
    expect(said(whole[0] ?? '')).toBe('');
  });

  test('the pieces, each in place of its own part of the whole file', () => {
    const [whole = ''] = blocks(page, 'yaml');
    const pieces = blocks(page, 'yaml fragment');
    expect(pieces).toHaveLength(5);
    for (const piece of pieces) {
      const key = piece.slice(0, piece.indexOf(':'));
      const rest = whole.replace(new RegExp(`^${key}:.*\n(?:[ ].*\n)*`, 'm'), '');
      expect(said(rest + piece)).toBe('');
    }
  });
});

test('it tells how long everything may be', () => {
  expect(LENGTHS.map(([of]) => of)).toEqual(Object.keys(LONGEST));
});

test('it names every key of the file', () => {
  const schema = JSON.parse(
    readFileSync(new URL('../../schema/procedure-1.json', import.meta.url), 'utf8'),
  ) as {
    properties: Record<string, unknown>;
  };
  for (const key of Object.keys(schema.properties)) expect(page).toContain(`| \`${key}\` |`);
});
