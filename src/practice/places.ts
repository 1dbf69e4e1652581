// Places: which chair, whether shoes are wiped, and what a step touches outright. Sources: training module (pages 10,
// 14 and 18), everyday sequence (fronts), observer module (page 21: the reach for the face).
import { bodyIn } from '../contacts/scene.ts';
import type { ItemGroup, ItemId, PartId } from '../domain/items.ts';
import { type Place, SIDES } from '../domain/places.ts';
import type { ZoneSide } from '../domain/room.ts';
import type { PracticeRuleId } from '../evidence/index.ts';
import { DOFFING, type Found, type Rule } from './departure.ts';
import { groupOf, inTwoPairs, type Moment, type Reading, takenOff } from './reading.ts';

/** What a chair's seat meets; foot covers only foul the chair on which shoes are wiped later. */
const GARMENTS: readonly ItemGroup[] = ['gown', 'coverall', 'apron'];

const wipesShoes = (moment: Moment): boolean =>
  moment.step.action === 'wipe' && moment.step.items.includes('shoes');

/** Steps in which shoes are wiped by somebody on this chair. */
const shoeSteps = (reading: Reading, chair: string): readonly Moment[] =>
  reading.moments.filter(
    (moment) => wipesShoes(moment) && bodyIn(moment.before, moment.owner).seated === chair,
  );

function dirtyOnCleanChair(reading: Reading): readonly Found[] {
  return reading.moments.flatMap((moment) => {
    if (moment.step.action !== 'sit') return [];
    const person = moment.step.who;
    const body = bodyIn(moment.after, person);
    const fixture = body.seated;
    const garment = body.layers.findLast((layer) => GARMENTS.includes(groupOf(layer.item)))?.item;
    const item = garment ?? body.layers.find((layer) => groupOf(layer.item) === 'foot-cover')?.item;
    if (fixture === undefined || !item) return [];
    const shoes = shoeSteps(reading, fixture).map((step) => step.index);
    const clean = reading.procedure.fixtures.some((candidate) => candidate.id === fixture && candidate.clean);
    if (shoes.length === 0 && !(clean && garment)) return [];
    return [
      {
        step: moment.index,
        ...(shoes.length > 0 ? { others: shoes } : {}),
        params: { person, item, fixture },
      },
    ];
  });
}

/** Where boot or shoe covers were worn, both shoes are wiped once the covers are off. */
function shoesUnwiped(reading: Reading): readonly Found[] {
  return inTwoPairs(reading).flatMap((person) => {
    const own = reading.moments.filter((moment) => moment.owner === person);
    const covers = own.findLast((moment) => takenOff(moment, ['foot-cover']).length > 0);
    if (!covers || !bodyIn(covers.after, person).layers.some((layer) => layer.item === 'shoes')) return [];
    const wiped = own.filter((moment) => moment.index > covers.index && wipesShoes(moment));
    const both = SIDES.every((side) => wiped.some(({ step }) => (step.side ?? side) === side));
    return both ? [] : [{ step: covers.index, params: { person, item: 'shoes' } }];
  });
}

const FACE: readonly Place[] = ['face', 'eyes', 'nose', 'mouth'];

function faceAfterHood(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const { action, place } = moment.step;
    if (action !== 'touch' || place === undefined || !FACE.includes(place)) return [];
    const person = moment.owner;
    const hood = reading.moments.find(
      (earlier) =>
        earlier.index < moment.index &&
        earlier.owner === person &&
        takenOff(earlier, ['head-cover', 'powered-hood']).length > 0,
    );
    return hood ? [{ step: moment.index, others: [hood.index], params: { person, place } }] : [];
  });
}

const FRONTS: readonly PartId[] = ['front', 'sleeve-left', 'sleeve-right', 'outside'];

/** A step that says to touch a front. A step that names no part means the front. */
const touchesFront = (reading: Reading, groups: readonly ItemGroup[]): readonly Found[] =>
  reading.asked.flatMap(({ index, owner: person, step }) => {
    const [item] = step.items;
    if (step.action !== 'touch' || !item || !groups.includes(groupOf(item))) return [];
    return FRONTS.includes(step.part ?? 'front') ? [{ step: index, params: { person, item } }] : [];
  });

/** What the people asked about, all in two pairs of gloves, take off while they stand on this side. */
function offOn(reading: Reading, side: ZoneSide, isAsked: (person: string, item: ItemId) => boolean) {
  const zones = reading.procedure.zones.filter((zone) => zone.side === side).map((zone) => zone.id);
  const people = inTwoPairs(reading);
  return reading.asked.flatMap(({ index, step, owner: person, before }): readonly Found[] => {
    const [item] = step.action === 'remove' ? step.items : [];
    const there = zones.includes(bodyIn(before, person).zone);
    if (!item || !there || !people.includes(person) || !isAsked(person, item)) return [];
    return [{ step: index, params: { person, item } }];
  });
}

/** Sources do not say where the feet stand for these, which come last, once the shoes are wiped. */
const LAST: readonly ItemGroup[] = ['glove', 'face-cover'];

/** Taken off by a wearer who has stepped over the line with it. */
function offBeyondTheLine(reading: Reading): readonly Found[] {
  const wearers = reading.procedure.people.filter(({ role }) => role === 'wearer').map(({ id }) => id);
  return offOn(reading, 'clean', (person, item) => wearers.includes(person) && !LAST.includes(groupOf(item)));
}

const front = (id: PracticeRuleId, groups: readonly ItemGroup[], what: string): Rule => ({
  id,
  kinds: DOFFING,
  looksAt: `A step that tells somebody to touch the front of ${what}, besides the techniques named here.`,
  find: (reading) => touchesFront(reading, groups),
});

export const PLACES_TOUCHED: readonly Rule[] = [
  {
    id: 'practice.clean-and-dirty-chair-apart',
    kinds: DOFFING,
    looksAt:
      'Somebody who sits down on a clean chair while gown, coverall or apron is still worn, or, in foot covers, on the chair on which shoes are wiped. The coverall module itself does both: a unit that follows it accepts this departure.',
    hangsOn: (moment) => moment.step.action === 'sit' || wipesShoes(moment),
    find: dirtyOnCleanChair,
  },
  {
    id: 'practice.off-in-doffing-area',
    kinds: DOFFING,
    looksAt: 'Somebody in two pairs of gloves who takes anything off while still on the patient’s side.',
    find: (reading) => offOn(reading, 'patient', () => true),
  },
  {
    id: 'practice.stays-until-all-off',
    kinds: DOFFING,
    looksAt:
      'A wearer in two pairs of gloves who takes anything but gloves, mask or respirator off on the clean side. Of those, which come last, the sources that were read do not say where the feet stand once the shoes are wiped. A room without a clean side is not asked.',
    find: offBeyondTheLine,
  },
  {
    id: 'practice.shoes-wiped-with-soles',
    kinds: DOFFING,
    looksAt:
      'Two pairs of gloves and foot covers were worn, and the shoes are not both wiped once the covers are off; or they are wiped without their soles.',
    find: shoesUnwiped,
  },
  {
    id: 'practice.no-face-touch-after-hood',
    kinds: DOFFING,
    looksAt: 'A step that touches face, eyes, nose or mouth once hood or cap is off.',
    find: faceAfterHood,
  },
  front('practice.garment-front-untouched', ['gown', 'coverall'], 'a gown or coverall'),
  front(
    'practice.face-item-front-untouched',
    ['face-cover', 'eye-cover'],
    'a mask, respirator, shield or goggles',
  ),
];
