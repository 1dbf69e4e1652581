// What a place touches with, and what must come off first. The layering is our reading of the equipment; the orders it must
// allow and forbid are those of the trained-observer module (gown, coverall, hood pages) and the everyday sequences.
import { describe, expect, it } from 'vitest';
import { blockedBy, indexOf } from '../../src/contacts/body.ts';
import type { ItemId } from '../../src/domain/items.ts';
import { PLACES, type Place, placeName, TISSUE } from '../../src/domain/places.ts';
import { step } from '../support/procedure.ts';
import { bodyAfter, compiledOf, doffing, problemsOf, soiledAfter, touchesWith } from './support.ts';

const VHF: readonly ItemId[] = [
  'boot-covers',
  'inner-gloves',
  'coverall',
  'n95-respirator',
  'surgical-hood',
  'face-shield',
  'apron',
  'outer-gloves',
];

describe('each place touches with its outermost layer', () => {
  it.each<[Place, string]>([
    ['hand.left', 'wearer.outer-gloves.left.outside'],
    ['wrist.right', 'wearer.outer-gloves.right.outside'],
    ['arm.left', 'wearer.coverall.sleeve-left'],
    ['chest', 'wearer.apron.front'],
    ['waist', 'wearer.apron.front'],
    ['back', 'wearer.coverall.back'],
    ['seat', 'wearer.coverall.seat'],
    ['thigh.left', 'wearer.apron.skirt'],
    ['shin.right', 'wearer.apron.skirt'],
    ['ankle.left', 'wearer.coverall.leg-left'],
    ['foot.left', 'wearer.boot-covers.left.outside'],
    ['sole.right', 'wearer.boot-covers.right.sole'],
    ['scalp', 'wearer.surgical-hood.outside'],
    ['ears', 'wearer.surgical-hood.outside'],
    ['neck', 'wearer.surgical-hood.lower-edge'],
    ['face', 'wearer.face-shield.front'],
    ['eyes', 'wearer.face-shield.front'],
    ['nose', 'wearer.face-shield.front'],
    ['mouth', 'wearer.face-shield.front'],
  ])('%s with %s', (place, surface) => {
    expect(touchesWith(VHF, place)).toBe(surface);
  });

  it('is skin or mucosa where nothing is worn, and clothes where only they are', () => {
    for (const place of PLACES.filter((one) => TISSUE[placeName(one)]))
      expect(touchesWith([], place)).toBe(`wearer.${place}`);
    expect(touchesWith([], 'chest')).toBe('wearer.scrubs.front');
    expect(touchesWith([], 'waist')).toBe('wearer.scrubs.hem');
    expect(touchesWith([], 'shin.left')).toBe('wearer.scrubs.leg-left');
    expect(touchesWith([], 'sole.left')).toBe('wearer.shoes.left.sole');
  });

  it.each<[readonly ItemId[], Place, string]>([
    [['gloves', 'gown'], 'wrist.left', 'wearer.gown.cuff-left'],
    [['gown', 'gloves'], 'wrist.left', 'wearer.gloves.left.outside'],
    [['coverall', 'rubber-boots'], 'shin.left', 'wearer.rubber-boots.left.outside'],
    [['rubber-boots', 'coverall'], 'shin.left', 'wearer.coverall.leg-left'],
    [['hooded-coverall', 'goggles'], 'eyes', 'wearer.goggles.front'],
    [['n95-respirator', 'powered-hood'], 'nose', 'wearer.powered-hood.outside'],
  ])('%s: %s follows the order of putting on', (wears, place, surface) => {
    expect(touchesWith(wears, place)).toBe(surface);
  });

  it('changes with every layer that comes off', () => {
    const compiled = compiledOf(
      doffing(VHF, [
        step('apron', 'remove', { items: ['apron'] }),
        step('outer', 'remove', { items: ['outer-gloves'] }),
        step('shield', 'remove', { items: ['face-shield'] }),
      ]),
    );
    expect(compiled.problems).toEqual([]);
    const worn = bodyAfter(compiled, 'shield').layers.map(({ item }) => item);
    expect(worn).not.toContain('apron');
    expect(worn).not.toContain('outer-gloves');
    expect(worn).toContain('inner-gloves');
  });
});

/** The item that must come off first when `item` is to come off these. */
function holder(
  wears: readonly ItemId[],
  item: ItemId,
  together: readonly ItemId[] = [],
): ItemId | undefined {
  const body = bodyAfter(compiledOf(doffing(wears, [])), undefined);
  const index = [indexOf(body, item), indexOf(body, item, 'left')].find((at) => at >= 0) ?? -1;
  return blockedBy(body, index, together);
}

