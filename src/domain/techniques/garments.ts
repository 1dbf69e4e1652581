// Gown, coverall, apron. Sources: CDC step pages (gown 11, coverall 12, apron 04), everyday examples 1 and 2,
// the international sequences (from memory), Gurses 2019 (apron over the head), enhanced protocol 2021
// (an open coverall's edge against the shirt when bending).
import {
  beneath,
  fixture,
  hand,
  hands,
  off,
  on,
  part,
  place,
  slip,
  touch,
  type Move,
  type Ref,
} from '../moves.ts';
import { DISCARD, HELPED, type Technique } from './technique.ts';

const OUTSIDES: Ref = part([
  'front',
  'skirt',
  'sleeve-left',
  'sleeve-right',
  'cuff-left',
  'cuff-right',
  'collar',
  'hood',
]);

const ties = (order: readonly ('neck-tie' | 'waist-tie')[]): readonly Move[] =>
  order.flatMap((tie) => [
    touch(hands(), part(tie), { fastened: true, helped: false }),
    touch(hands('helper'), part(tie), { fastened: true, helped: true }),
  ]);
const TIES = ties(['neck-tie', 'waist-tie']);

const BRUSH: readonly Move[] = [slip('brush', OUTSIDES, beneath())];
const LEGS: Ref = part(['leg-left', 'leg-right']);

const gownOff = (order: readonly Move[], grip: readonly Move[]): readonly Move[] => [
  ...order,
  { do: 'open' },
  ...grip,
  ...BRUSH,
  off(),
  ...DISCARD,
  ...HELPED,
];

const INSIDE_GRIP: readonly Move[] = [
  touch(hands(), part('inside')),
  slip('wrong-grip', hands(), part(['front', 'sleeve-left', 'sleeve-right'])),
];

/** Both off in one movement: dirty hands pull the outside, then bare hands meet only the linings. */
const TOGETHER: readonly Move[] = [
  touch(hands(), part(['front'])),
  off('both', 1),
  touch(hands(), part('inside')),
  touch(hands(), part('inside', 'both', 1)),
  slip('wrong-grip', hands(), part(['front', 'sleeve-left', 'sleeve-right'])),
  slip('wrong-grip', hands(), part('outside', 'both', 1)),
  ...BRUSH,
  off(),
  ...DISCARD,
];

/** Rolled down with hands inside; the edge may curl back onto them (enhanced protocol 2021). */
const ROLL_INSIDE: readonly Move[] = [
  touch(hands(), part(['inside', 'inside-lower'])),
  slip('edge-curls', hands(), part('front')),
  slip('wrong-grip', hands(), LEGS),
  ...BRUSH,
  off(),
  // Once the suit is down: its leg against the trousers on which the wearer steadies it.
  slip('loses-balance', LEGS, place(['thigh'])),
  ...DISCARD,
  ...HELPED,
];

