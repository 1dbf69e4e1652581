// Gloves, one or two pairs. Peeling and the finger under the cuff: CDC step pages (doffing 08) and everyday
// example 1; the side that goes first is the other hand's, so the dominant hand does most of the work
// (Casanova 2016 found more on the dominant inner glove).
import { beneath, hand, hands, off, on, part, place, slip, touch, type Move } from '../moves.ts';
import { DISCARD, type Technique } from './technique.ts';

const SPRAY: readonly Move[] = [
  slip('snap', part('outside'), hands()),
  slip('snap', part('outside'), place(['face', 'eyes', 'nose', 'mouth', 'neck'])),
];

const FIRST_OFF: readonly Move[] = [
  touch(hand('second'), part('outside', 'first')),
  slip('touch-beneath', hand('second'), beneath('first')),
  off('first'),
];

const ON_FIRST: readonly Move[] = [touch(hand('second'), part('outside', 'first')), on('first')];

export const GLOVE_TECHNIQUES = [
  {
    id: 'peel-cuff',
    action: 'remove',
    groups: ['glove'],
    usual: true,
    moves: [
      ...FIRST_OFF,
      touch(hand('first'), part('inside', 'second')),
      touch(hand('first'), beneath('second')),
      slip('wrong-grip', hand('first'), part('outside', 'second')),
      off('second'),
      ...SPRAY,
      ...DISCARD,
    ],
    time: 'duration.glove-removal',
  },
  {
    id: 'pull-by-outside',
    action: 'remove',
    groups: ['glove'],
    moves: [
      ...FIRST_OFF,
      touch(hand('first'), part('outside', 'second')),
      off('second'),
      ...SPRAY,
      ...DISCARD,
    ],
    time: 'duration.glove-removal',
    breaks: ['practice.second-glove-from-inside'],
  },
  {
    id: 'peel-one',
    action: 'remove',
    groups: ['glove'],
    moves: [...FIRST_OFF, slip('snap', part('outside', 'first'), hands()), ...DISCARD],
    time: 'duration.glove-removal',
  },
  {
    id: 'pull-on',
    action: 'put-on',
    groups: ['glove'],
    usual: true,
    moves: [...ON_FIRST, touch(hand('first'), part('outside', 'second')), on('second')],
    uses: [{ what: 'fresh-item', count: 2 }],
    time: 'duration.glove-put-on',
  },
  {
    id: 'pull-on-one',
    action: 'put-on',
    groups: ['glove'],
    moves: ON_FIRST,
    uses: [{ what: 'fresh-item', count: 1 }],
    time: 'duration.glove-put-on',
  },
] as const satisfies readonly Technique[];
