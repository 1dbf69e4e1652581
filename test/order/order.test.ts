// The order search as its callers meet it: never worse than the published order, always passing the check, the same every
// time, pinned steps kept, reasons that hold when they are tried again.
import { describe, expect, test } from 'vitest';
import { compareMeasures } from '../../src/check/measure.ts';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { printProcedure, readProcedure } from '../../src/language/index.ts';
import { searchOrder, whyNot } from '../../src/order/index.ts';
import { measureOf } from '../../src/order/written.ts';
import { verifyProcedure } from '../../src/verify.ts';
import { choiceSentence, proofSentence } from '../../src/words/en/order.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { dressed } from './support.ts';

const DOFFINGS = files.filter((file) => procedureOf(file).kind === 'doffing');

const errorsOf = (procedure: Procedure): readonly string[] =>
  verifyProcedure(procedure, { mends: false, variants: false, agents: ['enveloped'] })
    .findings.filter(({ kind, severity }) => severity === 'error' && ['impossible', 'open'].includes(kind))
    .map(({ code }) => code);

describe.each(DOFFINGS)('%s', (file) => {
  const given = procedureOf(file);
  const found = searchOrder(given, { agent: 'enveloped', tried: 150 });

  test('the order found is at least as good as the published one, and passes the check', () => {
    expect(compareMeasures(found.measure, found.before)).toBeLessThanOrEqual(0);
    expect(errorsOf(found.procedure)).toEqual([]);
    expect(compareMeasures(found.measure, measureOf(found.procedure, 'enveloped'))).toBe(0);
  });

  test('it departs from no practice that the published one keeps, unless it says so', () => {
    const rules = (one: Procedure) =>
      new Set(
        verifyProcedure(one, { mends: false, variants: false, agents: ['enveloped'] })
          .findings.filter(({ kind }) => kind === 'practice')
          .map(({ code }) => code),
      );
    const known = rules(given);
    expect(found.free).toBe(false);
    expect([...rules(found.procedure)].filter((rule) => !known.has(rule))).toEqual([]);
  });

  test('it is proved, or the gap is told and lies between bound and result', () => {
    expect(found.proved).toBe(found.gap === undefined);
    expect(compareMeasures(found.lowerBound, found.measure)).toBeLessThanOrEqual(0);
    expect(proofSentence(found)).toContain(found.proved ? 'Proved' : 'gap');
  });

  test('it is a procedure file like any other, everything off, step ids unique', () => {
    const { procedure } = readProcedure(printProcedure(found.procedure), file);
    expect(procedure?.steps).toEqual(found.procedure.steps);
    const last = compile(found.procedure, 'enveloped').performed.at(-1)?.after.bodies ?? {};
    for (const { id, role } of given.people)
      if (role === 'wearer')
        expect(
          last[id]?.layers.map(({ item }) => item).filter((item) => !['scrubs', 'shoes'].includes(item)),
        ).toEqual([]);
  });

  test('every reason can be said and names steps of the order', () => {
    const ids = found.procedure.steps.map(({ id }) => id);
    for (const choice of found.choices) {
      expect(ids).toContain(choice.step);
      expect(choiceSentence(found.procedure, choice)).toMatch(/\.$/);
      if (choice.outcome === 'worse') expect(choice.difference).toBeDefined();
      if (choice.outcome === 'impossible') expect(choice.problem).toBeDefined();
    }
    expect(found.choices.length > 3).toBe(!found.kept);
  });
});

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