describe('what lies over holds what lies under', () => {
  it.each<[ItemId, ItemId]>([
    ['surgical-hood', 'face-shield'],
    ['n95-respirator', 'face-shield'],
    ['n95-respirator', 'surgical-hood'],
    ['goggles', 'surgical-hood'],
    ['goggles', 'hooded-coverall'],
    ['hooded-coverall', 'surgical-hood'],
    ['hooded-coverall', 'powered-hood'],
    ['hooded-coverall', 'goggles'],
    ['gown', 'outer-gloves'],
    ['gown', 'apron'],
    ['gown', 'blower'],
    ['coverall', 'boot-covers'],
    ['boot-covers', 'coverall'],
    ['rubber-boots', 'coverall'],
    ['coverall', 'rubber-boots'],
    ['inner-gloves', 'outer-gloves'],
    ['cap', 'surgical-hood'],
    ['surgical-mask', 'powered-hood'],
    ['surgical-mask', 'hooded-coverall'],
    ['shoe-covers', 'coverall'],
  ])('%s under %s', (under, over) => {
    expect(holder([under, over], under)).toBe(over);
    expect(holder([under, over], over)).toBeUndefined();
  });

  it.each<[ItemId, ItemId, string]>([
    ['inner-gloves', 'gown', 'gloves slide out from under a cuff'],
    ['inner-gloves', 'coverall', 'gloves slide out from under a cuff'],
    ['boot-covers', 'gown', 'a skirt hangs free'],
    ['boot-covers', 'apron', 'a skirt hangs free'],
    ['coverall', 'surgical-hood', 'a lower edge hangs free'],
    ['n95-respirator', 'goggles', 'they meet nowhere but at the straps'],
    ['goggles', 'n95-respirator', 'they meet nowhere but at the straps'],
  ])('%s is not held by %s: %s', (under, over) => {
    expect(holder([under, over], under)).toBeUndefined();
  });

  it('names the first of several that hold', () => {
    expect(holder(['gown', 'apron', 'outer-gloves'], 'gown')).toBe('apron');
  });

  it('does not hold what comes off in the same movement', () => {
    expect(holder(['gown', 'gloves'], 'gown', ['gown', 'gloves'])).toBeUndefined();
  });

  it.each<[ItemId, ItemId]>([
    ['coverall', 'apron'],
    ['hooded-coverall', 'gown'],
    ['coverall', 'blower'],
    ['gown', 'coverall'],
    ['shoe-covers', 'rubber-boots'],
  ])('the fastening of %s is out of reach under %s', (under, over) => {
    const opened = step('open', 'unfasten', { items: [under] });
    const away = step('away', 'remove', { items: [over] });
    expect(problemsOf(doffing([under, over], [opened]))).toContain('open: held-by');
    expect(problemsOf(doffing([under, over], [away, opened]))).not.toContain('open: held-by');
    expect(problemsOf(doffing([over, under], [opened]))).not.toContain('open: held-by');
  });

  it.each<[ItemId, ItemId, string]>([
    ['gown', 'outer-gloves', 'they meet nowhere'],
    ['coverall', 'surgical-hood', 'a lower edge hangs free'],
    ['coverall', 'boot-covers', 'the zip ends above them'],
  ])('the fastening of %s is within reach under %s: %s', (under, over) => {
    expect(problemsOf(doffing([under, over], [step('open', 'unfasten', { items: [under] })]))).toEqual([]);
  });

  it('is a problem of the step, and the step is carried out all the same', () => {
    const under = doffing(
      ['gown', 'outer-gloves'],
      [step('gown', 'remove', { items: ['gown'] }), step('gloves', 'remove', { items: ['outer-gloves'] })],
    );
    expect(problemsOf(under)).toEqual(['gown: held-by']);
    expect(bodyAfter(compiledOf(under), 'gloves').layers.map(({ item }) => item)).toEqual([
      'scrubs',
      'shoes',
      'shoes',
    ]);
  });
});

