// Cases: What must wait for what, in doffing and donning.
import { changed, inserted, moved, step, without, withPerson } from '../../support/procedure.ts';
import { DONNING, EVERYDAY, off, on, POWERED_COVERALL, RESPIRATOR_GOWN, rub } from '../procedures.ts';
import type { Case } from './case.ts';

const shoeCovers = changed(
  withPerson(POWERED_COVERALL, 'wearer', {
    wears: ['inner-gloves', 'coverall', 'shoe-covers', 'blower', 'powered-hood', 'outer-gloves'],
  }),
  'boots-off',
  { items: ['shoe-covers'] },
);

/** A shield with no mask or hood beneath it. */
const shieldAlone = without(
  withPerson(RESPIRATOR_GOWN, 'wearer', {
    wears: ['boot-covers', 'inner-gloves', 'gown', 'face-shield', 'apron', 'outer-gloves'],
  }),
  'hood-off',
  'rub-hood',
  'n95-off',
  'rub-n95',
);

export const ORDER_CASES: readonly Case[] = [
  {
    rule: 'practice.off-in-doffing-area',
    source: 'cdc-training',
    broken: 'the shield comes off beside the patient',
    procedure: inserted(
      without(RESPIRATOR_GOWN, 'shield-off'),
      'leave',
      off('shield-off', 'face-shield'),
      rub('rub'),
    ),
    at: 'shield-off',
  },
  {
    rule: 'practice.stays-until-all-off',
    source: 'dubose-2018',
    broken: 'the shield comes off beyond the line',
    procedure: inserted(
      without(shieldAlone, 'shield-off', 'rub-shield', 'go'),
      'inner-off',
      step('early', 'move', { zone: 'corridor' }),
      off('shield-off', 'face-shield'),
      rub('rub-shield'),
    ),
    at: 'shield-off',
  },
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

export const DONNING_CASES: readonly Case[] = [
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
    rule: 'practice.donning.respirator-before-hood',
    source: 'cdc-training',
    broken: 'respirator over the hood of a coverall',
    procedure: moved(
      changed(DONNING, 'gown-on', { items: ['hooded-coverall'] }),
      'hood-on',
      'n95-on',
      'seal',
    ),
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
