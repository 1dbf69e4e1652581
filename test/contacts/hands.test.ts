// Hands touch with what is outermost on each at that moment, left and right apart; products work by agent and material;
// gloves leak. Sources: trained-observer module page 8 (second glove from under the cuff), Kwon 2017 (inner glove on outer),
// Casanova 2016 and 2018 (agents), Huebner 2013 (worn-through pairs), Suen 2018 (taps and levers).
import { describe, expect, it } from 'vitest';
import type { ItemId } from '../../src/domain/items.ts';
import type { Step } from '../../src/domain/procedure.ts';
import { AGENTS, MATERIALS, PRODUCTS, works } from '../../src/domain/products.ts';
import { FIXTURES, step, type StepFields } from '../support/procedure.ts';
import {
  always,
  bodyAfter,
  codesOf,
  compiledOf,
  doffing,
  everSoiled,
  linesOf,
  problemsOf,
  soiledAfter,
  under,
} from './support.ts';

const TWO: readonly ItemId[] = ['inner-gloves', 'gown', 'outer-gloves'];
const peel = (fields: StepFields = {}): Step =>
  step('peel', 'remove', { items: ['outer-gloves'], ...fields });
const rub = (id: string, fields: StepFields = {}): Step =>
  step(id, 'sanitise', { product: 'alcohol-hand-rub', ...fields });

const outer = (side: string, part = 'outside') => `wearer.outer-gloves.${side}.${part}`;
const inner = (side: string) => `wearer.inner-gloves.${side}.outside`;

describe('the second outer glove', () => {
  const compiled = compiledOf(doffing(TWO, [peel()]));

  it('is taken by the finger of the hand whose outer glove is off, which is an inner glove by then', () => {
    expect(always(compiled, 'peel', outer('right'), outer('left'))).toBe(true);
    expect(always(compiled, 'peel', inner('left'), outer('right', 'inside'))).toBe(true);
    expect(always(compiled, 'peel', inner('left'), inner('right'))).toBe(true);
  });

  it('is touched outside only by a slip, and the cuff of the gown lies under it', () => {
    expect(under(compiled, 'peel', inner('left'), outer('right'))).toEqual([
      'peel:snap',
      'peel:touch-beneath',
      'peel:wrong-grip',
    ]);
    expect(always(compiled, 'peel', inner('left'), 'wearer.gown.cuff-right')).toBe(true);
  });

  it('pulled by the outside is touched by the inner glove without any slip', () => {
    const pulled = compiledOf(doffing(TWO, [peel({ technique: 'pull-by-outside' })]));
    expect(always(pulled, 'peel', inner('left'), outer('right'))).toBe(true);
    expect(soiledAfter(pulled, 'peel')).toContain(inner('left'));
    expect(soiledAfter(compiled, 'peel')).not.toContain(inner('left'));
  });

  it('is the other hand with a left-handed wearer', () => {
    const left = compiledOf(doffing(TWO, [peel()], {}, { hand: 'left' }));
    expect(always(left, 'peel', outer('left'), outer('right'))).toBe(true);
    expect(always(left, 'peel', inner('right'), outer('left', 'inside'))).toBe(true);
    expect(under(left, 'peel', inner('right'), outer('left'))).toEqual([
      'peel:snap',
      'peel:touch-beneath',
      'peel:wrong-grip',
    ]);
  });

  it('meets bare skin where there is no inner glove', () => {
    const single = compiledOf(doffing(['gloves'], [step('peel', 'remove', { items: ['gloves'] })]));
    expect(always(single, 'peel', 'wearer.hand.left', 'wearer.gloves.right.inside')).toBe(true);
    expect(under(single, 'peel', 'wearer.hand.left', 'wearer.gloves.right.outside')).toEqual([
      'peel:snap',
      'peel:touch-beneath',
      'peel:wrong-grip',
    ]);
    expect(everSoiled(single)).not.toContain('wearer.hand.left');
    expect(everSoiled(single, 'peel:wrong-grip')).toContain('wearer.hand.left');
  });
});