export const GARMENT_TECHNIQUES = [
  {
    id: 'inside-out',
    action: 'remove',
    groups: ['gown'],
    usual: true,
    moves: gownOff(TIES, INSIDE_GRIP),
    time: 'duration.garment-removal',
  },
  {
    id: 'outside-pull',
    action: 'remove',
    groups: ['gown'],
    moves: gownOff(TIES, [touch(hands(), part(['front', 'sleeve-left', 'sleeve-right']))]),
    time: 'duration.garment-removal',
  },
  {
    id: 'front-pull',
    action: 'remove',
    groups: ['gown', 'coverall'],
    moves: gownOff(TIES, [
      touch(hands(), part(['front', 'sleeve-left', 'sleeve-right', 'leg-left', 'leg-right'])),
    ]),
    breaks: ['practice.garment-front-untouched'],
    time: 'duration.garment-removal',
  },
  {
    id: 'waist-first',
    action: 'remove',
    groups: ['gown'],
    moves: gownOff(ties(['waist-tie', 'neck-tie']), INSIDE_GRIP),
    breaks: ['practice.gown-upper-fastening-first'],
    time: 'duration.garment-removal',
  },
  {
    id: 'together-with-gloves',
    action: 'remove',
    groups: ['gown'],
    together: ['glove'],
    moves: TOGETHER,
    time: 'duration.garment-removal',
  },
  {
    id: 'upper-tie-first',
    action: 'unfasten',
    groups: ['gown'],
    usual: true,
    moves: [...TIES, { do: 'open' }, ...HELPED],
    time: 'duration.unfasten',
  },
  {
    id: 'waist-tie-first',
    action: 'unfasten',
    groups: ['gown'],
    moves: [...ties(['waist-tie', 'neck-tie']), { do: 'open' }, ...HELPED],
    breaks: ['practice.gown-upper-fastening-first'],
    time: 'duration.unfasten',
  },
  {
    id: 'zip-one-hand',
    action: 'unfasten',
    groups: ['coverall'],
    usual: true,
    moves: [
      touch(hand('dominant'), part('zip'), { helped: false }),
      touch(hand('dominant', 'helper'), part('zip'), { helped: true }),
      slip('second-hand-on-front', hand('other'), part('front'), { helped: false }),
      slip('second-hand-on-front', hand('other', 'helper'), part('front'), { helped: true }),
      slip('reach-to-face', hand('dominant'), place(['face', 'neck']), { helped: false }),
      { do: 'open' },
      ...HELPED,
    ],
    time: 'duration.unfasten',
  },
  {
    id: 'zip-two-hands',
    action: 'unfasten',
    groups: ['coverall'],
    moves: [
      touch(hand('dominant'), part('zip')),
      touch(hand('other'), part('front')),
      slip('reach-to-face', hands(), place(['face', 'neck'])),
      { do: 'open' },
    ],
    breaks: ['practice.zip-one-hand'],
    time: 'duration.unfasten',
  },
  {
    id: 'roll-inside',
    action: 'remove',
    groups: ['coverall'],
    usual: true,
    moves: ROLL_INSIDE,
    needs: ['open'],
    time: 'duration.garment-removal',
  },
  {
    id: 'roll-inside-with-gloves',
    action: 'remove',
    groups: ['coverall'],
    together: ['glove'],
    // The outer gloves free the shoulders by the outside (as remembered, no face is named); inner gloves roll from within.
    moves: [
      touch(hands(), part('front')),
      slip('wrong-grip', hands(), part('inside')),
      off('both', 1),
      touch(hands(), part('inside', 'both', 1)),
      slip('wrong-grip', hands(), part('outside', 'both', 1)),
      ...ROLL_INSIDE,
    ],
    needs: ['open'],
    time: 'duration.garment-removal',
  },
  {
    id: 'helper-rolls-outside',
    action: 'remove',
    groups: ['coverall'],
    moves: [
      touch(hands('helper'), part(['back', 'sleeve-left', 'sleeve-right'])),
      ...BRUSH,
      touch(hands(), part('inside-lower')),
      slip('wrong-grip', hands(), LEGS),
      off(),
      // Once the suit is down: hands that held its outside against the clothes underneath, and its legs too.
      slip('wrong-grip', hands('helper'), place(['chest', 'back'])),
      slip('loses-balance', LEGS, place(['thigh'])),
      ...DISCARD,
      ...HELPED,
    ],
    needs: ['open', 'helper'],
    time: 'duration.garment-removal',
  },
  {
    id: 'tear-at-neck',
    action: 'remove',
    groups: ['apron'],
    usual: true,
    moves: [
      touch(hands(), part('waist-tie'), { fastened: true, helped: false }),
      touch(hands('helper'), part('waist-tie'), { fastened: true, helped: true }),
      touch(hands(), part('neck-strap')),
      { do: 'open' },
      touch(hands(), part('inside')),
      slip('wrong-grip', hands(), part('front')),
      slip('swing', part('front'), beneath()),
      off(),
      ...DISCARD,
      ...HELPED,
    ],
    time: 'duration.garment-removal',
  },
  {
    id: 'over-head',
    action: 'remove',
    groups: ['apron'],
    moves: [
      touch(hands(), part('neck-strap')),
      { do: 'open' },
      touch(part('neck-strap'), place(['scalp', 'face', 'neck'])),
      slip('brush', part('front'), place(['scalp', 'ears', 'face', 'eyes', 'nose', 'mouth', 'neck'])),
      slip('swing', part('front'), beneath()),
      off(),
      ...DISCARD,
    ],
    breaks: ['practice.apron-torn-at-neck'],
    time: 'duration.garment-removal',
  },
  {
    id: 'dress',
    action: 'put-on',
    groups: ['gown', 'coverall', 'apron'],
    usual: true,
    moves: [
      touch(hands(), part('inside')),
      touch(hands(), part('front')),
      on(),
      slip('touch-fixture', part(['skirt', 'leg-left', 'leg-right']), fixture('floor', 'surface')),
    ],
    uses: [{ what: 'fresh-item', count: 1 }],
    time: 'duration.garment-put-on',
  },
  {
    id: 'close',
    action: 'fasten',
    groups: ['gown', 'coverall', 'apron'],
    usual: true,
    moves: [
      touch(hands(), part(['zip', 'neck-tie', 'waist-tie', 'neck-strap']), { helped: false }),
      touch(hands('helper'), part(['zip', 'neck-tie', 'waist-tie', 'neck-strap']), { helped: true }),
      { do: 'close' },
    ],
    time: 'duration.unfasten',
  },
] as const satisfies readonly Technique[];
