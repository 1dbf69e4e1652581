// Hygiene, wiping, looking, speaking and moving: actions that take no item off. Times: WHO hand-rub and
// hand-wash durations and drying times (evidence hygiene.*); the rest is judgement and says so there.
import { PART_IDS } from '../items.ts';
import { clean, fixture, hands, part, slip, touch, type Move } from '../moves.ts';
import type { Technique } from './technique.ts';

const TAP: Move = touch(hands(), fixture('tap', 'handle'), {
  worked: 'hand',
  product: ['soap-and-water', 'chlorine-0.05'],
});
/** A lever or handle worked by hand is touched before cleaning, a tap again after it. */
const REACH_PRODUCT: readonly Move[] = [
  touch(hands(), fixture('dispenser', 'lever'), {
    worked: 'hand',
    product: ['alcohol-hand-rub', 'soap-and-water'],
  }),
  TAP,
];
const CLEAN_HANDS: Move = clean(hands(), 'omitted-hygiene', 'inadequate-hygiene');
const CLEAN_IT: Move = clean(
  part(PART_IDS.filter((id) => !id.startsWith('inside'))),
  'omitted-wipe',
  'wipe-missed-area',
  'wipe-too-short',
);

export const MOVING_TECHNIQUES = [
  {
    id: 'rub-until-dry',
    action: 'sanitise',
    groups: [],
    usual: true,
    moves: [...REACH_PRODUCT, CLEAN_HANDS, TAP, { do: 'dry' }],
    uses: [{ what: 'product', count: 1 }],
    time: 'duration.hand-rub',
  },
  {
    id: 'rub-not-dried',
    action: 'sanitise',
    groups: [],
    moves: [...REACH_PRODUCT, CLEAN_HANDS, TAP, { do: 'wet' }],
    uses: [{ what: 'product', count: 1 }],
    time: 'duration.hand-rub-short',
  },
  {
    id: 'spray-hands',
    action: 'sanitise',
    groups: [],
    moves: [{ ...CLEAN_HANDS, sprayed: true }, { do: 'wet' }],
    uses: [{ what: 'product', count: 1 }],
    time: 'duration.hand-rub-short',
    breaks: ['practice.spraying-not-credited'],
  },
  {
    id: 'wipe-all-over',
    action: 'wipe',
    usual: true,
    groups: [
      'glove',
      'gown',
      'coverall',
      'apron',
      'head-cover',
      'eye-cover',
      'face-cover',
      'powered-hood',
      'blower',
      'foot-cover',
      'boots',
    ],
    moves: [slip('wrong-grip', hands(), part(['outside', 'front'])), CLEAN_IT],
    uses: [{ what: 'wipe', count: 1 }],
    time: 'duration.wipe',
  },
  {
    id: 'wipe-fixture',
    action: 'wipe',
    groups: [],
    usual: true,
    moves: [
      slip('wrong-grip', hands(), fixture()),
      clean(fixture(), 'omitted-wipe', 'wipe-missed-area', 'wipe-too-short'),
    ],
    uses: [{ what: 'wipe', count: 1 }],
    time: 'duration.wipe',
  },
  {
    id: 'spray-over',
    action: 'wipe',
    groups: [
      'glove',
      'gown',
      'coverall',
      'apron',
      'head-cover',
      'eye-cover',
      'face-cover',
      'powered-hood',
      'blower',
      'foot-cover',
      'boots',
      'shoes',
    ],
    moves: [{ ...CLEAN_IT, sprayed: true }],
    uses: [{ what: 'product', count: 1 }],
    time: 'duration.wipe',
    breaks: ['practice.spraying-not-credited'],
  },
  {
    id: 'look-over',
    action: 'inspect',
    groups: [],
    anyItem: true,
    usual: true,
    moves: [{ do: 'look', misses: 'missed-tear' }],
    time: 'duration.inspect',
  },
  { id: 'call-and-response', action: 'say', groups: [], usual: true, moves: [], time: 'duration.say' },
  {
    id: 'walk',
    action: 'move',
    groups: [],
    usual: true,
    moves: [touch(hands(), fixture('door', 'handle'), { worked: 'hand' }), { do: 'go' }],
    needs: ['standing'],
    time: 'duration.move',
  },
  {
    id: 'step',
    action: 'step-on',
    groups: [],
    usual: true,
    moves: [{ do: 'go' }],
    needs: ['standing'],
    time: 'duration.move',
  },
  {
    id: 'sit-down',
    action: 'sit',
    groups: [],
    usual: true,
    moves: [{ do: 'sit' }],
    time: 'duration.move',
  },
  {
    id: 'stand-up',
    action: 'stand',
    groups: [],
    usual: true,
    moves: [{ do: 'stand' }],
    time: 'duration.move',
  },
  {
    id: 'use',
    action: 'touch',
    groups: [],
    anyItem: true,
    usual: true,
    moves: [touch(hands(), fixture()), touch(hands(), { at: 'named' })],
    time: 'duration.say',
  },
] as const satisfies readonly Technique[];