describe('a step that names a side', () => {
  const one = (side: 'left' | 'right') => compiledOf(doffing(TWO, [peel({ side })]));

  it.each(['left', 'right'] as const)('takes off the %s glove only', (side) => {
    const other = side === 'left' ? 'right' : 'left';
    const compiled = one(side);
    expect(compiled.problems).toEqual([]);
    const worn = bodyAfter(compiled, 'peel').layers.filter(({ item }) => item === 'outer-gloves');
    expect(worn.map((layer) => layer.side)).toEqual([other]);
    expect(always(compiled, 'peel', outer(other), outer(side))).toBe(true);
    expect(linesOf(compiled, 'peel').some((line) => line.includes(outer(other, 'inside')))).toBe(false);
  });

  it('unties one shoe cover and leaves the other tied', () => {
    const untied = compiledOf(
      doffing(['shoe-covers'], [step('untie', 'unfasten', { items: ['shoe-covers'], side: 'left' })]),
    );
    const covers = bodyAfter(untied, 'untie').layers.filter(({ item }) => item === 'shoe-covers');
    expect(covers.map(({ side, fastened }) => [side, fastened])).toEqual([
      ['left', false],
      ['right', true],
    ]);
    expect(under(untied, 'untie', 'wearer.hand.left', 'wearer.shoe-covers.right.strings')).toEqual([]);
  });

  it('lets the hand that is still in its outer glove slip on the inner glove it bares', () => {
    expect(under(one('left'), 'peel', outer('right'), inner('left'))).toEqual(['peel:touch-beneath']);
  });

  it('left and right in two steps bare both hands', () => {
    const both = doffing(TWO, [
      peel({ side: 'right' }),
      step('second', 'remove', { items: ['outer-gloves'], side: 'left' }),
    ]);
    expect(problemsOf(both)).toEqual([]);
    expect(bodyAfter(compiledOf(both), 'second').layers.some(({ item }) => item === 'outer-gloves')).toBe(
      false,
    );
  });

  it('wipes and cleans one shoe without a complaint about the other', () => {
    const shoe = doffing(
      [],
      [
        step('sit', 'sit', { fixture: 'clean-chair' }),
        step('wipe', 'wipe', { items: ['shoes'], side: 'left', product: 'disinfectant-wipe' }),
      ],
    );
    expect(problemsOf(shoe)).toEqual([]);
    const cleaned = linesOf(compiledOf(shoe), 'wipe').filter((line) => line.startsWith('clean '));
    expect(cleaned.every((line) => line.includes('shoes.left'))).toBe(true);
    expect(cleaned).toHaveLength(2);
  });
});

describe('what lies beneath one of a pair', () => {
  it('is looked up on its own side, however far apart the two were put on', () => {
    const apart = doffing(
      ['inner-gloves', 'outer-gloves'],
      [
        step('off-right', 'remove', { items: ['outer-gloves'], side: 'right' }),
        step('gown', 'put-on', { items: ['gown'] }),
        step('on-right', 'put-on', { items: ['outer-gloves'], side: 'right' }),
        step('off-again', 'remove', { items: ['outer-gloves'], side: 'right' }),
      ],
    );
    const compiled = compiledOf(apart);
    expect(under(compiled, 'off-again', outer('left'), 'wearer.gown.cuff-right')).toEqual([
      'off-again:touch-beneath',
    ]);
  });
});

describe('fresh gloves', () => {
  it('are uncontaminated outside, and one of a pair does not wash the other', () => {
    const one = doffing(
      ['gloves'],
      [
        step('off', 'remove', { items: ['gloves'], side: 'left' }),
        rub('rub'),
        step('on', 'put-on', { items: ['gloves'], technique: 'pull-on-one', side: 'left' }),
      ],
      { start: [{ surface: 'wearer.gloves.right.outside', state: 'contaminated' }] },
    );
    // The right glove, still dirty as rub is of no use against this agent, takes hold of the fresh left one.
    expect(soiledAfter(compiledOf(one, 'non-enveloped'), 'on')).toContain('wearer.gloves.right.outside');
    expect(soiledAfter(compiledOf(one, 'non-enveloped'), 'on')).toContain('wearer.gloves.left.outside');
    expect(soiledAfter(compiledOf(one, 'enveloped'), 'on')).not.toContain('wearer.gloves.left.outside');
  });

  it('put on over the same do not make it clean', () => {
    const again = doffing(['gloves'], [step('on', 'put-on', { items: ['gloves'] })]);
    expect(problemsOf(again)).toEqual(['on: already-worn', 'on: already-worn']);
    expect(soiledAfter(compiledOf(again), 'on')).toContain('wearer.gloves.left.outside');
  });

  it('may have a pinhole of their own', () => {
    const fresh = compiledOf(
      doffing([], [step('on', 'put-on', { items: ['gloves'] }), step('touch', 'touch', { fixture: 'bin' })], {
        start: [{ surface: 'room.bin.lid', state: 'contaminated' }],
      }),
    );
    expect(soiledAfter(fresh, 'touch')).not.toContain('wearer.hand.left');
    expect(soiledAfter(fresh, 'touch', 'on:pinhole')).toContain('wearer.hand.left');
  });
});

