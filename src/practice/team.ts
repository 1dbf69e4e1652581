// Observer and assistant: who may touch, and what they do afterwards. Sources: trained-observer module (pages 01 and
// 18), training module (hood), Gurses 2019 (the highest expert scores).
import { bodyIn } from '../contacts/scene.ts';
import type { ItemGroup } from '../domain/items.ts';
import type { Role } from '../domain/procedure.ts';
import { usesHelper } from '../domain/techniques/index.ts';
import { BOTH, DOFFING, type Found, type Rule } from './departure.ts';
import { groupOf, inTwoPairs, type Moment, nextHandAct, type Reading, sameAct, takenOff } from './reading.ts';

interface Assist {
  readonly moment: Moment;
  readonly person: string;
}

/** Every act of help: hands on the equipment of somebody else, as doer or as helper. */
function assists(reading: Reading): readonly Assist[] {
  return reading.asked.flatMap((moment) => {
    const { who, helper } = moment.step;
    const people = [who, ...(helper === undefined ? [] : [helper])];
    return people
      .filter((person) => person !== moment.owner && moment.touching.has(person))
      .map((person) => ({ moment, person }));
  });
}

/** What the help was about: an item, or a place that was held. */
function helpIn(moment: Moment, person: string): Found['params'] {
  const { items, place } = moment.step;
  const [item] = items;
  return { person, of: moment.owner, ...(item ? { item } : {}), ...(place ? { place } : {}) };
}

const roleOf = (reading: Reading, id: string): Role | undefined =>
  reading.procedure.people.find((person) => person.id === id)?.role;

const hasRole = (reading: Reading, role: Role): boolean =>
  reading.procedure.people.some((person) => person.role === role);

function helperHygiene(reading: Reading): readonly Found[] {
  const all = assists(reading);
  return all.flatMap(({ moment, person }) => {
    const next = nextHandAct(reading, moment.index, person);
    if (next?.cleans === person) return [];
    const goesOn = next && all.some((one) => one.moment === next && one.person === person);
    if (goesOn && sameAct(moment, next)) return [];
    const others = next ? { others: [next.index] } : {};
    return [{ step: moment.index, ...others, params: helpIn(moment, person) }];
  });
}

/** Steps in which an observer helps, when the unit has (or has not) an assistant for that. */
function observerHelps(reading: Reading, withAssistant: boolean): readonly Found[] {
  if (hasRole(reading, 'assistant') !== withAssistant) return [];
  return assists(reading)
    .filter(({ person }) => roleOf(reading, person) === 'observer')
    .map(({ moment, person }) => ({
      step: moment.index,
      params: helpIn(moment, person),
    }));
}

const NEED_ASSISTANT: readonly ItemGroup[] = ['powered-hood', 'blower', 'coverall'];

function assistantMissing(reading: Reading): readonly Found[] {
  if (hasRole(reading, 'assistant')) return [];
  return reading.procedure.people.flatMap(({ id: person, role, wears }) => {
    const item = wears.find((candidate) => NEED_ASSISTANT.includes(groupOf(candidate)));
    if (role !== 'wearer' || !item) return [];
    const first = reading.moments.find(
      (moment) => moment.owner === person && moment.step.items.includes(item),
    );
    return [{ step: first?.index ?? 0, params: { person, item } }];
  });
}

function hoodAlone(reading: Reading): readonly Found[] {
  if (!hasRole(reading, 'assistant')) return [];
  return reading.asked.flatMap((moment) => {
    const [item] = takenOff(moment, ['powered-hood']);
    // A helper who is named but whose hands the technique does not use is no help.
    const { who, helper } = moment.step;
    const alone = who === moment.owner && !(helper !== undefined && usesHelper(moment.technique));
    return item && alone ? [{ step: moment.index, params: { person: moment.owner, item } }] : [];
  });
}

function observerMissing(reading: Reading): readonly Found[] {
  if (hasRole(reading, 'observer')) return [];
  const wearer = reading.procedure.people.find((person) => person.role === 'wearer');
  const pairs = reading.procedure.kind === 'donning' ? donnedTwoPairs(reading) : inTwoPairs(reading);
  return wearer && pairs.includes(wearer.id) ? [{ step: 0, params: { person: wearer.id } }] : [];
}

const donnedTwoPairs = (reading: Reading): readonly string[] =>
  reading.moments.filter((moment) => moment.step.items.includes('outer-gloves')).map(({ owner }) => owner);

/** Walking over the line to the clean side, or back, while a wearer still has something to take off. */
function crossesLine(reading: Reading): readonly Found[] {
  const isClean = (zone: string) =>
    reading.procedure.zones.find((candidate) => candidate.id === zone)?.side === 'clean';
  const last = reading.moments.findLast(
    (moment) => roleOf(reading, moment.owner) === 'wearer' && takenOff(moment).length > 0,
  );
  if (!last) return [];
  const helpers = reading.procedure.people.filter(({ role }) => role !== 'wearer').map(({ id }) => id);
  return reading.moments.flatMap((moment) => {
    const person = moment.step.who;
    if (moment.before === moment.after || moment.index > last.index || !helpers.includes(person)) return [];
    const from = bodyIn(moment.before, person).zone;
    const to = bodyIn(moment.after, person).zone;
    return isClean(from) === isClean(to) ? [] : [{ step: moment.index, params: { person, zone: to } }];
  });
}

export const TEAM: readonly Rule[] = [
  {
    id: 'practice.helper-hygiene-after-each-assist',
    kinds: DOFFING,
    looksAt:
      'After hands were on somebody else’s equipment, their next act must be to be cleaned. Several steps on one item, or on one powered respirator, are one act of help.',
    find: helperHygiene,
  },
  {
    id: 'practice.observer-hands-off',
    kinds: DOFFING,
    looksAt: 'An observer who helps with the hands although the procedure has an assistant.',
    find: (reading) => observerHelps(reading, true),
  },
  {
    id: 'practice.observer-and-assistant-apart',
    kinds: DOFFING,
    looksAt: 'An observer who helps with the hands in a procedure that has no assistant.',
    find: (reading) => observerHelps(reading, false),
  },
  {
    id: 'practice.assistant-for-hood-or-coverall',
    kinds: DOFFING,
    looksAt: 'A wearer in a powered respirator or coverall, and nobody in the role of assistant.',
    find: assistantMissing,
  },
  {
    id: 'practice.hood-by-outside-then-away',
    kinds: DOFFING,
    looksAt: 'A powered hood that the wearer takes off alone although the procedure has an assistant.',
    find: hoodAlone,
  },
  {
    id: 'practice.observer-for-every-step',
    kinds: BOTH,
    looksAt: 'Two pairs of gloves, and nobody in the role of observer.',
    find: observerMissing,
  },
  {
    id: 'practice.helper-keeps-side',
    kinds: DOFFING,
    looksAt:
      'An observer or assistant who walks onto the clean side, or back from it, before the wearer’s last item is off.',
    find: crossesLine,
  },
];
