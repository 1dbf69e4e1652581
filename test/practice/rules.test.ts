// One broken fact, one rule: each case takes a procedure without a departure, breaks exactly what one rule asks for, and
// expects exactly that rule, at that step. `source` is where the rule is published (evidence/practice.json).
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/contacts/interpret.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { evidence, evidenceIds, type PracticeRuleId, type SourceId } from '../../src/evidence/index.ts';
import { techniquesThatBreak } from '../../src/practice/declared.ts';
import { departures, RULES } from '../../src/practice/index.ts';
import { UNCHECKED } from '../../src/practice/unchecked.ts';
import { changed, inserted, moved, step, without, withoutPerson, withPerson } from '../support/procedure.ts';
import { DONNING, EVERYDAY, off, on, POWERED_COVERALL, RESPIRATOR_GOWN, rub } from './procedures.ts';

const found = (procedure: Procedure) =>
  departures(compile(procedure, 'enveloped')).map(
    ({ rule, step: index }) => `${rule} @ ${procedure.steps[index]?.id}`,
  );

interface Case {
  readonly rule: PracticeRuleId;
  readonly source: SourceId;
  readonly broken: string;
  readonly procedure: Procedure;
  /** Step where it must be reported. */
  readonly at: string;
  /** A second rule that the same fact breaks by its own published text. */
  readonly also?: PracticeRuleId;
}

const HYGIENE_CASES: readonly Case[] = [
  {
    rule: 'practice.hygiene-after-each-glove-removal',
    source: 'cdc-training',
    broken: 'shield touched with unrubbed inner gloves',
    procedure: without(RESPIRATOR_GOWN, 'rub-inner'),
    at: 'outer-off',
  },
  {
    rule: 'practice.hygiene-after-each-glove-removal',
    source: 'cdc-training',
    broken: 'goggles touched with unrubbed bare hands, as in the everyday sequence itself',
    procedure: without(EVERYDAY, 'rub-gloves'),
    at: 'gown-and-gloves',
  },
  {
    rule: 'practice.hygiene-between-items',
    source: 'cdc-training',
    broken: 'hood straight after the shield',
    procedure: without(RESPIRATOR_GOWN, 'rub-shield'),
    at: 'shield-off',
  },
  {
    rule: 'practice.final-hand-hygiene',
    source: 'cdc-everyday',
    broken: 'no rub once the inner gloves are off',
    procedure: without(RESPIRATOR_GOWN, 'rub-bare'),
    at: 'inner-off',
  },
  {
    rule: 'practice.final-hand-hygiene',
    source: 'cdc-everyday',
    broken: 'no rub once the mask is off',
    procedure: without(EVERYDAY, 'rub-end'),
    at: 'mask-off',
  },
  {
    rule: 'practice.hygiene-around-zip',
    source: 'cdc-training',
    broken: 'no hygiene after the zip',
    procedure: without(POWERED_COVERALL, 'rub-zip'),
    at: 'unzip',
  },
  {
    rule: 'practice.hygiene-around-zip',
    source: 'cdc-training',
    broken: 'the bin touched before the zip',
    procedure: inserted(POWERED_COVERALL, 'unzip', step('bin', 'touch', { fixture: 'bin' })),
    at: 'unzip',
  },
  {
    rule: 'practice.rub-until-dry',
    source: 'suchomel-2018',
    broken: 'hands left wet',
    procedure: changed(RESPIRATOR_GOWN, 'rub-shield', { technique: 'rub-not-dried' }),
    at: 'rub-shield',
  },
  {
    rule: 'practice.spraying-not-credited',
    source: 'who-2023',
    broken: 'gloves sprayed',
    procedure: changed(RESPIRATOR_GOWN, 'rub-shield', { technique: 'spray-hands' }),
    at: 'rub-shield',
  },
  {
    rule: 'practice.glove-on-dry-hand',
    source: 'common-practice',
    broken: 'fresh gloves on wet hands',
    procedure: changed(RESPIRATOR_GOWN, 'rub-change', { technique: 'rub-not-dried' }),
    at: 'change-on',
  },
  {
    rule: 'practice.hygiene-before-fresh-glove',
    source: 'cdc-training',
    broken: 'fresh gloves on unrubbed hands',
    procedure: without(RESPIRATOR_GOWN, 'rub-change'),
    at: 'change-on',
  },
  {
    rule: 'practice.glove-change-before-respirator',
    source: 'cdc-training',
    broken: 'the gloves of the gown take the respirator off',
    procedure: without(RESPIRATOR_GOWN, 'change-off', 'rub-change', 'change-on'),
    at: 'n95-off',
  },
];