describe('a holed glove', () => {
  const HOLE = 'start:worn-through:wearer.gloves';
  const dirtyBin = {
    start: [
      { surface: 'wearer.gloves.left.outside', state: 'uncontaminated' },
      { surface: 'wearer.gloves.right.outside', state: 'uncontaminated' },
      { surface: 'room.bin.lid', state: 'contaminated' },
    ],
  } as const;
  const touch = (id: string) => step(id, 'touch', { fixture: 'bin' });

  it('leaks at each later contact, from the start on', () => {
    const start = compiledOf(doffing(['gloves'], []));
    expect(soiledAfter(start, undefined, HOLE)).toContain('wearer.hand.left');
    const later = compiledOf(doffing(['gloves'], [touch('one')], dirtyBin));
    expect(soiledAfter(later, undefined, HOLE)).not.toContain('wearer.hand.left');
    expect(soiledAfter(later, 'one', HOLE)).toContain('wearer.hand.left');
  });

  it('leaks outwards too', () => {
    const out = compiledOf(
      doffing(['gloves'], [touch('one')], {
        start: [...dirtyBin.start.slice(0, 2), { surface: 'wearer.hand.left', state: 'contaminated' }],
      }),
    );
    expect(soiledAfter(out, 'one', HOLE)).toContain('room.bin.lid');
    expect(soiledAfter(out, 'one')).not.toContain('room.bin.lid');
  });

  it('leaks only if the inspection missed it, once it was inspected', () => {
    const looked = compiledOf(doffing(['gloves'], [step('look', 'inspect'), touch('one')], dirtyBin));
    expect(soiledAfter(looked, 'one', HOLE)).not.toContain('wearer.hand.left');
    expect(soiledAfter(looked, 'one', HOLE, 'look:missed-tear:gloves')).toContain('wearer.hand.left');
  });

  it('under another glove, or not the one named, is not inspected', () => {
    const steps = [step('look', 'inspect'), step('named', 'inspect', { items: ['inner-gloves'] })];
    const compiled = compiledOf(doffing(['inner-gloves', 'outer-gloves'], steps));
    expect(compiled.plan.events.map(({ key }) => key)).toContain('look:missed-tear:outer-gloves');
    expect(
      compiled.plan.events.filter(({ key }) => key.endsWith('inner-gloves') && key.includes('tear')),
    ).toEqual([]);
    const bared = compiledOf(
      doffing(
        ['inner-gloves', 'outer-gloves'],
        [peel(), step('look', 'inspect', { items: ['inner-gloves'] })],
      ),
    );
    expect(bared.plan.events.map(({ key }) => key)).toContain('look:missed-tear:inner-gloves');
  });

  it('leaks what it met in the step that takes it off', () => {
    // The right glove picks up the left one's outside and leaves in the same step.
    const off = compiledOf(
      doffing(['gloves'], [step('off', 'remove', { items: ['gloves'] })], {
        start: [{ surface: 'wearer.gloves.right.outside', state: 'uncontaminated' }],
      }),
    );
    expect(soiledAfter(off, undefined, HOLE)).not.toContain('wearer.hand.right');
    expect(soiledAfter(off, 'off', HOLE)).toContain('wearer.hand.right');
  });

  it('leaks what it met on the way to the rub, which does not reach the hand', () => {
    const lever = { id: 'lever', kind: 'dispenser', zone: 'anteroom', clean: false, worked: 'hand' } as const;
    const rubbed = compiledOf(
      doffing(['gloves'], [rub('rub', { fixture: 'lever' })], {
        fixtures: [...FIXTURES, lever],
        start: [...dirtyBin.start.slice(0, 2), { surface: 'room.lever.lever', state: 'contaminated' }],
      }),
    );
    expect(soiledAfter(rubbed, 'rub', HOLE)).toContain('wearer.hand.left');
    expect(soiledAfter(rubbed, 'rub')).not.toContain('wearer.hand.left');
  });

  it('is a pair of one event, each item its own', () => {
    const { plan } = compiledOf(doffing(['inner-gloves', 'outer-gloves'], []));
    expect(plan.events.map(({ key }) => key).filter((key) => key.includes('worn-through'))).toEqual([
      'start:worn-through:wearer.inner-gloves',
      'start:worn-through:wearer.outer-gloves',
    ]);
  });
});

