// Costing: what is counted by hand for small procedures, what holds for any procedure, and that no figure is made up.
import { describe, expect, test } from 'vitest';
import { test as property } from '@fast-check/vitest';
import { analyse } from '../../src/check/analysis.ts';
import { scoreBase } from '../../src/check/mends.ts';
import { compile } from '../../src/contacts/interpret.ts';
import { costOf, costOfProcedure } from '../../src/costing/cost.ts';
import { isReprocessed, REPROCESSED } from '../../src/costing/items.ts';
import { quantityOf, times } from '../../src/costing/supply.ts';
import { ITEM_IDS, itemKind } from '../../src/domain/items.ts';
import type { Person, Procedure, Step } from '../../src/domain/procedure.ts';
import { evidence, evidenceField, evidenceNumber } from '../../src/evidence/index.ts';
import { procedureOf, files } from '../procedures/shelf.ts';
import { procedures } from '../support/arbitraryProcedure.ts';
import { FIXTURES, person, procedure, step } from '../support/procedure.ts';

const wearer = (wears: Person['wears']): Person => person({ id: 'wearer', role: 'wearer', wears });
const small = (wears: Person['wears'], steps: readonly Step[], more: Partial<Procedure> = {}): Procedure =>
  procedure({ people: [wearer(wears)], steps, ...more });

describe('equipment', () => {
  test('one glove changed alone is a single, in pairs and singles', () => {
    const cost = costOfProcedure(
      small(
        ['gloves'],
        [
          step('off-left', 'remove', { items: ['gloves'], side: 'left', technique: 'peel-one' }),
          step('on-left', 'put-on', { items: ['gloves'], side: 'left', technique: 'pull-on-one' }),
          step('off', 'remove', { items: ['gloves'] }),
        ],
      ),
    );
    expect(cost.items).toMatchObject([
      {
        item: 'gloves',
        needed: { count: 3, pairs: 1, singles: 1 },
        opened: { count: 1, pairs: 0, singles: 1 },
        discarded: { count: 3, pairs: 1, singles: 1 },
        reprocessed: { count: 0 },
        leftOn: { count: 0 },
      },
    ]);
  });

  test('goggles and rubber boots are reprocessed, a shield is waste, a helper keeps on what is not taken off', () => {
    const helper = person({ id: 'assistant', role: 'assistant', wears: ['gown', 'gloves'] });
    const cost = costOf(
      compile(
        procedure({
          people: [wearer(['goggles', 'face-shield']), helper],
          steps: [
            step('shield', 'remove', { items: ['face-shield'] }),
            step('goggles', 'remove', { items: ['goggles'] }),
          ],
        }),
        'enveloped',
      ),
    );
    const of = (item: string) => cost.items.find((flow) => flow.item === item);
    expect(of('goggles')).toMatchObject({ discarded: { count: 0 }, reprocessed: { count: 1 } });
    expect(of('face-shield')).toMatchObject({ discarded: { count: 1 }, reprocessed: { count: 0 } });
    expect(of('gown')).toMatchObject({ needed: { count: 1 }, leftOn: { count: 1 } });
    expect(of('gloves')).toMatchObject({ leftOn: { pairs: 1, singles: 0 } });
    expect(cost.waste.pieces).toBe(1);
  });

  test('what cannot be taken off is not counted as waste', () => {
    const cost = costOfProcedure(small(['gloves'], [step('gown', 'remove', { items: ['gown'] })]));
    expect(cost.items.map(({ item, leftOn }) => [item, leftOn.count])).toEqual([['gloves', 2]]);
  });

  test('the list of reprocessed items is of items, and says that it is judgement', () => {
    const { value, status } = evidence(REPROCESSED);
    const again = ITEM_IDS.filter(isReprocessed);
    expect(value).toEqual(expect.arrayContaining(again));
    expect(value).toHaveLength(again.length);
    expect(status).toBe('judgement');
  });
  property.prop([procedures(20)])('nothing is lost: needed is discarded, reprocessed and left on', (any) => {
    for (const { needed, opened, discarded, reprocessed, leftOn } of costOfProcedure(any).items) {
      expect(discarded.count + reprocessed.count + leftOn.count).toBe(needed.count);
      expect(opened.count).toBeLessThanOrEqual(needed.count);
    }
  });

  test.each(files)('%s: nothing underneath is counted, pairs come as pairs', (file) => {
    for (const { item, needed } of costOfProcedure(procedureOf(file)).items) {
      expect(itemKind(item).underneath ?? false).toBe(false);
      expect(needed.pairs === undefined).toBe(!itemKind(item).pair);
    }
  });

  test('fresh items are those that the techniques say they use up', () => {
    const donning = compile(procedureOf('larkmoor-suit-donning.yaml'), 'enveloped');
    const said = donning.performed.flatMap(({ technique }) => technique.uses ?? []);
    const pieces = costOf(donning).items.reduce((sum, { opened }) => sum + opened.count, 0);
    expect(pieces).toBe(
      said.filter(({ what }) => what === 'fresh-item').reduce((sum, { count }) => sum + count, 0),
    );
    expect(pieces).toBeGreaterThan(8);
  });

  test('a quantity of several runs multiplies pairs and singles', () => {
    const one = quantityOf('gloves', { left: 2, right: 1, whole: 0 });
    expect(one).toEqual({ unit: 'piece', count: 3, pairs: 1, singles: 1 });
    expect(times(one, 4)).toEqual({ unit: 'piece', count: 12, pairs: 4, singles: 4 });
  });
});

