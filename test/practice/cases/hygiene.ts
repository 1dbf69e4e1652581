// Cases: Hand hygiene and fresh gloves.
import { changed, inserted, step, without } from '../../support/procedure.ts';
import { EVERYDAY, POWERED_COVERALL, RESPIRATOR_GOWN } from '../procedures.ts';
import type { Case } from './case.ts';

export const HYGIENE_CASES: readonly Case[] = [
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
    broken: 'the bin touched straight after the zip',
    procedure: inserted(POWERED_COVERALL, 'rub-zip', step('bin', 'touch', { fixture: 'bin' })),
    at: 'unzip',
  },
  {
    rule: 'practice.hygiene-around-zip',
    source: 'cdc-training',
    broken: 'the bin touched straight before the zip',
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
  {
    rule: 'practice.glove-change-before-respirator',
    source: 'cdc-training',
    broken: 'bare, rubbed hands take the respirator off',
    procedure: without(RESPIRATOR_GOWN, 'change-on'),
    at: 'n95-off',
  },
];
