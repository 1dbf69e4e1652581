// Cases: What is held, and what must not be touched.
import { changed, inserted, step } from '../../support/procedure.ts';
import { EVERYDAY, POWERED_COVERALL, RESPIRATOR_GOWN } from '../procedures.ts';
import type { Case } from './case.ts';

export const GRIP_CASES: readonly Case[] = [
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
