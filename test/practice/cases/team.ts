// Cases: Looking, leaving, observer and assistant.
import type { Procedure } from '../../../src/domain/procedure.ts';
import { changed, inserted, step, without, withoutPerson, withPerson } from '../../support/procedure.ts';
import { DONNING, EVERYDAY, off, POWERED_COVERALL, RESPIRATOR_GOWN, rub } from '../procedures.ts';
import type { Case } from './case.ts';

export const LOOK_CASES: readonly Case[] = [
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

export const TEAM_CASES: readonly Case[] = [
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
