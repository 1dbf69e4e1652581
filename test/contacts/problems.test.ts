// What a procedure cannot do: per code a procedure that has it and the nearest one that has not. A code that nothing here
// produces fails the last test.
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES, type ProblemCode } from '../../src/contacts/problem.ts';
import type { ItemId } from '../../src/domain/items.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { FIXTURES, person, procedure, step, type StepFields } from '../support/procedure.ts';
import { doffing, problemsOf } from './support.ts';

const off = (item: ItemId, fields: StepFields = {}): Step =>
  step('it', 'remove', { items: [item], ...fields });
const sit = (fixture: string): Step => step('sit', 'sit', { fixture });

function withHelper(wears: readonly ItemId[], starts: string, ...steps: readonly Step[]): Procedure {
  return procedure({
    people: [
      person({ id: 'wearer', role: 'wearer', wears }),
      person({ id: 'assistant', role: 'assistant', starts, wears: ['gloves'] }),
    ],
    steps,
  });
}

const withTap = (zone: string): Partial<Procedure> => ({
  fixtures: [...FIXTURES, { id: 'tap', kind: 'tap', zone, clean: false }],
});

/** Per code: a procedure whose step `it` has this problem and no other, and one that has none. */
const CASES: Readonly<Record<ProblemCode, readonly [Procedure, Procedure]>> = {
  'not-worn': [doffing([], [off('gown')]), doffing(['gown'], [off('gown')])],
  'held-by': [
    doffing(['gown', 'apron'], [off('gown')]),
    doffing(['gown', 'apron'], [step('apron', 'remove', { items: ['apron'] }), off('gown')]),
  ],
  'already-worn': [
    doffing(['gown'], [step('it', 'put-on', { items: ['gown'] })]),
    doffing([], [step('it', 'put-on', { items: ['gown'] })]),
  ],
  'no-glove-beneath': [
    doffing([], [step('it', 'put-on', { items: ['outer-gloves'], side: 'left' })]),
    doffing(['inner-gloves'], [step('it', 'put-on', { items: ['outer-gloves'], side: 'left' })]),
  ],
  'still-fastened': [
    doffing(['coverall'], [off('coverall', { technique: 'roll-inside' })]),
    doffing(
      ['coverall'],
      [step('open', 'unfasten', { items: ['coverall'] }), off('coverall', { technique: 'roll-inside' })],
    ),
  ],
  'already-open': [
    doffing(
      ['gown'],
      [step('open', 'unfasten', { items: ['gown'] }), step('it', 'unfasten', { items: ['gown'] })],
    ),
    doffing(
      ['gown'],
      [
        step('open', 'unfasten', { items: ['gown'], part: 'neck-tie' }),
        step('it', 'unfasten', { items: ['gown'], part: 'waist-tie' }),
      ],
    ),
  ],
  'helper-missing': [
    doffing(
      ['powered-hood'],
      [
        step('hose', 'unfasten', { items: ['powered-hood'] }),
        off('powered-hood', { technique: 'helper-cuffs-hood' }),
      ],
    ),
    withHelper(
      ['powered-hood'],
      'anteroom',
      step('hose', 'unfasten', { items: ['powered-hood'] }),
      off('powered-hood', { technique: 'helper-cuffs-hood', helper: 'assistant' }),
    ),
  ],
  'helper-elsewhere': [
    withHelper(['gown'], 'corridor', off('gown', { helper: 'assistant' })),
    withHelper(['gown'], 'anteroom', off('gown', { helper: 'assistant' })),
  ],
  'owner-elsewhere': [
    withHelper(['gown'], 'corridor', off('gown', { who: 'assistant', of: 'wearer' })),
    withHelper(['gown'], 'anteroom', off('gown', { who: 'assistant', of: 'wearer' })),
  ],
  'fixture-missing': [
    doffing([], [step('it', 'sanitise', { product: 'soap-and-water' })], withTap('corridor')),
    doffing([], [step('it', 'sanitise', { product: 'soap-and-water' })], withTap('anteroom')),
  ],
  'fixture-elsewhere': [
    doffing([], [step('it', 'touch', { fixture: 'corridor-floor' })]),
    doffing([], [step('it', 'touch', { fixture: 'anteroom-floor' })]),
  ],
  'not-a-seat': [
    doffing([], [step('it', 'sit', { fixture: 'bin' })]),
    doffing([], [step('it', 'sit', { fixture: 'chair' })]),
  ],
  'not-seated': [
    doffing(['boot-covers'], [off('boot-covers')]),
    doffing(['boot-covers'], [sit('chair'), off('boot-covers')]),
  ],
  'not-standing': [
    doffing(['boot-covers'], [sit('chair'), off('boot-covers', { technique: 'standing-on-one-leg' })]),
    doffing(
      ['boot-covers'],
      [sit('chair'), step('up', 'stand'), off('boot-covers', { technique: 'standing-on-one-leg' })],
    ),
  ],
  'dirty-seat': [
    doffing([], [sit('chair'), step('it', 'wipe', { items: ['shoes'], product: 'disinfectant-wipe' })]),
    doffing([], [sit('clean-chair'), step('it', 'wipe', { items: ['shoes'], product: 'disinfectant-wipe' })]),
  ],
  'product-unsuited': [
    doffing([], [step('it', 'sanitise', { product: 'chlorine-0.5' })]),
    doffing(['gloves'], [step('it', 'sanitise', { product: 'chlorine-0.5' })]),
  ],
  'technique-unclear': [
    doffing([], [step('it', 'remove', { items: ['scrubs'] })]),
    doffing(['gown'], [step('it', 'remove', { items: ['gown'] })]),
  ],
  'nothing-to-clean': [
    doffing([], [step('it', 'wipe', { product: 'disinfectant-wipe' })]),
    doffing([], [step('it', 'wipe', { product: 'disinfectant-wipe', fixture: 'bin' })]),
  ],
};