describe('linings', () => {
  const legs = doffing(
    ['coverall'],
    [step('off', 'remove', { items: ['coverall'], technique: 'front-pull' })],
    {
      start: [{ surface: 'wearer.scrubs.leg-left', state: 'contaminated' }],
    },
  );

  it('spread what soils a trouser leg over the legs, and not to the shirt', () => {
    const soiled = soiledAfter(compiledOf(legs), 'off');
    expect(soiled).toContain('wearer.scrubs.leg-right');
    expect(soiled).not.toContain('wearer.scrubs.front');
    expect(soiled).not.toContain('wearer.scrubs.back');
    expect(soiled).not.toContain('wearer.arm.left');
  });

  it('spread it whichever leg was soiled, for they touched all the time', () => {
    const right = {
      ...legs,
      start: [{ surface: 'wearer.scrubs.leg-right', state: 'contaminated' as const }],
    };
    expect(soiledAfter(compiledOf(right), 'off')).toContain('wearer.scrubs.leg-left');
    expect(soiledAfter(compiledOf(right), 'off')).toContain('wearer.scrubs.seat');
  });

  it('bring a soiled lining to what it lay on', () => {
    const lined = doffing(
      ['coverall'],
      [step('off', 'remove', { items: ['coverall'], technique: 'front-pull' })],
      {
        start: [{ surface: 'wearer.coverall.inside', state: 'contaminated' }],
      },
    );
    const soiled = soiledAfter(compiledOf(lined), 'off');
    expect(soiled).toContain('wearer.scrubs.front');
    expect(soiled).toContain('wearer.scrubs.back');
    expect(soiled).not.toContain('wearer.scrubs.leg-left');
  });

  it('of a glove touch the hand, of a shield nothing', () => {
    const shield = doffing(['face-shield'], [step('off', 'remove', { items: ['face-shield'] })], {
      start: [
        { surface: 'wearer.face-shield.inside', state: 'contaminated' },
        { surface: 'wearer.face-shield.front', state: 'uncontaminated' },
      ],
    });
    expect(soiledAfter(compiledOf(shield), 'off')).not.toContain('wearer.face');
    const glove = doffing(['gloves'], [step('off', 'remove', { items: ['gloves'] })], {
      start: [{ surface: 'wearer.gloves.left.inside', state: 'contaminated' }],
    });
    expect(soiledAfter(compiledOf(glove), 'off')).toContain('wearer.hand.left');
  });
});

describe('what has left', () => {
  const twice = doffing(
    ['gown', 'gloves'],
    [
      step('gloves', 'remove', { items: ['gloves'] }),
      step('gown', 'remove', { items: ['gown'], technique: 'outside-pull' }),
      step('again', 'remove', { items: ['gown'], technique: 'outside-pull' }),
      step('wipe', 'wipe', { items: ['gown'], technique: 'wipe-all-over', product: 'disinfectant-wipe' }),
      step('touch', 'touch', { items: ['gown'], part: 'front' }),
    ],
  );
  const compiled = compiledOf(twice);

  it('takes its contamination with it', () => {
    expect([...soiledAfter(compiled, 'gown')].filter((id) => id.startsWith('wearer.gown'))).toEqual([]);
    expect(soiledAfter(compiled, 'gown')).toContain('wearer.hand.left');
  });

  it('is touched by no later step, which says that it is not worn', () => {
    for (const later of ['again', 'wipe', 'touch']) {
      const ids = compiled.plan.steps
        .find(({ id }) => id === later)
        ?.operations.flatMap((operation) =>
          operation.op === 'contact' ? [operation.a, operation.b] : [operation.a],
        )
        .map((at) => compiled.plan.surfaces[at]?.id);
      expect(ids?.filter((id) => id?.startsWith('wearer.gown'))).toEqual([]);
    }
    expect(problemsOf(twice)).toEqual(['again: not-worn', 'wipe: not-worn', 'touch: not-worn']);
  });
});

describe('a fresh inner glove goes under the cuff', () => {
  // Training module, powered-respirator gown, doffing 09: torn inner gloves are replaced up to the edge of the sleeve.
  const steps = [
    step('off', 'remove', { items: ['inner-gloves'] }),
    step('on', 'put-on', { items: ['inner-gloves'] }),
    step('gown', 'remove', { items: ['gown'] }),
  ];

  it('so the gown can still come off', () => {
    expect(problemsOf(doffing(['inner-gloves', 'gown'], steps))).toEqual([]);
  });

  it('while outer gloves pulled over the cuff hold it', () => {
    const over = [
      step('on', 'put-on', { items: ['outer-gloves'] }),
      step('gown', 'remove', { items: ['gown'] }),
    ];
    expect(problemsOf(doffing(['inner-gloves', 'gown'], over))).toContain('gown: held-by');
  });
});
