// An invented exit of exactly 100 steps by which speed is watched: wearer, assistant and observer each take off
// everything they wear, in the order of the longest published sequences, with a look and hand hygiene around each item.
// No step of it is impossible (test/bench/hundred.test.ts), so that it is checked to its end.
import type { ItemId } from '../src/domain/items.ts';
import type { Person, Procedure, Step } from '../src/domain/procedure.ts';
import type { Fixture } from '../src/domain/room.ts';

type Draft = Omit<Step, 'id' | 'who' | 'items'> & { readonly items?: readonly ItemId[] };

const RUB: Draft = { action: 'sanitise', product: 'alcohol-hand-rub' };
const LOOK: Draft = { action: 'inspect' };
const PEEL = { action: 'remove', technique: 'peel-cuff' } as const;
const WIPE_GLOVES: Draft = {
  action: 'wipe',
  items: ['outer-gloves'],
  product: 'disinfectant-wipe',
  technique: 'wipe-all-over',
};
const FRESH_GLOVES: readonly Draft[] = [
  { ...PEEL, items: ['inner-gloves'] },
  RUB,
  { action: 'put-on', items: ['inner-gloves'] },
];

/** One person's part of the exit. */
const by = (who: string, drafts: readonly Draft[]): readonly Omit<Step, 'id'>[] =>
  drafts.map((draft) => ({ who, items: [], ...draft }));

/** The assistant helps, and rubs at once afterwards. */
const helped = (draft: Draft): readonly Omit<Step, 'id'>[] => [
  ...by('wearer', [{ ...draft, helper: 'assistant' }]),
  ...by('assistant', [RUB]),
  ...by('wearer', [RUB]),
];

const SHOES: Draft = {
  action: 'wipe',
  items: ['shoes'],
  product: 'disinfectant-wipe',
  technique: 'one-wipe-per-shoe',
};
const sit = (fixture: string): Draft => ({ action: 'sit', fixture });
const STAND: Draft = { action: 'stand' };
const OVER: Draft = { action: 'stand', fixture: 'clean-side-floor' };

const WEARER: readonly Omit<Step, 'id'>[] = [
  ...by('observer', [{ action: 'say' }]),
  ...by('wearer', [LOOK, RUB, { action: 'move', zone: 'doffing-area' }]),
  ...by('observer', [{ action: 'say' }, LOOK, RUB]),
  ...by('assistant', [LOOK, RUB]),
  ...by('wearer', [WIPE_GLOVES, RUB]),
  ...helped({ action: 'remove', items: ['apron'], technique: 'tear-at-neck' }),
  ...by('wearer', [LOOK, sit('doffing-chair'), { action: 'remove', items: ['boot-covers'] }, RUB, STAND]),
  ...by('wearer', [{ ...PEEL, items: ['outer-gloves'] }, LOOK, RUB]),
  ...by('wearer', [{ action: 'remove', items: ['face-shield'], technique: 'rear-strap' }, RUB]),
  ...by('wearer', [{ action: 'remove', items: ['surgical-hood'], technique: 'from-behind' }, RUB]),
  ...by('observer', [{ action: 'say' }]),
  ...helped({ action: 'unfasten', items: ['coverall'], technique: 'zip-one-hand' }),
  ...helped({ action: 'remove', items: ['coverall'], technique: 'helper-rolls-outside' }),
  ...by('observer', [{ action: 'inspect', of: 'wearer' }]),
  ...by('wearer', [...FRESH_GLOVES, LOOK]),
  ...by('wearer', [{ action: 'remove', items: ['goggles'], technique: 'rear-strap' }, RUB]),
  ...by('wearer', [{ action: 'remove', items: ['n95-respirator'], technique: 'lower-then-upper' }, RUB]),
  ...by('wearer', [sit('clean-chair'), SHOES, RUB, { ...PEEL, items: ['inner-gloves'] }, RUB]),
  ...by('observer', [{ action: 'inspect', of: 'wearer' }]),
  ...by('wearer', [OVER]),
];

