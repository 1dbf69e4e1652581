// Helpers, feet and seats: who touches, whose slip it is, what soles and seats meet. Sources: Gurses 2019 (crossing the line, bumping
// into one another), trained-observer module (helper rolls outside; boot covers seated; clean chair), Kwon 2017 (deviations by helpers).
import { describe, expect, it } from 'vitest';
import type { ItemId } from '../../src/domain/items.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import type { ProductId } from '../../src/domain/products.ts';
import { FIXTURES, person, procedure, step } from '../support/procedure.ts';
import {
  always,
  bodyAfter,
  compiledOf,
  doffing,
  everSoiled,
  linesOf,
  problemsOf,
  soiledAfter,
  under,
} from './support.ts';

const helped = (
  wears: readonly ItemId[],
  steps: readonly Step[],
  fields: Partial<Procedure> = {},
): Procedure =>
  procedure({
    people: [
      person({ id: 'wearer', role: 'wearer', wears }),
      person({ id: 'assistant', role: 'assistant', wears: ['gloves'] }),
    ],
    steps,
    ...fields,
  });

const HELPER = 'assistant.gloves.left.outside';

describe('a helper', () => {
  const roll = step('roll', 'remove', {
    items: ['coverall'],
    technique: 'helper-rolls-outside',
    helper: 'assistant',
  });
  const open = step('open', 'unfasten', { items: ['coverall'], helper: 'assistant' });
  const compiled = compiledOf(helped(['coverall', 'gloves'], [open, roll]));

  it('touches with the own outermost layer what the technique gives to the helper', () => {
    expect(always(compiled, 'roll', HELPER, 'wearer.coverall.back')).toBe(true);
    expect(always(compiled, 'roll', HELPER, 'wearer.coverall.sleeve-left')).toBe(true);
    expect(always(compiled, 'open', 'assistant.gloves.right.outside', 'wearer.coverall.zip')).toBe(true);
    expect(always(compiled, 'open', 'wearer.gloves.right.outside', 'wearer.coverall.zip')).toBe(false);
  });

  it('slips by itself: the same slip of the wearer is another event', () => {
    const slips = compiled.plan.events.filter(({ step, what }) => step === 1 && what === 'wrong-grip');
    expect(new Map(slips.map(({ key, who }) => [key, who]))).toEqual(
      new Map([
        ['roll:wrong-grip:helper', 'assistant'],
        ['roll:wrong-grip', 'wearer'],
      ]),
    );
  });

  it('has a hand in it, with own slips, where the technique does not say what the helper does', () => {
    const goggles = step('goggles', 'remove', { items: ['goggles'], helper: 'assistant' });
    const unsaid = compiledOf(helped(['goggles', 'gloves'], [goggles]));
    expect(always(unsaid, 'goggles', HELPER, 'wearer.goggles.strap')).toBe(true);
    expect(under(unsaid, 'goggles', HELPER, 'wearer.goggles.front')).toEqual(['goggles:wrong-grip:helper']);
    expect(always(compiled, 'roll', HELPER, 'wearer.coverall.inside-lower')).toBe(false);
  });

  it('who takes headgear off does not reach for the face: the one who wears it does (observer module, page 21)', () => {
    const hood = step('hood', 'remove', { who: 'assistant', of: 'wearer', items: ['surgical-hood'] });
    const reach = compiledOf(helped(['surgical-hood', 'gloves'], [hood]));
    expect(under(reach, 'hood', 'wearer.gloves.left.outside', 'wearer.eyes')).toEqual(['hood:reach-to-face']);
    expect(under(reach, 'hood', HELPER, 'wearer.eyes')).toEqual([]);
    expect(reach.plan.events.find(({ key }) => key === 'hood:reach-to-face')?.who).toBe('wearer');
  });

  it('may step over the line: the clean floor, not without a helper', () => {
    const key = 'roll:cross-line:helper';
    expect(everSoiled(compiled, key)).toContain('room.corridor-floor.surface');
    expect(compiled.plan.events.find((event) => event.key === key)?.who).toBe('assistant');
    const alone = compiledOf(doffing(['gown'], [step('off', 'remove', { items: ['gown'] })]));
    expect(alone.plan.events.some(({ what }) => what === 'cross-line' || what === 'bump')).toBe(false);
  });

  it('may bump into the wearer, chest to chest', () => {
    const gown = compiledOf(
      helped(['gown'], [step('ties', 'unfasten', { items: ['gown'], helper: 'assistant' })]),
    );
    expect(under(gown, 'ties', 'wearer.gown.front', 'assistant.scrubs.front')).toEqual(['ties:bump']);
  });

  it('carries contamination to the next one touched when the hands are not cleaned', () => {
    const steps = [open, roll, step('steady', 'touch', { who: 'assistant', of: 'wearer', place: 'back' })];
    const without = compiledOf(helped(['coverall', 'gloves'], steps));
    expect(soiledAfter(without, 'steady')).toContain('wearer.scrubs.back');
    const rub = step('rub', 'sanitise', { who: 'assistant', product: 'alcohol-hand-rub' });
    const cleaned = compiledOf(helped(['coverall', 'gloves'], [open, roll, rub, steps[2]!]));
    expect(soiledAfter(cleaned, 'steady')).not.toContain('wearer.scrubs.back');
    expect(soiledAfter(cleaned, 'steady', 'rub:omitted-hygiene')).toContain('wearer.scrubs.back');
  });

  it('or owner in another zone cannot do it', () => {
    const away = (who: string, fields: Partial<Step>) =>
      problemsOf(
        procedure({
          people: [
            person({ id: 'wearer', role: 'wearer', wears: ['gown'] }),
            person({ id: 'assistant', role: 'assistant', starts: 'corridor' }),
          ],
          steps: [step('off', 'remove', { who, items: ['gown'], ...fields })],
        }),
      );
    expect(away('wearer', { helper: 'assistant' })).toEqual(['off: helper-elsewhere']);
    expect(away('assistant', { of: 'wearer' })).toEqual(['off: owner-elsewhere']);
  });
});