const shoeCovers = changed(
  withPerson(POWERED_COVERALL, 'wearer', {
    wears: ['inner-gloves', 'coverall', 'shoe-covers', 'blower', 'powered-hood', 'outer-gloves'],
  }),
  'boots-off',
  { items: ['shoe-covers'] },
);

const ORDER_CASES: readonly Case[] = [
  {
    rule: 'practice.respirator-last-of-face',
    source: 'cdc-everyday',
    broken: 'mask before goggles',
    procedure: moved(EVERYDAY, 'goggles-off', 'mask-off'),
    at: 'mask-off',
  },
  {
    rule: 'practice.respirator-last-of-face',
    source: 'cdc-everyday',
    broken: 'respirator before shield and hood',
    procedure: moved(RESPIRATOR_GOWN, 'shield-off', 'n95-off', 'rub-n95'),
    at: 'n95-off',
  },
  {
    rule: 'practice.gloves-not-alone-before-gown',
    source: 'okamoto-2019',
    broken: 'first everyday example: gloves alone, then the gown',
    procedure: inserted(
      without(EVERYDAY, 'gown-and-gloves', 'goggles-off'),
      'rub-gloves',
      off('gloves-off', 'gloves'),
      rub('rub'),
      off('goggles-off', 'goggles'),
      off('gown-off', 'gown'),
    ),
    at: 'gloves-off',
  },
  {
    rule: 'practice.shoe-cover-strings-before-zip',
    source: 'enhanced-2021',
    broken: 'zip opened with the strings tied',
    procedure: moved(shoeCovers, 'sit', 'unzip', 'rub-zip'),
    at: 'unzip',
  },
  {
    rule: 'practice.boot-covers-before-garment',
    source: 'gurses-2019',
    broken: 'boot covers once the gown is off',
    procedure: moved(RESPIRATOR_GOWN, 'sit-clean', 'sit', 'boots-off', 'rub-boots', 'stand'),
    at: 'boots-off',
  },
];

