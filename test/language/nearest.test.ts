// The nearest known name: what a reader most likely meant, and nothing when nothing is near.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { distance, nearest } from '../../src/language/nearest.ts';
import { ITEM_IDS } from '../../src/domain/items.ts';
import { TECHNIQUE_IDS } from '../../src/domain/techniques/index.ts';

test.each([
  ['outr-gloves', 'outer-gloves'],
  ['Gown', 'gown'],
  ['face shield', 'face-shield'],
  ['n95_respirator', 'n95-respirator'],
  ['glvoes', 'gloves'],
  ['respirator', 'n95-respirator'],
  ['hood', 'surgical-hood'],
])('%s means %s', (written, meant) => {
  expect(nearest(written, ITEM_IDS)).toBe(meant);
});

test('nothing is near what looks like no item', () => {
  for (const written of ['xyz', '', 'stethoscope', 'a'.repeat(10_000)]) {
    expect(nearest(written, ITEM_IDS)).toBeUndefined();
  }
});

test('distance counts insertions, deletions, changes and swaps of neighbours', () => {
  expect(distance('gown', 'gown')).toBe(0);
  expect(distance('gwon', 'gown')).toBe(1);
  expect(distance('gow', 'gown')).toBe(1);
  expect(distance('gowns', 'gown')).toBe(1);
  expect(distance('gawn', 'gown')).toBe(1);
  expect(distance('kitten', 'sitting')).toBe(3);
  expect(distance('', 'gown')).toBe(4);
});

test('distance is the same both ways, and a limit only cuts off', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', '-'), maxLength: 8 });
  fc.assert(
    fc.property(word, word, fc.nat(8), (a, b, limit) => {
      const full = distance(a, b);
      expect(distance(b, a)).toBe(full);
      expect(distance(a, b, limit)).toBe(full <= limit ? full : Number.POSITIVE_INFINITY);
    }),
  );
});

test('one wrong letter in a technique still finds it', () => {
  fc.assert(
    fc.property(fc.constantFrom(...TECHNIQUE_IDS.filter((id) => id.length > 5)), fc.nat(), (id, at) => {
      const place = at % id.length;
      const wrong = `${id.slice(0, place)}#${id.slice(place + 1)}`;
      const found = nearest(wrong, TECHNIQUE_IDS);
      expect(found && distance(wrong, found)).toBe(1);
    }),
  );
});