describe('products work by agent and material', () => {
  it('alcohol rub clears gloves of the enveloped agent only (Casanova 2016)', () => {
    const gloved = doffing(['gloves'], [rub('rub')]);
    expect(soiledAfter(compiledOf(gloved, 'enveloped'), 'rub')).not.toContain('wearer.gloves.left.outside');
    expect(soiledAfter(compiledOf(gloved, 'enveloped'), 'rub', 'rub:omitted-hygiene')).toContain(
      'wearer.gloves.left.outside',
    );
    expect(soiledAfter(compiledOf(gloved, 'non-enveloped'), 'rub')).toContain('wearer.gloves.left.outside');
    const chlorine = doffing(['gloves'], [rub('rub', { product: 'chlorine-0.5' })]);
    expect(soiledAfter(compiledOf(chlorine, 'non-enveloped'), 'rub')).not.toContain(
      'wearer.gloves.left.outside',
    );
  });

  /** A surface of each material that a step can clean, and the step. */
  const CASES = {
    skin: { wears: [], surface: 'wearer.hand.left', step: rub('clean') },
    glove: { wears: ['gloves'], surface: 'wearer.gloves.left.outside', step: rub('clean') },
    equipment: {
      wears: ['apron'],
      surface: 'wearer.apron.front',
      step: step('clean', 'wipe', { items: ['apron'] }),
    },
    hard: { wears: [], surface: 'room.bin.lid', step: step('clean', 'wipe', { fixture: 'bin' }) },
  } as const;
  const withTap = [
    ...FIXTURES,
    { id: 'tap', kind: 'tap', zone: 'anteroom', clean: false, worked: 'elbow' } as const,
  ];

  describe.each(AGENTS)('%s', (agent) => {
    describe.each(PRODUCTS)('$id', ({ id, suits }) => {
      it.each(MATERIALS.filter((material) => material in CASES))('on %s', (material) => {
        const one = CASES[material as keyof typeof CASES];
        const compiled = compiledOf(
          doffing(one.wears, [{ ...one.step, product: id }], {
            fixtures: withTap,
            start: [{ surface: one.surface, state: 'contaminated' }],
          }),
          agent,
        );
        const suited = (suits as readonly string[]).includes(material);
        const credited = suited && works(id, agent, material);
        expect(soiledAfter(compiled, 'clean').has(one.surface)).toBe(!credited);
        expect(compiled.problems.some(({ code }) => code === 'product-unsuited')).toBe(!suited);
      });
    });
  });

  it('sprayed count only where the unit says so (WHO 2023)', () => {
    const spray = (creditSpraying: boolean) =>
      compiledOf(
        doffing(
          ['gloves', 'apron'],
          [
            rub('hands', { technique: 'spray-hands' }),
            step('apron', 'wipe', { items: ['apron'], technique: 'spray-over', product: 'chlorine-0.5' }),
          ],
          { policy: { creditSpraying } },
        ),
      );
    for (const [step, surface] of [
      ['hands', 'wearer.gloves.left.outside'],
      ['apron', 'wearer.apron.front'],
    ] as const) {
      expect(soiledAfter(spray(false), step)).toContain(surface);
      expect(soiledAfter(spray(true), step)).not.toContain(surface);
    }
  });

  it('clean the part that a step names and no other', () => {
    const compiled = compiledOf(
      doffing(
        ['apron'],
        [step('wipe', 'wipe', { items: ['apron'], part: 'front', product: 'disinfectant-wipe' })],
      ),
    );
    expect(soiledAfter(compiled, 'wipe')).not.toContain('wearer.apron.front');
    expect(soiledAfter(compiled, 'wipe')).toContain('wearer.apron.skirt');
  });

  it('clean the item that a step names when no way is written', () => {
    const wiped = doffing(
      ['apron'],
      [step('wipe', 'wipe', { items: ['apron'], product: 'disinfectant-wipe' })],
    );
    expect(codesOf(wiped)).toEqual([]);
    expect(soiledAfter(compiledOf(wiped), 'wipe')).not.toContain('wearer.apron.front');
  });

  it.each<ItemId>(['rubber-boots', 'boot-covers', 'shoe-covers'])('clean outside and sole of %s', (item) => {
    const wiped = compiledOf(
      doffing(
        [item],
        [
          step('sit', 'sit', { fixture: 'clean-chair' }),
          step('wipe', 'wipe', { items: [item], product: 'disinfectant-wipe' }),
        ],
      ),
    );
    expect(soiledAfter(wiped, 'sit')).toContain(`wearer.${item}.left.outside`);
    expect(soiledAfter(wiped, 'wipe')).not.toContain(`wearer.${item}.left.outside`);
    expect(soiledAfter(wiped, 'wipe')).not.toContain(`wearer.${item}.right.sole`);
  });
});

