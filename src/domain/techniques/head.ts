// What is worn on head and face: hoods, caps, shield, goggles, mask, respirator, powered respirator. Sources: CDC
// step pages (shield 08, powered-respirator hood 10), everyday sequence and other posters (lower strap first),
// observer module page 21 (brow and hair), Mumma 2018 (hood against scrubs as it is pulled off).
import { beneath, hands, off, on, part, place, slip, touch, type Condition, type Move } from '../moves.ts';
import { DISCARD, HELPED, REACH, type Technique } from './technique.ts';

const TORSO = place(['chest', 'back', 'arm']);

const SWING: readonly Move[] = [
  slip('brush', part(['outside', 'lower-edge']), beneath()),
  slip('swing', part(['outside', 'lower-edge']), TORSO),
];

const ALONE: Condition = { helped: false };
const WITH_HELP: Condition = { helped: true };

/** A strap drags over hair, ears and cheek as it comes off. */
const DRAG: Move = touch(part('strap'), place(['scalp', 'ears', 'face']));

const frontOff = (grip: readonly Move[]): readonly Move[] => [
  ...grip,
  DRAG,
  off(),
  // After it is off, or a shield's front would be what lies outermost at the cheek that it brushes.
  slip('brush', part('front'), place(['face', 'neck', 'chest'])),
  ...REACH,
  ...DISCARD,
];

const STRAP_GRIP: readonly Move[] = [
  touch(hands(), part('strap')),
  slip('wrong-grip', hands(), part('front')),
];
const FRONT_GRIP: readonly Move[] = [touch(hands(), part('front'))];

export const HEAD_TECHNIQUES = [
  {
    id: 'from-behind',
    action: 'remove',
    groups: ['head-cover'],
    usual: true,
    moves: [
      touch(hands(), part('rear'), ALONE),
      touch(hands('helper'), part('rear'), WITH_HELP),
      slip('wrong-grip', hands(), part(['outside', 'lower-edge']), ALONE),
      slip('wrong-grip', hands('helper'), part(['outside', 'lower-edge']), WITH_HELP),
      ...SWING,
      off(),
      ...REACH,
      ...DISCARD,
      ...HELPED,
    ],
    time: 'duration.head-removal',
  },
  {
    id: 'front-grip-cover',
    action: 'remove',
    groups: ['head-cover'],
    moves: [touch(hands(), part(['outside', 'lower-edge'])), ...SWING, off(), ...REACH, ...DISCARD],
    breaks: ['practice.face-item-front-untouched'],
    time: 'duration.head-removal',
  },
  {
    id: 'detach-hose',
    action: 'unfasten',
    groups: ['powered-hood'],
    usual: true,
    moves: [
      touch(hands(), part('outside'), ALONE),
      touch(hands('helper'), part('outside'), WITH_HELP),
      { do: 'open' },
      ...HELPED,
    ],
    time: 'duration.unfasten',
  },
  {
    id: 'helper-cuffs-hood',
    action: 'remove',
    groups: ['powered-hood'],
    usual: true,
    moves: [
      touch(hands('helper'), part(['outside', 'lower-edge'])),
      touch(hands(), part('outside')),
      ...SWING,
      off(),
      ...REACH,
      ...DISCARD,
      ...HELPED,
    ],
    needs: ['open', 'helper'],
    time: 'duration.head-removal',
  },
  {
    id: 'hood-alone',
    action: 'remove',
    groups: ['powered-hood'],
    moves: [touch(hands(), part(['outside', 'lower-edge'])), ...SWING, off(), ...REACH, ...DISCARD],
    needs: ['open'],
    time: 'duration.head-removal',
  },
  {
    id: 'unclasp-belt',
    action: 'unfasten',
    groups: ['blower'],
    usual: true,
    moves: [
      touch(hands('helper'), part('unit'), WITH_HELP),
      touch(hands(), part('buckle')),
      { do: 'open' },
      ...HELPED,
    ],
    time: 'duration.unfasten',
  },
  {
    id: 'hand-over-unit',
    action: 'remove',
    groups: ['blower'],
    usual: true,
    moves: [
      touch(hands('helper'), part(['unit', 'hose']), WITH_HELP),
      touch(hands(), part(['unit', 'hose']), ALONE),
      touch(hands(), part('buckle'), { fastened: true }),
      slip('brush', part(['unit', 'hose']), place(['waist', 'back'])),
      off(),
      ...HELPED,
    ],
    time: 'duration.head-removal',
  },
  {
    id: 'rear-strap',
    action: 'remove',
    groups: ['eye-cover'],
    usual: true,
    moves: frontOff(STRAP_GRIP),
    time: 'duration.head-removal',
  },
  {
    id: 'front-grip',
    action: 'remove',
    groups: ['eye-cover'],
    moves: frontOff(FRONT_GRIP),
    breaks: ['practice.shield-by-rear-strap', 'practice.face-item-front-untouched'],
    time: 'duration.head-removal',
  },
  {
    id: 'lower-then-upper',
    action: 'remove',
    groups: ['face-cover'],
    usual: true,
    moves: frontOff(STRAP_GRIP),
    time: 'duration.head-removal',
  },
  {
    id: 'upper-then-lower',
    action: 'remove',
    groups: ['face-cover'],
    moves: frontOff([...STRAP_GRIP, slip('strap-slips', part('front'), place(['neck', 'chest', 'face']))]),
    breaks: ['practice.respirator-lower-strap-first'],
    time: 'duration.head-removal',
  },
  {
    id: 'front-grip-mask',
    action: 'remove',
    groups: ['face-cover'],
    moves: frontOff(FRONT_GRIP),
    breaks: ['practice.face-item-front-untouched'],
    time: 'duration.head-removal',
  },
  {
    id: 'over-the-head',
    action: 'put-on',
    groups: ['head-cover', 'eye-cover', 'face-cover', 'powered-hood', 'blower'],
    usual: true,
    moves: [
      touch(hands(), part(['strap', 'rear', 'lower-edge', 'buckle']), ALONE),
      touch(hands('helper'), part(['strap', 'rear', 'lower-edge', 'unit']), WITH_HELP),
      touch(hands(), part('front')),
      on(),
      slip('reach-to-face', hands(), place(['face'])),
    ],
    uses: [{ what: 'fresh-item', count: 1 }],
    time: 'duration.head-put-on',
  },
  {
    id: 'connect',
    action: 'fasten',
    groups: ['powered-hood', 'blower'],
    usual: true,
    moves: [
      touch(hands(), part(['buckle', 'outside']), ALONE),
      touch(hands('helper'), part(['unit', 'hose', 'outside']), WITH_HELP),
      { do: 'close' },
    ],
    time: 'duration.unfasten',
  },
] as const satisfies readonly Technique[];