describe('soles', () => {
  const walk = [step('walk', 'move', { zone: 'corridor' })];
  const sole = 'wearer.shoes.left.sole';

  it('meet the floor they stand on at the end of every step', () => {
    expect(soiledAfter(compiledOf(doffing([], walk)), 'walk')).toContain('room.corridor-floor.surface');
  });

  it('of a boot cover meet it instead of the shoe', () => {
    const compiled = compiledOf(doffing(['boot-covers'], [step('say', 'say')]));
    expect(always(compiled, 'say', 'wearer.boot-covers.left.sole', 'room.anteroom-floor.surface')).toBe(true);
    expect(soiledAfter(compiled, 'say')).not.toContain(sole);
  });

  it('are lifted while seated, and meet the floor again on standing up', () => {
    const compiled = compiledOf(
      doffing(
        [],
        [
          step('sit', 'sit', { fixture: 'clean-chair' }),
          step('say', 'say'),
          step('stand', 'stand', { fixture: 'corridor-floor' }),
        ],
      ),
    );
    for (const seated of ['sit', 'say'])
      expect(linesOf(compiled, seated).filter((line) => line.includes('sole'))).toEqual([]);
    expect(always(compiled, 'stand', sole, 'room.corridor-floor.surface')).toBe(true);
    expect(bodyAfter(compiled, 'stand').zone).toBe('corridor');
  });

  it('of bystanders meet what the walker left on their floor', () => {
    const compiled = compiledOf(
      procedure({
        people: [
          person({ id: 'wearer', role: 'wearer', starts: 'room' }),
          person({ id: 'observer', role: 'observer' }),
        ],
        steps: [step('enter', 'move', { zone: 'anteroom' })],
      }),
    );
    expect(soiledAfter(compiled, undefined)).not.toContain('observer.shoes.left.sole');
    expect(soiledAfter(compiled, 'enter')).toContain('observer.shoes.left.sole');
  });

  it.each<[ProductId, 'enveloped' | 'non-enveloped', boolean]>([
    ['chlorine-0.5', 'enveloped', true],
    ['chlorine-0.5', 'non-enveloped', true],
    ['disinfectant-wipe', 'enveloped', true],
    ['alcohol-hand-rub', 'enveloped', false],
    ['soap-and-water', 'enveloped', false],
  ])('on a mat with %s, %s: cleaned %s', (product, agent, cleans) => {
    const mat = { id: 'mat', kind: 'mat', zone: 'anteroom', clean: false, product } as const;
    const compiled = compiledOf(
      doffing(['rubber-boots'], [step('on', 'step-on', { fixture: 'mat' })], {
        fixtures: [...FIXTURES, mat],
      }),
      agent,
    );
    expect(soiledAfter(compiled, undefined)).toContain('wearer.rubber-boots.left.sole');
    expect(soiledAfter(compiled, 'on').has('wearer.rubber-boots.left.sole')).toBe(!cleans);
    if (cleans)
      expect(soiledAfter(compiled, 'on', 'on:wipe-too-short:wearer-mat')).toContain(
        'wearer.rubber-boots.left.sole',
      );
    expect(soiledAfter(compiled, 'on')).toContain('room.mat.surface');
  });

  it('of rubber boots are stepped out of: the second sole on the first boot, no hand but by a slip', () => {
    const compiled = compiledOf(
      doffing(['rubber-boots', 'gloves'], [step('out', 'remove', { items: ['rubber-boots'] })]),
    );
    expect(
      always(compiled, 'out', 'wearer.rubber-boots.right.sole', 'wearer.rubber-boots.left.outside'),
    ).toBe(true);
    expect(under(compiled, 'out', 'wearer.gloves.left.outside', 'wearer.rubber-boots.left.outside')).toEqual([
      'out:wrong-grip',
    ]);
    expect(always(compiled, 'out', 'wearer.shoes.left.sole', 'room.anteroom-floor.surface')).toBe(true);
  });
});

