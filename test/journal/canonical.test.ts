// Canonical text and hashes against what is published: the sorting and escaping of RFC 8785 (sections 3.2.2 and 3.2.3) and
// the SHA-256 of FIPS 180-4's examples; and against Node's own SHA-256.
import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { canonical, faultIn, type Plain } from '../../src/journal/canonical.ts';
import { hashOfText } from '../../src/journal/hash.ts';

const plain: fc.Arbitrary<Plain> = fc.letrec<{ value: Plain }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constantFrom<Plain>(null, true, false, 0, -1, Number.MAX_SAFE_INTEGER, ''),
    fc.string({ unit: 'binary' }),
    fc.maxSafeInteger().map((value) => (Object.is(value, -0) ? 0 : value)),
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(fc.string({ unit: 'binary' }), tie('value'), { maxKeys: 4, noNullPrototype: true }),
  ),
})).value;

describe('canonical text', () => {
  test('sorts keys by UTF-16 code units (RFC 8785, 3.2.3)', () => {
    const value = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(Object.values(JSON.parse(canonical(value)) as object)).toHaveLength(7);
    const order = [...canonical(value).matchAll(/"(?:[^"\\]|\\.)*":"([^"]*)"/g)].map((found) => found[1]);
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  test('escapes what must be and nothing else (RFC 8785, 3.2.2.2)', () => {
    expect(canonical('\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/')).toBe(
      '"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"',
    );
    expect(canonical(['\b\t\n\f\r', '\u2028', '\u007f'])).toBe('["\\b\\t\\n\\f\\r","\u2028","\u007f"]');
  });

  property.prop([plain])('is JSON for the same value, and does not depend on the order of keys', (value) => {
    expect(faultIn(value)).toBeUndefined();
    const text = canonical(value);
    expect(canonical(JSON.parse(text) as Plain)).toBe(text);
    const turned = (one: Plain): Plain => {
      if (typeof one !== 'object' || one === null) return one;
      if (Array.isArray(one)) return (one as readonly Plain[]).map(turned);
      return Object.fromEntries(
        Object.entries(one)
          .toReversed()
          .map(([key, inner]) => [key, turned(inner)]),
      );
    };
    expect(canonical(turned(value))).toBe(text);
  });

  property.prop([plain, plain])('is equal only where values are', (one, other) => {
    expect(canonical(one) === canonical(other)).toBe(isDeepStrictEqual(one, other));
    expect(canonical([one, other]) === canonical([other, one])).toBe(isDeepStrictEqual(one, other));
  });

  test.each([
    ['a fraction', 0.1],
    ['an integer that a double cannot hold', 2 ** 53],
    ['minus nought', -0],
    ['no number', Number.NaN],
    ['nothing', undefined],
    ['half a character', '\ud800'],
    ['half a character in a name', { 'a\udc00': 1 }],
    ['a date', new Date(0)],
    ['a large integer', 1n],
    ['nothing in a list', [1, undefined]],
    ['nothing in an object', { a: { b: undefined } }],
  ])('%s has none', (_, value) => {
    expect(faultIn(value)).not.toBeUndefined();
  });

  test('nesting has an end', () => {
    const nest = (depth: number): Plain => (depth === 0 ? 1 : [nest(depth - 1)]);
    expect(faultIn(nest(16))).toBeUndefined();
    expect(faultIn(nest(17))).toContain('nested');
    expect(faultIn(nest(5000))).toContain('nested');
  });
});

describe('the hash', () => {
  test.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of %j is that of FIPS 180-4', (text, hash) => {
    expect(hashOfText(text)).toBe(hash);
  });

  property.prop([fc.string({ unit: 'grapheme', maxLength: 300 })])('is Node’s', (text) => {
    expect(hashOfText(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
  });
});
