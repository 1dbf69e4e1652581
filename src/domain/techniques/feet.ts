// Boots, boot and shoe covers, and the shoes that stay on. Sources: CDC step pages (boot covers 14, shoes 18),
// Kwon 2017 (legs on scrubs, balance), enhanced protocol 2021 (strings untied with an open coverall).
import { beneath, clean, hands, off, on, part, place, slip, touch, type Move } from '../moves.ts';
import { DISCARD, HELPED, type Technique } from './technique.ts';

/** Bending down: an open garment's edge can touch what is beneath it. */
const BEND: Move = { do: 'bend', slip: 'edge-curls' };

const LEG: Move = slip('leg-on-leg', part(['outside', 'upper', 'sole']), place(['thigh', 'shin']));
/** Hands that just held a cover or a shoe; a cover lies over the ankle, so only once it is off. */
const ANKLE: Move = slip('ankle-touch', hands(), place(['ankle']));

const coverOff = (more: readonly Move[]): readonly Move[] => [
  BEND,
  touch(hands(), part('strings'), { fastened: true }),
  touch(hands(), part('outside')),
  LEG,
  ...more,
  slip('brush', part(['outside', 'sole']), beneath()),
  off(),
  ANKLE,
  ...DISCARD,
  ...HELPED,
];

/** Shoes have uppers, boots and covers an outside; both have soles. */
const UPPERS = ['upper', 'outside'] as const;
const WHOLE = [...UPPERS, 'sole'] as const;

const shoe = (side: 'first' | 'second', parts: typeof UPPERS | typeof WHOLE): readonly Move[] => [
  slip('wrong-grip', hands(), part(WHOLE, side)),
  clean(part(parts, side), 'omitted-wipe', 'wipe-missed-area', 'wipe-too-short'),
];

const wipeShoes = (parts: typeof UPPERS | typeof WHOLE, between: readonly Move[] = []): readonly Move[] => [
  BEND,
  LEG,
  ...shoe('first', parts),
  ...between,
  ...shoe('second', parts),
  ANKLE,
];

export const FOOT_TECHNIQUES = [
  {
    id: 'heel-first',
    action: 'remove',
    groups: ['foot-cover'],
    usual: true,
    moves: coverOff([]),
    needs: ['seated'],
    time: 'duration.foot-removal',
  },
  {
    id: 'toe-first',
    action: 'remove',
    groups: ['foot-cover'],
    moves: coverOff([slip('loses-balance', part('outside'), place(['thigh', 'shin']))]),
    needs: ['seated'],
    breaks: ['practice.boot-cover-heel-before-toe'],
    time: 'duration.foot-removal',
  },
  {
    id: 'standing-on-one-leg',
    action: 'remove',
    groups: ['foot-cover'],
    moves: coverOff([
      slip('loses-balance', part(['outside', 'sole']), place(['thigh', 'shin'])),
      slip('loses-balance', hands(), part(['outside', 'sole'])),
    ]),
    needs: ['standing'],
    breaks: ['practice.boot-covers-seated'],
    time: 'duration.foot-removal',
  },
  {
    id: 'untie-strings',
    action: 'unfasten',
    groups: ['foot-cover'],
    usual: true,
    moves: [BEND, touch(hands(), part('strings')), { do: 'open' }],
    time: 'duration.unfasten',
  },
  {
    id: 'step-out',
    action: 'remove',
    groups: ['boots'],
    usual: true,
    moves: [
      touch(part('sole', 'second'), part('outside', 'first')),
      off('first'),
      slip('leg-on-leg', part(['outside', 'sole'], 'second'), place(['foot', 'ankle', 'shin'], 'first')),
      off('second'),
      slip('wrong-grip', hands(), part('outside')),
      slip('brush', part(['outside', 'sole']), place(['shin', 'ankle'])),
    ],
    time: 'duration.foot-removal',
  },
  {
    id: 'pull-off-by-hand',
    action: 'remove',
    groups: ['boots'],
    moves: [BEND, touch(hands(), part('outside')), LEG, off(), ANKLE],
    breaks: ['practice.boots-without-hands'],
    time: 'duration.foot-removal',
  },
  {
    id: 'one-wipe-per-shoe',
    action: 'wipe',
    groups: ['shoes', 'boots', 'foot-cover'],
    usual: true,
    moves: wipeShoes(WHOLE),
    needs: ['seated'],
    uses: [{ what: 'wipe', count: 2 }],
    time: 'duration.shoe-wipe',
  },
  {
    id: 'same-wipe-for-both',
    action: 'wipe',
    groups: ['shoes', 'boots', 'foot-cover'],
    moves: wipeShoes(WHOLE, [touch(part(WHOLE, 'first'), part(WHOLE, 'second'))]),
    needs: ['seated'],
    uses: [{ what: 'wipe', count: 1 }],
    breaks: ['practice.one-wipe-per-shoe'],
    time: 'duration.shoe-wipe',
  },
  {
    id: 'without-soles',
    action: 'wipe',
    groups: ['shoes', 'boots', 'foot-cover'],
    moves: wipeShoes(UPPERS),
    needs: ['seated'],
    uses: [{ what: 'wipe', count: 2 }],
    breaks: ['practice.shoes-wiped-with-soles'],
    time: 'duration.shoe-wipe',
  },
  {
    id: 'pull-up',
    action: 'put-on',
    groups: ['foot-cover', 'boots', 'shoes'],
    usual: true,
    moves: [touch(hands(), part(['outside', 'upper'])), on(), slip('touch-fixture', hands(), part('sole'))],
    uses: [{ what: 'fresh-item', count: 2 }],
    time: 'duration.foot-put-on',
  },
  {
    id: 'tie-strings',
    action: 'fasten',
    groups: ['foot-cover'],
    usual: true,
    moves: [touch(hands(), part('strings')), { do: 'close' }],
    time: 'duration.unfasten',
  },
] as const satisfies readonly Technique[];
