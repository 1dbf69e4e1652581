// Fresh gloves: on dry and rubbed hands, and before the respirator. Source: training module, respirator route, page 16.
import { bodyIn } from '../contacts/scene.ts';
import { SIDES } from '../domain/places.ts';
import { BOTH, DOFFING, type Found, type Rule } from './departure.ts';
import {
  bareHands,
  gloveOn,
  groupOf,
  inTwoPairs,
  lastHandAct,
  type Moment,
  otherSideOf,
  putOn,
  type Reading,
  RESPIRATORS,
  takenOff,
} from './reading.ts';

function onWetHands(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.owner;
    const [item] = putOn(moment, ['glove']);
    return item && bodyIn(moment.before, person).wet
      ? [{ step: moment.index, params: { person, item } }]
      : [];
  });
}

function onUnrubbedHands(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.owner;
    const [item] = putOn(moment, ['glove']);
    if (!item || !bareHands(bodyIn(moment.before, person))) return [];
    const last = lastHandAct(reading, moment.index, person);
    if (last?.cleans === person || (last && otherSideOf(last, moment))) return [];
    return [{ step: moment.index, ...(last ? { others: [last.index] } : {}), params: { person, item } }];
  });
}

/** Whether the gloves outermost at `until` were put on after `from`; a bare hand is not in a fresh glove. */
function changed(reading: Reading, person: string, from: Moment, until: Moment): boolean {
  const body = bodyIn(until.before, person);
  const between = reading.moments.filter(
    ({ index, owner }) => index > from.index && index < until.index && owner === person,
  );
  return SIDES.every((side) => {
    const glove = gloveOn(body, side);
    return glove !== undefined && between.some((moment) => putOn(moment, ['glove']).includes(glove));
  });
}

function sameGlovesForRespirator(reading: Reading): readonly Found[] {
  return inTwoPairs(reading).flatMap((person) => {
    const own = reading.moments.filter((moment) => moment.owner === person);
    const garment = own.find((moment) => takenOff(moment, ['gown', 'coverall']).length > 0);
    const face = own.find((moment) => takenOff(moment).some((item) => RESPIRATORS.includes(item)));
    if (!garment || !face || face.index < garment.index || changed(reading, person, garment, face)) return [];
    const item = face.step.items.find((candidate) => groupOf(candidate) === 'face-cover') ?? '';
    return [{ step: face.index, others: [garment.index], params: { person, item } }];
  });
}

export const GLOVES: readonly Rule[] = [
  {
    id: 'practice.glove-on-dry-hand',
    kinds: BOTH,
    looksAt: 'A glove put on a hand that was left wet by the way it was cleaned.',
    find: onWetHands,
  },
  {
    id: 'practice.hygiene-before-fresh-glove',
    kinds: DOFFING,
    looksAt: 'A glove put on a bare hand whose last act was not to be cleaned.',
    find: onUnrubbedHands,
  },
  {
    id: 'practice.glove-change-before-respirator',
    kinds: DOFFING,
    looksAt:
      'For a person who starts in two pairs of gloves and takes the garment off before a respirator: the respirator comes off with the gloves that were outermost when the garment came off, or with bare hands. Published for the respirator route of one training module only; the international sequences keep the same gloves.',
    hangsOn: (moment) => takenOff(moment).some((item) => RESPIRATORS.includes(item)),
    find: sameGlovesForRespirator,
  },
];