describe('a seat', () => {
  it('meets what is outermost at the seat, on sitting down and for as long as one sits', () => {
    const compiled = compiledOf(
      doffing(
        ['coverall'],
        [
          step('open', 'unfasten', { items: ['coverall'] }),
          step('sit', 'sit', { fixture: 'chair' }),
          step('off', 'remove', { items: ['coverall'], technique: 'front-pull' }),
        ],
      ),
    );
    expect(always(compiled, 'sit', 'wearer.coverall.seat', 'room.chair.seat')).toBe(true);
    expect(soiledAfter(compiled, 'sit')).not.toContain('wearer.scrubs.seat');
    expect(soiledAfter(compiled, 'off')).toContain('wearer.scrubs.seat');
  });

  it('is no fixture of another kind, and no other chair is sat on instead', () => {
    const compiled = compiledOf(doffing([], [step('sit', 'sit', { fixture: 'bin' })]));
    expect(compiled.problems.map(({ code }) => code)).toEqual(['not-a-seat']);
    expect(linesOf(compiled, 'sit').filter((line) => line.includes('chair'))).toEqual([]);
    expect(bodyAfter(compiled, 'sit').seated).toBeUndefined();
  });
});

describe('bending', () => {
  it('lets the edge of an open suit meet shirt and hands, of a closed one nothing (enhanced protocol 2021)', () => {
    const untie = step('untie', 'unfasten', { items: ['shoe-covers'] });
    const zip = step('zip', 'unfasten', { items: ['coverall'] });
    const wears: readonly ItemId[] = ['coverall', 'shoe-covers', 'inner-gloves'];
    const late = compiledOf(doffing(wears, [zip, untie]));
    expect(under(late, 'untie', 'wearer.coverall.front', 'wearer.scrubs.front')).toEqual([
      'untie:edge-curls',
    ]);
    expect(under(late, 'untie', 'wearer.coverall.front', 'wearer.inner-gloves.left.outside')).toEqual([
      'untie:edge-curls',
    ]);
    const early = compiledOf(doffing(wears, [untie, zip]));
    expect(early.plan.events.some(({ what }) => what === 'edge-curls')).toBe(false);
  });
});
