// Whatever the text, reading ends, does not throw, and gives a procedure or says what is wrong.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DiagnosticCode,
  printDiagnostic,
  printProcedure,
  readProcedure,
} from '../../src/language/index.ts';
import { LONGEST_TEXT } from '../../src/language/text.ts';
import { procedure } from './arbitrary.ts';
import { FULL, SMALL } from './samples.ts';

const codes = (text: string): readonly DiagnosticCode[] =>
  readProcedure(text).diagnostics.map(({ code }) => code);
const inTitle = (text: string) => SMALL.replace('Gown and gloves', text);
const manyPeople = (count: number) =>
  Array.from({ length: count }, (_, index) => `  p${index}: {role: assistant}\n`).join('');
const titleOf = (text: string) => readProcedure(text).procedure?.title;

/** Every diagnostic has a place in the text and whole sentences. */
function judge(text: string): void {
  const { procedure: read, diagnostics } = readProcedure(text);
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  expect(errors.length > 0).toBe(read === undefined);
  for (const diagnostic of diagnostics) {
    expect(diagnostic.line).toBeGreaterThan(0);
    expect(diagnostic.column).toBeGreaterThan(0);
    expect([diagnostic.endLine, diagnostic.endColumn]).not.toEqual([0, 0]);
    expect(printDiagnostic(diagnostic)).not.toMatch(/\{[a-z]+\}|undefined/);
  }
}

describe('texts that are no file', () => {
  test.each<readonly [string, string, readonly DiagnosticCode[]]>([
    ['empty', '', ['empty-file']],
    ['blank lines', '\n\n  \n', ['empty-file']],
    ['only comments', '# nothing yet\n# still nothing\n', ['empty-file']],
    ['only a document start', '---\n', ['empty-file']],
    ['a word', 'hello', ['wrong-type']],
    ['a list', '- a\n- b\n', ['wrong-type']],
    ['a binary file', 'PK\u0003\u0004\u0000\u0000', ['not-text']],
    ['bytes that are not UTF-8', inTitle('caf\uFFFD'), ['not-text']],
    ['UTF-16 read as UTF-8', 'doffline'.replaceAll(/./g, '$&\u0000'), ['not-text']],
    ['too much', '#'.repeat(LONGEST_TEXT + 1), ['too-large']],
    ['several documents', `${SMALL}---\n${SMALL}`, ['several-documents']],
    ['a directive', `%YAML 1.1\n---\n${SMALL}`, ['tags-not-allowed']],
  ])('%s', (_, text, expected) => {
    expect(codes(text)).toEqual(expected);
    judge(text);
  });
});

describe('dangerous texts', () => {
  const DEEP = 10_000;
  test.each<readonly [string, string, DiagnosticCode]>([
    ['brackets in brackets', '['.repeat(DEEP), 'too-deep'],
    ['closed brackets in brackets', `a: ${'['.repeat(DEEP)}${']'.repeat(DEEP)}`, 'too-deep'],
    ['braces in braces', '{a: '.repeat(DEEP), 'too-deep'],
    ['lists in lists on one line', '- '.repeat(DEEP), 'too-deep'],
    ['keys of keys', '? '.repeat(DEEP), 'too-deep'],
    ['an alias to what holds it', 'a: &a [*a]\n', 'aliases-not-allowed'],
    ['an alias to nothing', 'a: *b\n', 'aliases-not-allowed'],
    ['an anchor on a key', '&a title: x\n', 'aliases-not-allowed'],
    ['a merge of an anchor', 'a: &a {b: c}\nd: {<<: *a}\n', 'aliases-not-allowed'],
    ['a tag that makes things', 'a: !!js/function x\n', 'tags-not-allowed'],
    ['a key that means the prototype', `__proto__: {title: x}\n${SMALL}`, 'bad-name'],
    ['a person that means the prototype', SMALL.replace('assistant:', '__proto__:'), 'bad-name'],
    ['a person called constructor without role', SMALL.replace('assistant:', 'constructor:'), 'role-needed'],
    ['a tab that indents', SMALL.replace('  wearer:', '\twearer:'), 'tab'],
    ['a key that is a list', '[a, b]: c\n', 'wrong-type'],
    ['a control character', inTitle('bell \u0007'), 'control-character'],
    ['an escaped control character', inTitle('"bell \\u0007"'), 'control-character'],
    ['a reversed text', inTitle('\u202Esevolg'), 'control-character'],
    ['an embedded direction', inTitle('\u202Agloves'), 'control-character'],
    ['a line that no line break ends', inTitle('gloves\u2028approved'), 'several-lines'],
    ['a title that nobody can see', inTitle('"\u200B\u2060\u3164"'), 'empty-value'],
    ['a title with a second line', inTitle(String.raw`"Gloves\nversion 9, approved"`), 'several-lines'],
    ['half a character', inTitle('\uD83D'), 'control-character'],
  ])('%s', (_, text, expected) => {
    expect(codes(text)).toContain(expected);
    judge(text);
  });

  test('a small text that aliases would blow up to a billion words', () => {
    const levels = 'abcdefghi'.split('').map((name, index, all) => {
      const before = all[index - 1];
      return `${name}: &${name} [${Array.from({ length: 9 }, () => (before ? `*${before}` : 'lol')).join(', ')}]`;
    });
    expect(codes(levels.join('\n')).filter((code) => code === 'aliases-not-allowed')).toHaveLength(9 + 8 * 9);
    judge(levels.join('\n'));
  });

  test('the prototype of all objects stays as it is', () => {
    judge('__proto__: {polluted: yes}\nconstructor: {prototype: {polluted: yes}}\n');
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });

  test.each([
    ['steps', `${SMALL}${'  - {}\n'.repeat(20_001)}`],
    ['other entries', `${SMALL}agents: [${'a,'.repeat(20_001)}]\n`],
    ['people', SMALL.replace('people:\n', `people:\n${manyPeople(201)}`)],
    ['marks and words', `[${'[],'.repeat(270_000)}`],
  ])('more %s than any procedure has', (_, text) => {
    expect(codes(text)).toContain('too-large');
  });

  test('every field of many steps wrong at once', () => {
    const wrong =
      '  - {do: remove, item: [x, y], side: up, part: z, technique: q, of: 1, on: 2, helper: 3, to: 4}\n';
    const { diagnostics } = readProcedure(SMALL + wrong.repeat(4000));
    expect(diagnostics.at(-1)).toMatchObject({ code: 'more-problems' });
  });

  test('a flood of faults is cut off and counted', () => {
    const { diagnostics } = readProcedure(`${SMALL}${'  - {do: jump}\n'.repeat(5000)}`);
    expect(diagnostics).toHaveLength(201);
    expect(diagnostics.at(-1)).toMatchObject({ code: 'more-problems', params: { count: 4800 } });
  });
});

