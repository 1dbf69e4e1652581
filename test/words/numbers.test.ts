// Numbers say what they rest on and hold no more digits than that bears.
import { describe, expect, test } from 'vitest';
import { fc, test as property } from '@fast-check/vitest';
import { evidence } from '../../src/evidence/index.ts';
import { slipOf, SLIPS } from '../../src/domain/slips.ts';
import { CHANCE_STATUS, wordsFor } from '../../src/words/index.ts';
import { duration } from '../../src/words/numbers.ts';

const words = wordsFor('en');

describe('chances', () => {
  test.each([
    [0, '0 % (judgement)'],
    [0.008, '0.8 % (judgement)'],
    [0.000_2, '0.02 % (judgement)'],
    [0.123_4, '12 % (judgement)'],
    [1e-9, '< 0.0001 % (judgement)'],
    [0.999_9, '> 99 % (judgement)'],
    [0.995, '> 99 % (judgement)'],
    [1, '100 % (judgement)'],
  ])('%d is %s', (chance, said) => {
    expect(words.chance(chance, 'judgement')).toBe(said);
  });

  property.prop([fc.double({ min: 0, max: 1, noNaN: true })])('only 0 and 1 are said to be so', (chance) => {
    const said = words.percent(chance);
    expect(said === '0 %').toBe(chance === 0);
    expect(said === '100 %').toBe(chance === 1);
  });

  test('what any chance rests on is no better than its weakest prior', () => {
    const statuses = SLIPS.map(({ id }) => evidence(slipOf(id).prior).status);
    expect(statuses).toContain('judgement');
    expect(CHANCE_STATUS).toBe('judgement');
  });
});

describe('barriers and time', () => {
  test('nothing found is not said to be clean', () => {
    expect(words.barriers(null)).toBe('no route found');
    expect(words.barriers(0)).toBe('0 (open)');
    expect(words.barriers(2)).toBe('2');
  });
  test('minutes and seconds', () => {
    expect([59.6, 5, 605].map(duration)).toEqual(['1 min 00 s', '5 s', '10 min 05 s']);
  });
});
