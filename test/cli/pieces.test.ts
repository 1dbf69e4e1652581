// The small pieces of the command line: wrapping, colour, and finding the surface that somebody means.
import { describe, expect, test } from 'vitest';
import { fc, test as property } from '@fast-check/vitest';
import { printable, wantsColour, wrapped } from '../../src/cli/io.ts';
import { matchSurface } from '../../src/cli/match.ts';

describe('wrapping', () => {
  property.prop([fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { minLength: 1 }), fc.nat(20)])(
    'keeps every word in order and no line too long unless a word is',
    (words, by) => {
      const lines = wrapped(words.join(' '), by, 60).split('\n');
      expect(lines.flatMap((line) => line.trim().split(' '))).toEqual(words);
      for (const line of lines) expect(line.length <= 60 || !line.trim().includes(' ')).toBe(true);
    },
  );
  test('never breaks before %', () => {
    expect(wrapped('aaaa 0.5 % b', 0, 9)).toBe('aaaa\n0.5 % b');
  });
});

describe('colour', () => {
  test.each([
    [true, {}, true],
    [false, {}, false],
    [true, { NO_COLOR: '1' }, false],
    [true, { NO_COLOR: '' }, true],
    [true, { TERM: 'dumb' }, false],
  ])('terminal %s with %o: %s', (terminal, env, wanted) => {
    expect(wantsColour(terminal, env)).toBe(wanted);
  });
  test('control characters of file names never reach a terminal', () => {
    expect(printable(`a${String.fromCodePoint(27, 7, 0x9b)}b`)).toBe('a???b');
  });
});

describe('surfaces by their words', () => {
  const surface = (id: string, name: string) => ({ id, name, ofWearer: id.startsWith('wearer.') });
  const SURFACES = [
    surface('wearer.hand.left', "the wearer's left hand"),
    surface('wearer.eyes', "the wearer's eyes"),
    surface('assistant.eyes', "the assistant's eyes"),
    surface('wearer.inner-gloves.left.outside', 'the outside of the left inner glove'),
    surface('wearer.inner-gloves.right.outside', 'the outside of the right inner glove'),
    surface('room.clean-chair.seat', 'the seat of the clean chair'),
  ];
  test.each([
    ['wearer.hand.left', 'wearer.hand.left'],
    ['Left Hand', 'wearer.hand.left'],
    ['hand left', 'wearer.hand.left'],
    ['eyes', 'wearer.eyes'],
    ["assistant's eyes", 'assistant.eyes'],
    ['the seat of the clean chair', 'room.clean-chair.seat'],
    ['left inner glove', 'wearer.inner-gloves.left.outside'],
  ])('%s', (asked, id) => {
    expect(matchSurface(asked, SURFACES)).toEqual({ found: id });
  });
  test('too many, near, and nothing', () => {
    expect(matchSurface('inner glove', SURFACES)).toEqual({
      candidates: ['wearer.inner-gloves.left.outside', 'wearer.inner-gloves.right.outside'],
    });
    expect(matchSurface('wearer.eyse', SURFACES)).toEqual({ candidates: ['wearer.eyes'] });
    expect(matchSurface('', SURFACES)).toEqual({ candidates: [] });
  });
});