describe('fixtures worked by hand', () => {
  const room = (
    kind: 'bin' | 'dispenser' | 'tap' | 'door',
    worked?: 'hand' | 'elbow' | 'pedal' | 'sensor',
  ) => ({
    fixtures: [
      ...FIXTURES.filter((fixture) => fixture.kind !== kind),
      { id: 'it', kind, zone: 'anteroom', clean: false, ...(worked ? { worked } : {}) },
    ],
  });
  const bare = 'wearer.hand.left';

  it('a bin lid meets the hand that throws away, a pedal does not (Suen 2018)', () => {
    const off = [step('off', 'remove', { items: ['gloves'] })];
    expect(
      always(compiledOf(doffing(['gloves'], off, room('bin', 'hand'))), 'off', bare, 'room.it.lid'),
    ).toBe(true);
    const pedal = compiledOf(doffing(['gloves'], off, room('bin', 'pedal')));
    expect(under(pedal, 'off', bare, 'room.it.lid')).toEqual(['off:full-bin', 'off:touch-fixture']);
  });

  it('a dispenser lever meets the hand before the rub, which clears what it left', () => {
    const lever = compiledOf(
      doffing([], [rub('rub')], {
        ...room('dispenser', 'hand'),
        start: [{ surface: 'room.it.lever', state: 'contaminated' }],
      }),
    );
    expect(everSoiled(lever)).toContain(bare);
    expect(soiledAfter(lever, 'rub')).not.toContain(bare);
    const elbow = compiledOf(
      doffing([], [rub('rub')], {
        ...room('dispenser', 'elbow'),
        start: [{ surface: 'room.it.lever', state: 'contaminated' }],
      }),
    );
    expect(everSoiled(elbow)).not.toContain(bare);
  });

  it('a tap meets the hand again after washing', () => {
    const wash = [rub('wash', { product: 'soap-and-water' })];
    const tap = compiledOf(
      doffing([], wash, {
        ...room('tap', 'hand'),
        start: [{ surface: 'room.it.handle', state: 'contaminated' }],
      }),
    );
    expect(soiledAfter(tap, 'wash')).toContain(bare);
    const elbow = compiledOf(
      doffing([], wash, {
        ...room('tap', 'elbow'),
        start: [{ surface: 'room.it.handle', state: 'contaminated' }],
      }),
    );
    expect(soiledAfter(elbow, 'wash')).not.toContain(bare);
  });

  it('a tap is no business of hand rub, unless the step names it', () => {
    const dirty = {
      ...room('tap', 'hand'),
      start: [{ surface: 'room.it.handle', state: 'contaminated' as const }],
    };
    expect(everSoiled(compiledOf(doffing([], [rub('rub')], dirty)))).not.toContain(bare);
    expect(everSoiled(compiledOf(doffing([], [rub('rub', { fixture: 'it' })], dirty)))).toContain(bare);
  });

  it('a door is worked by hand unless the file says otherwise, from either side', () => {
    const walk = [step('walk', 'move', { zone: 'anteroom' })];
    const from = { starts: 'room' };
    const door = (worked?: 'sensor') => compiledOf(doffing([], walk, room('door', worked), from));
    expect(always(door(), 'walk', bare, 'room.it.handle')).toBe(true);
    expect(under(door('sensor'), 'walk', bare, 'room.it.handle')).toEqual([]);
  });
});