const GRIP_CASES: readonly Case[] = [
  {
    rule: 'practice.shield-by-rear-strap',
    source: 'cdc-training',
    broken: 'shield held by its front',
    procedure: changed(RESPIRATOR_GOWN, 'shield-off', { technique: 'front-grip' }),
    at: 'shield-off',
    also: 'practice.face-item-front-untouched',
  },
  {
    rule: 'practice.goggles-by-rear-strap',
    source: 'cdc-everyday',
    broken: 'goggles held by their front',
    procedure: changed(EVERYDAY, 'goggles-off', { technique: 'front-grip' }),
    at: 'goggles-off',
    also: 'practice.face-item-front-untouched',
  },
  {
    rule: 'practice.face-item-front-untouched',
    source: 'cdc-everyday',
    broken: 'respirator held by its front',
    procedure: changed(RESPIRATOR_GOWN, 'n95-off', { technique: 'front-grip-mask' }),
    at: 'n95-off',
  },
  {
    rule: 'practice.face-item-front-untouched',
    source: 'cdc-everyday',
    broken: 'a step that presses the mask to the face',
    procedure: inserted(EVERYDAY, 'gown-and-gloves', step('press', 'touch', { items: ['surgical-mask'] })),
    at: 'press',
  },
  {
    rule: 'practice.respirator-lower-strap-first',
    source: 'cdc-everyday',
    broken: 'upper strap first',
    procedure: changed(RESPIRATOR_GOWN, 'n95-off', { technique: 'upper-then-lower' }),
    at: 'n95-off',
  },
  {
    rule: 'practice.mask-by-straps',
    source: 'phe-poster',
    broken: 'upper ties of a mask first',
    procedure: changed(EVERYDAY, 'mask-off', { technique: 'upper-then-lower' }),
    at: 'mask-off',
  },
  {
    rule: 'practice.second-glove-from-inside',
    source: 'cdc-training',
    broken: 'second glove pulled by its outside',
    procedure: changed(RESPIRATOR_GOWN, 'outer-off', { technique: 'pull-by-outside' }),
    at: 'outer-off',
  },
  {
    rule: 'practice.gown-upper-fastening-first',
    source: 'cdc-everyday',
    broken: 'waist before neck',
    procedure: changed(RESPIRATOR_GOWN, 'gown-off', { technique: 'waist-first' }),
    at: 'gown-off',
  },
  {
    rule: 'practice.garment-front-untouched',
    source: 'cdc-everyday',
    broken: 'gown pulled by its front',
    procedure: changed(RESPIRATOR_GOWN, 'gown-off', { technique: 'front-pull' }),
    at: 'gown-off',
  },
  {
    rule: 'practice.garment-front-untouched',
    source: 'cdc-everyday',
    broken: 'a step that smooths the sleeve',
    procedure: inserted(
      RESPIRATOR_GOWN,
      'gown-off',
      step('smooth', 'touch', { items: ['gown'], part: 'sleeve-left' }),
    ),
    at: 'smooth',
  },
  {
    rule: 'practice.zip-one-hand',
    source: 'cdc-training',
    broken: 'other hand on the suit front',
    procedure: changed(POWERED_COVERALL, 'unzip', { technique: 'zip-two-hands' }),
    at: 'unzip',
  },
  {
    rule: 'practice.apron-torn-at-neck',
    source: 'cdc-training',
    broken: 'apron over the head',
    procedure: changed(RESPIRATOR_GOWN, 'apron-off', { technique: 'over-head' }),
    at: 'apron-off',
  },
  {
    rule: 'practice.no-face-touch-after-hood',
    source: 'cdc-training',
    broken: 'respirator moved by its sides once the hood is off',
    procedure: inserted(RESPIRATOR_GOWN, 'gown-off', step('reach', 'touch', { place: 'face' })),
    at: 'reach',
  },
];

const boots = changed(
  withPerson(RESPIRATOR_GOWN, 'wearer', {
    wears: [
      'rubber-boots',
      'inner-gloves',
      'gown',
      'n95-respirator',
      'surgical-hood',
      'face-shield',
      'apron',
      'outer-gloves',
    ],
  }),
  'boots-off',
  { items: ['rubber-boots'], technique: 'pull-off-by-hand' },
);

const FEET_CASES: readonly Case[] = [
  {
    rule: 'practice.boot-cover-heel-before-toe',
    source: 'common-practice',
    broken: 'toe first',
    procedure: changed(RESPIRATOR_GOWN, 'boots-off', { technique: 'toe-first' }),
    at: 'boots-off',
  },
  {
    rule: 'practice.boot-covers-seated',
    source: 'cdc-training',
    broken: 'standing on one leg',
    procedure: changed(without(RESPIRATOR_GOWN, 'sit', 'stand'), 'boots-off', {
      technique: 'standing-on-one-leg',
    }),
    at: 'boots-off',
  },
  {
    rule: 'practice.boots-without-hands',
    source: 'who-posters',
    broken: 'rubber boots pulled off by hand',
    procedure: boots,
    at: 'boots-off',
  },
  {
    rule: 'practice.one-wipe-per-shoe',
    source: 'common-practice',
    broken: 'the same wipe for both',
    procedure: changed(RESPIRATOR_GOWN, 'wipe-shoes', { technique: 'same-wipe-for-both' }),
    at: 'wipe-shoes',
  },
  {
    rule: 'practice.shoes-wiped-with-soles',
    source: 'cdc-training',
    broken: 'soles left out',
    procedure: changed(RESPIRATOR_GOWN, 'wipe-shoes', { technique: 'without-soles' }),
    at: 'wipe-shoes',
  },
  {
    rule: 'practice.shoes-wiped-with-soles',
    source: 'cdc-training',
    broken: 'one shoe only',
    procedure: changed(RESPIRATOR_GOWN, 'wipe-shoes', { side: 'left' }),
    at: 'boots-off',
  },
  {
    rule: 'practice.clean-and-dirty-chair-apart',
    source: 'cdc-training',
    broken: 'on the clean chair in gown and boot covers',
    procedure: changed(RESPIRATOR_GOWN, 'sit', { fixture: 'clean-chair' }),
    at: 'sit',
  },
  {
    rule: 'practice.clean-and-dirty-chair-apart',
    source: 'cdc-training',
    broken: 'shoes wiped on the chair of the boot covers',
    procedure: changed(RESPIRATOR_GOWN, 'sit-clean', { fixture: 'chair' }),
    at: 'sit',
  },
];

