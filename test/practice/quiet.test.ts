// What must not raise an alarm: the four good procedures and everything that published texts allow in between.
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { departures } from '../../src/practice/index.ts';
import { changed, inserted, step, without } from '../support/procedure.ts';
import { DONNING, EVERYDAY, off, POWERED_COVERALL, RESPIRATOR_GOWN, rub } from './procedures.ts';

const GOOD = { RESPIRATOR_GOWN, POWERED_COVERALL, EVERYDAY, DONNING };

const rules = (procedure: Procedure) => departures(compile(procedure, 'enveloped')).map(({ rule }) => rule);

describe('no departure', () => {
  for (const [name, procedure] of Object.entries(GOOD)) {
    test(`in ${name}, which can be done as written`, () => {
      const compiled = compile(procedure, 'non-enveloped');
      expect(compiled.problems).toEqual([]);
      expect(departures(compiled)).toEqual([]);
    });
  }

  property.prop([fc.constantFrom(...Object.values(GOOD)), fc.nat(), fc.constantFrom('say', 'inspect')])(
    'from looking or speaking anywhere (observer module: closed loop at every step)',
    (procedure, where, action) => {
      const before = procedure.steps[where % procedure.steps.length]!.id;
      expect(rules(inserted(procedure, before, step('aside', action)))).toEqual([]);
    },
  );

  test('when a pair of gloves comes off one by one (training page 08)', () => {
    const one = off('first', 'outer-gloves', { side: 'left', technique: 'peel-one' });
    const two = off('second', 'outer-gloves', { side: 'right', technique: 'peel-one' });
    expect(rules(inserted(without(RESPIRATOR_GOWN, 'outer-off'), 'look-inner', one, two))).toEqual([]);
  });

  test('when gloves are wiped instead of rubbed (training pages: wipe or rub)', () => {
    const wipe = step('wipe', 'wipe', {
      items: ['inner-gloves'],
      product: 'disinfectant-wipe',
      technique: 'wipe-all-over',
    });
    expect(rules(inserted(without(RESPIRATOR_GOWN, 'rub-inner'), 'shield-off', wipe))).toEqual([]);
  });

  test('when only an inner glove beneath another is wiped, that is not hygiene', () => {
    const wipe = step('wipe', 'wipe', {
      items: ['inner-gloves'],
      product: 'disinfectant-wipe',
      technique: 'wipe-all-over',
    });
    expect(rules(inserted(without(RESPIRATOR_GOWN, 'rub-boots'), 'stand', wipe))).toEqual([
      'practice.hygiene-between-items',
    ]);
  });

  test('between items of the everyday set (everyday sequence: hygiene only when contaminated)', () => {
    expect(rules(inserted(EVERYDAY, 'mask-off', rub('extra')))).toEqual([]);
    expect(rules(EVERYDAY)).not.toContain('practice.hygiene-between-items');
  });

  test('while a helper goes on with the same item (training page 12: zip, then shoulders)', () => {
    const helped = changed(POWERED_COVERALL, 'unzip', { helper: 'assistant' });
    expect(rules(inserted(without(helped, 'rub-zip'), 'unzip'))).toEqual([]);
  });
});

describe('a departure', () => {
  test('is the same for every agent', () => {
    const procedure = without(RESPIRATOR_GOWN, 'rub-inner', 'look', 'rub-helper');
    const both = (['enveloped', 'non-enveloped'] as const).map((agent) =>
      departures(compile({ ...procedure }, agent)),
    );
    expect(both[0]).toHaveLength(3);
    expect(both[1]).toEqual(both[0]);
  });

  test('points at the steps it is about, in the order of the procedure', () => {
    const procedure = without(RESPIRATOR_GOWN, 'rub-inner', 'rub-shield');
    const id = (index: number) => procedure.steps[index]?.id;
    expect(
      departures(compile(procedure, 'enveloped')).map(({ step: at, others = [], params }) => [
        id(at),
        others.map(id),
        params,
      ]),
    ).toEqual([
      ['outer-off', ['shield-off'], { person: 'wearer', item: 'outer-gloves' }],
      ['shield-off', ['hood-off'], { person: 'wearer', item: 'face-shield' }],
    ]);
  });
});