/** What a helper takes off, in the order of the published helpers' sequence. */
const helper = (who: string, face: readonly ItemId[], watch?: string): readonly Omit<Step, 'id'>[] => [
  ...by(who, [LOOK, RUB, sit('doffing-chair'), { action: 'remove', items: ['shoe-covers'] }, RUB, STAND]),
  ...by(who, [{ ...PEEL, items: ['outer-gloves'] }, { action: 'inspect', items: ['inner-gloves'] }, RUB]),
  ...by(who, [{ action: 'remove', items: ['face-shield'], technique: 'rear-strap' }, RUB]),
  ...by(who, [{ action: 'unfasten', items: ['gown'], technique: 'upper-tie-first' }, RUB]),
  ...by(who, [{ action: 'remove', items: ['gown'], technique: 'inside-out' }, RUB, ...FRESH_GLOVES]),
  ...face.flatMap((item) =>
    by(who, [{ action: 'remove', items: [item], technique: 'lower-then-upper' }, RUB]),
  ),
  ...by(who, [sit('clean-chair'), SHOES, RUB, { ...PEEL, items: ['inner-gloves'] }, RUB]),
  ...(watch ? by(watch, [{ action: 'inspect', of: who }]) : []),
  ...by(who, [OVER]),
];

const person = (id: Person['role'], starts: string, wears: readonly ItemId[]): Person => ({
  id,
  role: id,
  wears,
  underneath: ['scrubs', 'shoes'],
  starts,
  hand: 'right',
  leavesBare: [],
});

const fixture = (id: string, kind: Fixture['kind'], more: Partial<Fixture> = {}): Fixture => ({
  id,
  kind,
  zone: 'doffing-area',
  clean: false,
  ...more,
});

const FIXTURES: readonly Fixture[] = [
  fixture('patient-room-floor', 'floor', { zone: 'patient-room' }),
  fixture('doffing-area-floor', 'floor'),
  fixture('clean-side-floor', 'floor', { zone: 'clean-side', clean: true }),
  fixture('doffing-chair', 'chair'),
  fixture('clean-chair', 'chair', { clean: true }),
  fixture('waste-bin', 'bin', { worked: 'pedal' }),
  fixture('hand-rub', 'dispenser', { worked: 'hand' }),
  fixture('mirror', 'mirror'),
  fixture('glove-box', 'glove-box'),
];

const STEPS = [...WEARER, ...helper('assistant', ['surgical-mask'], 'observer'), ...helper('observer', [])];

/** The first `count` steps of the exit; all 100 unless told. */
export const hundred = (count = STEPS.length): Procedure => ({
  title: 'An invented exit of 100 steps with three people',
  kind: 'doffing',
  version: '1',
  invented: true,
  agents: ['enveloped', 'non-enveloped'],
  people: [
    person('wearer', 'patient-room', [
      'inner-gloves',
      'coverall',
      'boot-covers',
      'n95-respirator',
      'goggles',
      'surgical-hood',
      'face-shield',
      'apron',
      'outer-gloves',
    ]),
    person('observer', 'doffing-area', [
      'shoe-covers',
      'inner-gloves',
      'gown',
      'face-shield',
      'outer-gloves',
    ]),
    person('assistant', 'doffing-area', [
      'shoe-covers',
      'inner-gloves',
      'gown',
      'surgical-mask',
      'face-shield',
      'outer-gloves',
    ]),
  ],
  zones: [
    { id: 'patient-room', side: 'patient' },
    { id: 'doffing-area', side: 'doffing' },
    { id: 'clean-side', side: 'clean' },
  ],
  fixtures: FIXTURES,
  products: ['alcohol-hand-rub', 'disinfectant-wipe'],
  start: [],
  policy: { creditSpraying: false },
  steps: STEPS.slice(0, count).map((step, index) => ({ ...step, id: `s${index + 1}` })),
  accepted: [],
});