const LOOK_CASES: readonly Case[] = [
  {
    rule: 'practice.inspect-before-exit',
    source: 'cdc-training',
    broken: 'nobody looks in the room',
    procedure: without(RESPIRATOR_GOWN, 'look'),
    at: 'leave',
  },
  {
    rule: 'practice.start-on-all-clear',
    source: 'cdc-training',
    broken: 'nobody has spoken',
    procedure: without(RESPIRATOR_GOWN, 'all-clear'),
    at: 'leave',
  },
  {
    rule: 'practice.gloves-disinfected-before-leaving',
    source: 'cdc-training',
    broken: 'outer gloves not disinfected in the room',
    procedure: without(RESPIRATOR_GOWN, 'rub-room'),
    at: 'leave',
  },
  {
    rule: 'practice.inspect-inner-gloves',
    source: 'cdc-training',
    broken: 'inner gloves not looked at',
    procedure: without(RESPIRATOR_GOWN, 'look-inner'),
    at: 'outer-off',
  },
  {
    rule: 'practice.inspect-at-end',
    source: 'cdc-training',
    broken: 'no last look',
    procedure: without(RESPIRATOR_GOWN, 'last-look'),
    at: 'go',
  },
];

const byObserver = changed(changed(RESPIRATOR_GOWN, 'apron-off', { helper: 'observer' }), 'rub-helper', {
  who: 'observer',
});

const coverallAlone: Procedure = inserted(
  without(
    withPerson(EVERYDAY, 'wearer', { wears: ['coverall', 'surgical-mask', 'goggles', 'gloves'] }),
    'gown-and-gloves',
  ),
  'rub-gloves',
  rub('rub-start'),
  step('unzip', 'unfasten', { items: ['coverall'] }),
  rub('rub-zip'),
  step('suit-off', 'remove', { items: ['coverall', 'gloves'], technique: 'roll-inside-with-gloves' }),
);

const TEAM_CASES: readonly Case[] = [
  {
    rule: 'practice.helper-hygiene-after-each-assist',
    source: 'cdc-observer',
    broken: 'assistant does not rub after the apron strap',
    procedure: without(RESPIRATOR_GOWN, 'rub-helper'),
    at: 'apron-off',
  },
  {
    rule: 'practice.helper-hygiene-after-each-assist',
    source: 'cdc-observer',
    broken: 'assistant goes from the hood to the coverall',
    procedure: without(POWERED_COVERALL, 'rub-hood-helper'),
    at: 'hood-off',
  },
  {
    rule: 'practice.observer-hands-off',
    source: 'cdc-observer',
    broken: 'observer helps beside an assistant',
    procedure: byObserver,
    at: 'apron-off',
  },
  {
    rule: 'practice.observer-and-assistant-apart',
    source: 'gurses-2019',
    broken: 'observer is the assistant too',
    procedure: withoutPerson(byObserver, 'assistant'),
    at: 'apron-off',
  },
  {
    rule: 'practice.assistant-for-hood-or-coverall',
    source: 'cdc-observer',
    broken: 'coverall without an assistant',
    procedure: coverallAlone,
    at: 'unzip',
  },
  {
    rule: 'practice.hood-by-outside-then-away',
    source: 'cdc-training',
    broken: 'wearer takes the hood off alone',
    procedure: inserted(
      without(POWERED_COVERALL, 'hood-off'),
      'rub-hood-helper',
      off('alone', 'powered-hood', { technique: 'hood-alone' }),
    ),
    at: 'alone',
  },
  {
    rule: 'practice.observer-for-every-step',
    source: 'cdc-guidance-vhf',
    broken: 'nobody observes',
    procedure: withoutPerson(
      changed(changed(RESPIRATOR_GOWN, 'all-clear', { who: 'wearer' }), 'last-look', { who: 'assistant' }),
      'observer',
    ),
    at: 'all-clear',
  },
  {
    rule: 'practice.observer-for-every-step',
    source: 'cdc-guidance-vhf',
    broken: 'nobody observes a donning',
    procedure: withoutPerson(changed(DONNING, 'check', { who: 'wearer' }), 'observer'),
    at: 'rub-first',
  },
  {
    rule: 'practice.helper-keeps-side',
    source: 'gurses-2019',
    broken: 'assistant walks over to the clean side',
    procedure: inserted(
      RESPIRATOR_GOWN,
      'shield-off',
      step('cross', 'move', { who: 'assistant', zone: 'corridor' }),
    ),
    at: 'cross',
  },
];

