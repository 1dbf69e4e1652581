// What an offer says of its places: each once, changed apart from unchanged, the worst first.
import { describe, expect, test } from 'vitest';
import * as fc from 'fast-check';
import { changesIn, type Place } from '../../src/guide/index.ts';

const barriers = fc.option(fc.nat(4), { nil: null });
const place = fc.record({
  surface: fc.string(),
  class: fc.constantFrom<Place['class'][]>('mucosa', 'skin', 'clothes', 'shoes', 'clean-side'),
  before: barriers,
  after: barriers,
});

const takes = (one: Place): number => one.after ?? Infinity;

describe('the places of an offer', () => {
  test('stand each once, in the right part, fewest barriers first', () => {
    fc.assert(
      fc.property(fc.array(place), (places) => {
        const { changed, unchanged } = changesIn(places);
        expect([...changed, ...unchanged]).toHaveLength(places.length);
        expect(new Set([...changed, ...unchanged])).toEqual(new Set(places));
        for (const one of changed) expect(one.before).not.toBe(one.after);
        for (const one of unchanged) expect(one.before).toBe(one.after);
        for (const part of [changed, unchanged])
          part.slice(1).forEach((one, at) => expect(takes(part[at]!)).toBeLessThanOrEqual(takes(one)));
      }),
    );
  });

  test('of equal ones the eyes, nose and mouth first', () => {
    const same = { before: 1, after: 2 } as const;
    const { changed } = changesIn([
      { surface: 'c', class: 'clothes', ...same },
      { surface: 's', class: 'skin', ...same },
      { surface: 'm', class: 'mucosa', ...same },
    ]);
    expect(changed.map(({ surface }) => surface)).toEqual(['m', 's', 'c']);
  });
});