describe('wipes, products and mats', () => {
  test('a rub is 3 mL (coverage study of 2021), 11 of them in the first procedure of the invented unit', () => {
    const rubs = procedureOf('larkmoor-suit-doffing.yaml').steps.filter(
      ({ action }) => action === 'sanitise',
    );
    const line = costOfProcedure(procedureOf('larkmoor-suit-doffing.yaml')).uses.find(
      ({ supply }) => supply.kind === 'product',
    );
    expect(evidenceNumber('handrub.volume')).toBe(3);
    expect(line?.quantity).toEqual({ unit: 'use', count: rubs.length });
    expect(line?.millilitres).toBe(3 * rubs.length);
    expect(line?.evidence).toContain('handrub.volume');
  });

  test('a wipe for each shoe, one for both where the technique says so', () => {
    const wiped = (technique: 'one-wipe-per-shoe' | 'same-wipe-for-both') =>
      costOfProcedure(
        small([], [step('shoes', 'wipe', { items: ['shoes'], product: 'disinfectant-wipe', technique })]),
      ).uses.map(({ supply, quantity }) => [supply.kind, quantity.count]);
    expect(wiped('one-wipe-per-shoe')).toEqual([['wipe', 2]]);
    expect(wiped('same-wipe-for-both')).toEqual([['wipe', 1]]);
  });

  test('no volume is made up for chlorine, soap or a soaked mat', () => {
    const mat = { id: 'mat', kind: 'mat', zone: 'anteroom', clean: false, product: 'chlorine-0.5' } as const;
    const cost = costOfProcedure(
      small(
        ['gloves'],
        [
          step('wash', 'sanitise', { product: 'soap-and-water' }),
          step('dip', 'sanitise', { product: 'chlorine-0.05' }),
          step('cloth', 'wipe', { fixture: 'chair', product: 'chlorine-0.5' }),
          step('mat', 'step-on', { fixture: 'mat' }),
          step('mat-again', 'step-on', { fixture: 'mat' }),
        ],
        { fixtures: [...FIXTURES, mat] },
      ),
    );
    expect(
      cost.uses.map(({ supply, quantity, millilitres }) => [supply, quantity.count, millilitres]),
    ).toEqual([
      [{ kind: 'wipe', product: 'chlorine-0.5' }, 1, null],
      [{ kind: 'product', product: 'soap-and-water' }, 1, null],
      [{ kind: 'product', product: 'chlorine-0.05' }, 1, null],
      [{ kind: 'mat', product: 'chlorine-0.5' }, 1, null],
    ]);
    for (const { evidence: grounds } of cost.uses) expect(grounds).toContain('supply.volume.no-figure');
  });

  test('hands cleaned with a wipe use a wipe', () => {
    const { uses } = costOfProcedure(
      small(['gloves'], [step('clean', 'sanitise', { product: 'disinfectant-wipe' })]),
    );
    expect(uses).toMatchObject([{ supply: { kind: 'wipe' }, quantity: { unit: 'wipe', count: 1 } }]);
    expect(uses[0]?.millilitres).toBeUndefined();
  });
});

describe('time and people', () => {
  test.each(files)('%s: the run takes what the measure says, its interval around it', (file) => {
    const read = procedureOf(file);
    const { run, people } = costOfProcedure(read);
    expect(run.seconds).toBeCloseTo(scoreBase(analyse(read, 'enveloped')).measure.seconds, 6);
    expect(run.interval.low).toBeLessThan(run.seconds);
    expect(run.interval.high).toBeGreaterThan(run.seconds);
    for (const { handsOn, tiedUp, role } of people) {
      expect(handsOn.seconds).toBeLessThanOrEqual(tiedUp.seconds);
      expect(tiedUp.seconds).toBeLessThanOrEqual(run.seconds);
      if (role !== 'assistant') expect(tiedUp).toEqual(run);
    }
  });

  test('one record alone has the interval of its own distribution: a factor of two each way', () => {
    const { run } = costOfProcedure(small(['gloves'], [step('off', 'remove', { items: ['gloves'] })]));
    const typical = evidenceNumber('duration.glove-removal');
    expect(run.seconds).toBe(typical);
    expect(run.interval.low / typical).toBeCloseTo(1 / 2, 1);
    expect(run.interval.high / typical).toBeCloseTo(2, 1);
  });

  test('an assistant is tied up from the first step that needs them to the last', () => {
    const helper = person({ id: 'assistant', role: 'assistant', wears: ['gloves'] });
    const say = (id: string, who = 'wearer') => step(id, 'say', { who });
    const { people } = costOfProcedure(
      procedure({
        people: [wearer([]), helper],
        steps: [
          say('a'),
          say('b', 'assistant'),
          say('c'),
          step('d', 'say', { helper: 'assistant' }),
          say('e'),
        ],
      }),
    );
    const seconds = evidenceNumber('duration.say');
    expect(people[1]).toMatchObject({
      handsOn: { seconds: 2 * seconds },
      tiedUp: { seconds: 3 * seconds },
      steps: [1, 3],
    });
    expect(people[0]?.tiedUp.seconds).toBe(5 * seconds);
  });

  test('somebody whom no step needs has no time', () => {
    const helper = person({ id: 'assistant', role: 'assistant' });
    const { people } = costOfProcedure(
      procedure({ people: [wearer([]), helper], steps: [step('a', 'say')] }),
    );
    expect(people[1]?.steps).toBeUndefined();
    expect(people[1]?.tiedUp.seconds).toBe(0);
  });
});

test('waste has no volume and no mass: what is published is per patient and day (Lowe 2014)', () => {
  const { waste } = costOfProcedure(procedureOf('larkmoor-suit-doffing.yaml'));
  expect([waste.litres, waste.kilograms]).toEqual([null, null]);
  expect(waste.evidence).toContain('waste.item.no-figure');
  expect(evidenceField('waste.lowe-2014.day', 'pounds')).toBe(50);
});