describe.each(PROBLEM_CODES)('%s', (code) => {
  const [faulty, near] = CASES[code];

  it('is found where it is', () => {
    expect([...new Set(problemsOf(faulty))]).toEqual([`it: ${code}`]);
  });

  it('is not found in the nearest procedure that can be done', () => {
    expect(problemsOf(near)).toEqual([]);
  });
});

describe('problems', () => {
  it('do not hide one another', () => {
    expect(
      problemsOf(
        doffing(
          ['gown', 'apron', 'boot-covers'],
          [
            off('gown'),
            step('boots', 'remove', { items: ['boot-covers'] }),
            step('cap', 'remove', { items: ['cap'] }),
          ],
        ),
      ),
    ).toEqual(['it: held-by', 'boots: not-seated', 'cap: not-worn']);
  });

  it('are asked of the one who wears the item, not of the one who takes it off', () => {
    const boots = (...steps: readonly Step[]) =>
      problemsOf(
        withHelper(
          ['boot-covers'],
          'anteroom',
          ...steps,
          off('boot-covers', { who: 'assistant', of: 'wearer' }),
        ),
      );
    expect(boots(sit('chair'))).toEqual([]);
    expect(boots(step('sit', 'sit', { who: 'assistant', fixture: 'chair' }))).toEqual(['it: not-seated']);
  });

  it('of a pair are told of the side that has them', () => {
    const one = doffing(
      ['gloves'],
      [step('left', 'remove', { items: ['gloves'], side: 'left' }), off('gloves')],
    );
    expect(problemsOf(one)).toEqual(['it: not-worn']);
  });

  it('stop a wipe of what lies under something else: shoes in boot covers, gloves in gloves', () => {
    const wipe = (item: ItemId, ...before: readonly Step[]) =>
      problemsOf(
        doffing(
          ['boot-covers', 'inner-gloves', 'gown', 'outer-gloves'],
          [
            sit('clean-chair'),
            ...before,
            step('it', 'wipe', { items: [item], product: 'disinfectant-wipe' }),
          ],
        ),
      );
    const gone = (item: ItemId): Step => step('gone', 'remove', { items: [item] });
    expect(wipe('shoes')).toContain('it: held-by');
    expect(wipe('shoes', gone('boot-covers'))).not.toContain('it: held-by');
    expect(new Set(wipe('inner-gloves'))).toEqual(new Set(['it: held-by']));
    expect(wipe('inner-gloves', gone('outer-gloves'))).toEqual([]);
    expect(wipe('gown')).toEqual([]);
  });

  it('keep a blower on until the hood is off its hose (training module, powered respirator, doffing 10)', () => {
    const hose = step('hose', 'unfasten', { items: ['powered-hood'] });
    expect(problemsOf(doffing(['blower', 'powered-hood'], [off('blower')]))).toEqual(['it: still-fastened']);
    expect(problemsOf(doffing(['blower', 'powered-hood'], [hose, off('blower')]))).toEqual([]);
    expect(problemsOf(doffing(['blower'], [off('blower')]))).toEqual([]);
  });

  it('connect a hood to no blower that is not worn', () => {
    const on = (item: ItemId) => step(item, 'put-on', { items: [item] });
    const connect = (item: ItemId) => step('it', 'fasten', { items: [item] });
    const dressed = (...steps: readonly Step[]) => problemsOf({ ...doffing([], steps), kind: 'donning' });
    expect(dressed(on('powered-hood'), connect('powered-hood'))).toEqual(['it: not-worn']);
    expect(dressed(on('blower'), on('powered-hood'), connect('powered-hood'))).toEqual([]);
    expect(dressed(on('powered-helmet'), connect('powered-helmet'))).toEqual([]);
  });
});