const DONNING_CASES: readonly Case[] = [
  {
    rule: 'practice.donning.hygiene-first',
    source: 'hospital-checklist-2014',
    broken: 'no hygiene first',
    procedure: without(DONNING, 'rub-first'),
    at: 'boots-on',
  },
  {
    rule: 'practice.donning.inner-cuff-under-sleeve',
    source: 'hospital-checklist-2014',
    broken: 'inner gloves after the gown',
    procedure: moved(DONNING, 'n95-on', 'inner-on'),
    at: 'inner-on',
  },
  {
    rule: 'practice.donning.outer-glove-over-cuff',
    source: 'cdc-everyday',
    broken: 'gown after the outer gloves',
    procedure: moved(DONNING, 'check', 'gown-on'),
    at: 'gown-on',
  },
  {
    rule: 'practice.donning.respirator-before-hood',
    source: 'cdc-training',
    broken: 'hood first',
    procedure: moved(DONNING, 'n95-on', 'hood-on'),
    at: 'n95-on',
  },
  {
    rule: 'practice.donning.seal-check',
    source: 'cdc-training',
    broken: 'no seal check',
    procedure: without(DONNING, 'seal'),
    at: 'n95-on',
  },
  {
    rule: 'practice.donning.seal-check',
    source: 'cdc-training',
    broken: 'seal check once the hood is on',
    procedure: moved(DONNING, 'shield-on', 'seal'),
    at: 'n95-on',
  },
  {
    rule: 'practice.donning.blower-outside',
    source: 'cdc-training',
    broken: 'gown over the blower',
    procedure: inserted(DONNING, 'gown-on', on('blower-on', 'blower')),
    at: 'gown-on',
  },
];

const CASES: readonly Case[] = [
  ...HYGIENE_CASES,
  ...ORDER_CASES,
  ...GRIP_CASES,
  ...FEET_CASES,
  ...LOOK_CASES,
  ...TEAM_CASES,
  ...DONNING_CASES,
];

describe('one broken fact is exactly one departure', () => {
  for (const { rule, source, broken, procedure, at, also } of CASES) {
    test(`${rule} (${source}): ${broken}`, () => {
      expect(evidence(rule).source.id).toBe(source);
      const expected = [rule, ...(also ? [also] : [])].map((id) => `${id} @ ${at}`);
      expect([...found(procedure)].toSorted()).toEqual(expected.toSorted());
    });
  }
});

describe('the tables', () => {
  const all = evidenceIds.filter((id): id is PracticeRuleId => id.startsWith('practice.'));
  const checked = all.filter(
    (id) => RULES.some((rule) => rule.id === id) || techniquesThatBreak(id).length > 0,
  );

  test('every published rule is checked, or said not to be, and none is both', () => {
    expect(all.length).toBeGreaterThan(60);
    const unchecked = UNCHECKED.map((entry) => entry.id);
    expect([...checked, ...unchecked].toSorted()).toEqual(all.toSorted());
  });

  test('every checked rule has a case above', () => {
    const tested = CASES.flatMap(({ rule, also }) => [rule, ...(also ? [also] : [])]);
    expect(checked.filter((id) => !tested.includes(id))).toEqual([]);
  });

  test('no rule stands twice', () => {
    const ids = RULES.map((rule) => rule.id);
    expect(ids).toEqual([...new Set(ids)]);
  });
});
