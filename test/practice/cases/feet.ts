// Cases: Boot covers, boots, shoes and chairs.
import { changed, inserted, step, without, withPerson } from '../../support/procedure.ts';
import { RESPIRATOR_GOWN } from '../procedures.ts';
import type { Case } from './case.ts';

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

export const FEET_CASES: readonly Case[] = [
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
    broken: 'on a clean chair in the gown',
    procedure: inserted(
      RESPIRATOR_GOWN,
      'gown-off',
      step('rest', 'sit', { fixture: 'clean-chair' }),
      step('rise', 'stand'),
    ),
    at: 'rest',
  },
  {
    rule: 'practice.clean-and-dirty-chair-apart',
    source: 'cdc-training',
    broken: 'boot covers and shoes on the same clean chair',
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
