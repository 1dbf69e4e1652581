// Substitution: the least rewriting with one thing in place of another, what is lost, and who has to learn what.
import { describe, expect, test } from 'vitest';
import { compareMeasures } from '../../src/check/measure.ts';
import { compile } from '../../src/contacts/interpret.ts';
import { substitute, whyNoSubstitute } from '../../src/order/substitute.ts';
import { measureOf } from '../../src/order/written.ts';
import { procedureOf } from '../procedures/shelf.ts';

const LIMITS = { agent: 'enveloped', tried: 300 } as const;

describe('a gown with hook and loop for one with ties', () => {
  const given = procedureOf('national-n95-gown-doffing.yaml');
  const done = substitute(given, 'gown', 'gown-hook-and-loop', LIMITS);

  test('takes the same steps and loses nothing', () => {
    expect([done.rewriting, done.kept, done.lost]).toEqual(['same-steps', true, []]);
    expect(done.changes.map(({ what }) => what)).toEqual(['changed']);
  });

  test('everybody wears it, and wearer and observer learn the one step', () => {
    expect(JSON.stringify(done.procedure.people)).not.toContain('"gown"');
    expect(done.retraining.map(({ person, changes }) => [person, changes.length])).toEqual([
      ['wearer', 1],
      ['observer', 1],
    ]);
  });
});

describe('goggles where a shield was', () => {
  const given = procedureOf('larkmoor-suit-doffing-v2.yaml');
  const done = substitute(given, 'face-shield', 'goggles', LIMITS);

  test('can be done, and what it measures is what the check measures', () => {
    expect(compile(done.procedure, 'enveloped').problems).toEqual([]);
    expect(compareMeasures(done.measure, measureOf(done.procedure, 'enveloped'))).toBe(0);
  });

  test('it keeps the measure or says what is lost', () => {
    expect(done.lost.filter(({ figure }) => figure !== 'seconds').length === 0).toBe(done.kept);
  });
});

describe('a coverall where a gown was', () => {
  const given = procedureOf('everyday-example-2-doffing.yaml');
  const done = substitute(given, 'gown', 'coverall', LIMITS);

  test('it is opened first, and the whole can be done', () => {
    const { steps } = done.procedure;
    const opened = steps.findIndex(({ action }) => action === 'unfasten');
    const removed = steps.findIndex(({ action, items }) => action === 'remove' && items.includes('coverall'));
    expect(opened).toBeGreaterThanOrEqual(0);
    expect(opened).toBeLessThan(removed);
    expect(compile(done.procedure, 'enveloped').problems).toEqual([]);
  });
});

describe('another product', () => {
  test('weak chlorine for alcohol rub: the same steps against an enveloped agent', () => {
    const given = procedureOf('everyday-example-1-doffing.yaml');
    const done = substitute(given, 'alcohol-hand-rub', 'chlorine-0.05', LIMITS);
    expect(done.procedure.products).toEqual(['chlorine-0.05']);
    expect(
      done.changes.every(({ what, step }) => what === 'changed' && step.product === 'chlorine-0.05'),
    ).toBe(done.rewriting === 'same-steps');
  });
});

test('what cannot stand for what', () => {
  const given = procedureOf('everyday-example-1-doffing.yaml');
  expect(whyNoSubstitute(given, 'gown', 'coverall')).toBeUndefined();
  expect(whyNoSubstitute(given, 'apron', 'coverall')).toBe('not-used');
  expect(whyNoSubstitute(given, 'gown', 'goggles')).toBe('used-already');
  expect(whyNoSubstitute(given, 'gown', 'alcohol-hand-rub')).toBe('not-alike');
  expect(whyNoSubstitute(given, 'gown', 'cloak')).toBe('unknown');
});
