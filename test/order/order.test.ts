// The order search as its callers meet it: the same every time, pinned steps kept, the limits of time and tries.
import { describe, expect, test } from 'vitest';
import { compareMeasures } from '../../src/check/measure.ts';
import { printProcedure, readProcedure } from '../../src/language/index.ts';
import { searchOrder, whyNot } from '../../src/order/index.ts';
import { procedureOf } from '../procedures/shelf.ts';
import { errorsOf } from './published.ts';
import { dressed } from './support.ts';

describe('the small everyday set', () => {
  const given = procedureOf('everyday-example-1-doffing.yaml');

  test('gown and gloves in one movement, goggles, respirator outside: proved', () => {
    const found = searchOrder(given);
    expect(found.proved).toBe(true);
    const removed = found.procedure.steps
      .filter(({ action }) => action === 'remove')
      .map(({ items }) => items);
    expect(removed).toEqual([['gown', 'gloves'], ['goggles'], ['n95-respirator']]);
  });

  test('the same every time', () => {
    expect(searchOrder(given)).toEqual(searchOrder(given));
  });

  test('searched again, its own result stands', () => {
    const once = searchOrder(given);
    const again = searchOrder(once.procedure);
    expect(compareMeasures(again.measure, once.measure)).toBeLessThanOrEqual(0);
    expect(again.proved).toBe(true);
  });
});

describe('pinned steps', () => {
  const given = procedureOf('everyday-example-1-doffing.yaml');
  const ids = ['s1', 's2'];

  test('are kept as they are and in their order, by option or by the file', () => {
    const wanted = given.steps.filter(({ id }) => ids.includes(id));
    const byOption = searchOrder(given, { pinned: ids });
    const kept = byOption.procedure.steps.filter(({ id }) => ids.includes(id));
    expect(kept).toEqual(wanted);
    const text = printProcedure({
      ...given,
      steps: given.steps.map((step) => (ids.includes(step.id) ? { ...step, pinned: true } : step)),
    });
    const { procedure: file } = readProcedure(text, 'pinned.yaml');
    if (!file) throw new Error('it does not read');
    const byFile = searchOrder(file);
    expect(byFile.procedure.steps.map(({ id }) => id)).toEqual(byOption.procedure.steps.map(({ id }) => id));
    expect(byFile.procedure.steps.filter(({ pinned }) => pinned).map(({ id }) => id)).toEqual(ids);
  });

  test('cost what they cost: the result is no better than without', () => {
    const free = searchOrder(given);
    const bound = searchOrder(given, { pinned: ids });
    expect(compareMeasures(free.measure, bound.measure)).toBeLessThan(0);
  });

  test('all of them pinned: hygiene may be added, nothing else changes', () => {
    const all = given.steps.map(({ id }) => id);
    const found = searchOrder(given, { pinned: all });
    expect(found.procedure.steps.filter(({ id }) => all.includes(id))).toEqual(given.steps);
    const added = found.procedure.steps.filter(({ id }) => !all.includes(id)).map(({ action }) => action);
    expect(added.every((action) => ['sanitise', 'inspect', 'say'].includes(action))).toBe(true);
  });
});

describe('from nothing', () => {
  test('an ensemble without steps gets an order', () => {
    const given = dressed(['inner-gloves', 'gown', 'surgical-mask', 'face-shield', 'outer-gloves'], {}, true);
    const found = searchOrder(given);
    expect([found.kept, found.proved]).toEqual([false, true]);
    expect(errorsOf(found.procedure)).toEqual([]);
    expect(found.procedure.steps.at(-1)?.fixture ?? found.procedure.steps.at(-1)?.zone).toContain('corridor');
  });

  test('a donning, and people in nothing, have none', () => {
    expect(whyNot(procedureOf('everyday-donning.yaml'))).toBe('donning');
    expect(whyNot(dressed([]))).toBe('nothing-worn');
    expect(whyNot(dressed(['gown']))).toBeUndefined();
  });
});

describe('a limit of time', () => {
  test('that was over before gives back what was given, with a gap that is honest', () => {
    const given = procedureOf('larkmoor-suit-doffing-v2.yaml');
    const found = searchOrder(given, { agent: 'enveloped', milliseconds: -1 });
    expect([found.kept, found.proved]).toEqual([true, false]);
    expect(found.procedure).toBe(given);
    expect(compareMeasures(found.lowerBound, found.measure)).toBeLessThan(0);
    expect(found.gap).toBeDefined();
  });
});
