// Four procedures without a departure, made for these tests from the published sequences: VHF ensemble with respirator and
// gown, the same with powered respirator and coverall, the everyday set in one movement, and a donning.
import type { ItemId } from '../../src/domain/items.ts';
import type { Procedure, Step } from '../../src/domain/procedure.ts';
import { person, procedure, step, type StepFields } from '../support/procedure.ts';

export const rub = (id: string, fields: StepFields = {}): Step =>
  step(id, 'sanitise', { product: 'alcohol-hand-rub', ...fields });
export const off = (id: string, item: ItemId, fields: StepFields = {}): Step =>
  step(id, 'remove', { items: [item], ...fields });
export const on = (id: string, item: ItemId, fields: StepFields = {}): Step =>
  step(id, 'put-on', { items: [item], ...fields });

const HELPERS = [
  person({ id: 'observer', role: 'observer' }),
  person({ id: 'assistant', role: 'assistant', wears: ['inner-gloves', 'gown', 'outer-gloves'] }),
];

const LEAVE_ROOM: readonly Step[] = [
  step('all-clear', 'say', { who: 'observer' }),
  step('look', 'inspect'),
  rub('rub-room'),
  step('leave', 'move', { zone: 'anteroom' }),
];

const SHOES_AND_END: readonly Step[] = [
  step('sit-clean', 'sit', { fixture: 'clean-chair' }),
  step('wipe-shoes', 'wipe', { items: ['shoes'], product: 'disinfectant-wipe' }),
  rub('rub-shoes'),
  step('stand-clean', 'stand'),
  off('inner-off', 'inner-gloves'),
  rub('rub-bare'),
  step('last-look', 'inspect', { who: 'observer', of: 'wearer' }),
  step('go', 'move', { zone: 'corridor' }),
];

const BOOT_COVERS: readonly Step[] = [
  step('sit', 'sit', { fixture: 'chair' }),
  off('boots-off', 'boot-covers'),
  rub('rub-boots'),
  step('stand', 'stand'),
];

const OUTER_GLOVES: readonly Step[] = [
  off('outer-off', 'outer-gloves'),
  step('look-inner', 'inspect', { items: ['inner-gloves'] }),
  rub('rub-inner'),
];

/** After the respirator-and-gown pages of the training module; apron untied by the assistant. */
export const RESPIRATOR_GOWN: Procedure = procedure({
  people: [
    person({
      id: 'wearer',
      role: 'wearer',
      starts: 'room',
      wears: [
        'boot-covers',
        'inner-gloves',
        'gown',
        'n95-respirator',
        'surgical-hood',
        'face-shield',
        'apron',
        'outer-gloves',
      ],
    }),
    ...HELPERS,
  ],
  steps: [
    ...LEAVE_ROOM,
    off('apron-off', 'apron', { helper: 'assistant' }),
    rub('rub-helper', { who: 'assistant' }),
    rub('rub-apron'),
    ...BOOT_COVERS,
    ...OUTER_GLOVES,
    off('shield-off', 'face-shield'),
    rub('rub-shield'),
    off('hood-off', 'surgical-hood'),
    rub('rub-hood'),
    off('gown-off', 'gown'),
    rub('rub-gown'),
    off('change-off', 'inner-gloves'),
    rub('rub-change'),
    on('change-on', 'inner-gloves'),
    off('n95-off', 'n95-respirator'),
    rub('rub-n95'),
    ...SHOES_AND_END,
  ],
});

const helped = { helper: 'assistant' } as const;
const rubBoth = (id: string): readonly Step[] => [rub(`${id}-helper`, { who: 'assistant' }), rub(id)];

/** After the powered-respirator-and-coverall pages, with the boot covers in the later place. */
export const POWERED_COVERALL: Procedure = procedure({
  people: [
    person({
      id: 'wearer',
      role: 'wearer',
      starts: 'room',
      wears: ['inner-gloves', 'coverall', 'boot-covers', 'blower', 'powered-hood', 'outer-gloves'],
    }),
    ...HELPERS,
  ],
  steps: [
    ...LEAVE_ROOM,
    ...BOOT_COVERS,
    ...OUTER_GLOVES,
    step('detach', 'unfasten', { items: ['powered-hood'], ...helped }),
    step('unclasp', 'unfasten', { items: ['blower'], ...helped }),
    off('blower-off', 'blower', helped),
    off('hood-off', 'powered-hood', helped),
    ...rubBoth('rub-hood'),
    step('unzip', 'unfasten', { items: ['coverall'] }),
    rub('rub-zip'),
    off('coverall-off', 'coverall', { technique: 'helper-rolls-outside', ...helped }),
    ...rubBoth('rub-coverall'),
    ...SHOES_AND_END,
  ],
});

/** After the second everyday example, with hygiene after the gloves. */
export const EVERYDAY: Procedure = procedure({
  people: [
    person({
      id: 'wearer',
      role: 'wearer',
      starts: 'room',
      wears: ['gown', 'surgical-mask', 'goggles', 'gloves'],
    }),
  ],
  steps: [
    step('gown-and-gloves', 'remove', { items: ['gown', 'gloves'], technique: 'together-with-gloves' }),
    rub('rub-gloves'),
    off('goggles-off', 'goggles'),
    off('mask-off', 'surgical-mask'),
    rub('rub-end'),
  ],
});

/** Donning of the powered-respirator and of the respirator ensembles in one: only the order matters here. */
export const DONNING: Procedure = procedure({
  kind: 'donning',
  people: [person({ id: 'wearer', role: 'wearer' }), person({ id: 'observer', role: 'observer' })],
  steps: [
    rub('rub-first'),
    on('boots-on', 'boot-covers'),
    on('inner-on', 'inner-gloves'),
    on('gown-on', 'gown'),
    on('n95-on', 'n95-respirator'),
    step('seal', 'inspect', { items: ['n95-respirator'] }),
    on('hood-on', 'surgical-hood'),
    on('shield-on', 'face-shield'),
    on('outer-on', 'outer-gloves'),
    step('check', 'inspect', { who: 'observer', of: 'wearer' }),
  ],
});