describe('texts from other machines', () => {
  test.each([
    ['Windows line ends', SMALL.replaceAll('\n', '\r\n')],
    ['a byte-order mark', `\uFEFF${SMALL}`],
    ['both', `\uFEFF${SMALL.replaceAll('\n', '\r\n')}`],
    ['no line end', SMALL.trimEnd()],
    ['JSON', JSON.stringify(readProcedure(SMALL).document.value).replace('"doffline":"1"', '"doffline":1')],
  ])('%s', (_, text) => {
    expect(readProcedure(text).procedure).toEqual(readProcedure(SMALL).procedure);
  });

  test('a mark or Windows line ends move no position', () => {
    const there = readProcedure(`\uFEFF${SMALL.replaceAll('\n', '\r\n')}`).positions;
    const { positions } = readProcedure(SMALL);
    expect(there.steps).toEqual(positions.steps);
    expect(there.paths.get('title')).toEqual(positions.paths.get('title'));
  });

  test.each(['Ebola: Ausziehen', 'Größe 7½ – خلع', '防護服を脱ぐ', '😀 x'])(
    'a title in any language: %s',
    (title) => {
      expect(titleOf(inTitle(JSON.stringify(title)))).toBe(title);
    },
  );
});

test('ten thousand steps are read, every one with its place', () => {
  const [head = ''] = SMALL.split('steps:');
  const steps = Array.from({ length: 10_000 }, () => '  - {do: sanitise, with: alcohol-hand-rub}\n').join('');
  const { procedure: read, positions } = readProcedure(`${head}steps:\n${steps}`);
  expect(read?.steps).toHaveLength(10_000);
  expect(positions.steps.get('s10000')).toMatchObject({ line: 15 + 10_000 });
});

describe('never a crash', () => {
  test('on random text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), judge), { numRuns: 250 });
  });

  test('on random signs that mean something in YAML', () => {
    const signs = fc.constantFrom(
      ...' \n\t-?:,[]{}#&*!|>\'"%@`ab~'.split(''),
      '\n  ',
      '\n- ',
      ': ',
      '- ',
      '"\n',
      '---\n',
    );
    const text = fc.array(signs, { maxLength: 80 }).map((parts) => parts.join(''));
    fc.assert(fc.property(text, judge), { numRuns: 1000 });
  });

  test('on good files with a piece cut out, doubled or put elsewhere', () => {
    const place = fc.nat({ max: FULL.length });
    fc.assert(
      fc.property(
        fc.constantFrom(SMALL, FULL),
        place,
        fc.nat({ max: 60 }),
        place,
        (text, from, length, to) => {
          const piece = text.slice(from, from + length);
          const rest = text.slice(0, from) + text.slice(from + length);
          judge(rest);
          judge(rest.slice(0, to) + piece + piece + rest.slice(to));
        },
      ),
      { numRuns: 250 },
    );
  });

  test('on good files with one value or key replaced by something else', () => {
    const words = [...FULL.matchAll(/[\p{L}\d][\p{L}\d.-]*/gu)].map(({ index, 0: word }) => ({
      index,
      word,
    }));
    const other = fc.oneof(
      fc.constantFrom(
        '',
        '~',
        'true',
        '[]',
        '{}',
        '[a]',
        '{a: b}',
        '- a',
        '1',
        '"',
        'left',
        'gown',
        '__proto__',
      ),
      fc.constantFrom(...words.map(({ word }) => word)),
      fc.string({ maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...words), other, ({ index, word }, put) => {
        judge(FULL.slice(0, index) + put + FULL.slice(index + word.length));
      }),
      { numRuns: 600 },
    );
  });

  test('on printed procedures with a line taken out', () => {
    fc.assert(
      fc.property(procedure, fc.nat(), (made, at) => {
        const lines = printProcedure(made).split('\n');
        judge(lines.toSpliced(at % lines.length, 1).join('\n'));
      }),
      { numRuns: 60 },
    );
  });
});
