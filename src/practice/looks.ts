// Looking and leaving: inspections, the all-clear, gloves disinfected in the room. Sources: training module (pages 01
// and 09 and last steps) and, for donning, the seal check. Only for people who start in two pairs of gloves.
import { bodyIn } from '../contacts/scene.ts';
import type { ItemId } from '../domain/items.ts';
import { SIDES } from '../domain/places.ts';
import { DOFFING, DONNING, type Found, type Rule } from './departure.ts';
import {
  bareHands,
  gloveOn,
  inTwoPairs,
  lastHandAct,
  type Moment,
  putOn,
  type Reading,
  RESPIRATORS,
  takenOff,
} from './reading.ts';

/** Whether somebody looks the person (or one item) over between two steps, both excluded. */
const lookedOver = (reading: Reading, person: string, from: number, to: number, item?: ItemId): boolean =>
  reading.moments.some(
    ({ index, owner, step }) =>
      index > from &&
      index < to &&
      owner === person &&
      step.action === 'inspect' &&
      (step.items.length === 0 || item === undefined || step.items.includes(item)),
  );

/** The step in which a person leaves the patient's side; undefined if they do not start there. */
function leaving(reading: Reading, person: string): Moment | undefined {
  const atPatient = (zone: string) =>
    reading.procedure.zones.find((candidate) => candidate.id === zone)?.side === 'patient';
  return reading.moments.find(
    ({ before, after }) => atPatient(bodyIn(before, person).zone) && !atPatient(bodyIn(after, person).zone),
  );
}

const leavers = (reading: Reading): readonly { person: string; moment: Moment }[] =>
  inTwoPairs(reading).flatMap((person) => {
    const moment = leaving(reading, person);
    return moment ? [{ person, moment }] : [];
  });

const leavesWithout = (
  reading: Reading,
  done: (person: string, moment: Moment) => boolean,
): readonly Found[] =>
  leavers(reading)
    .filter(({ person, moment }) => !done(person, moment))
    .map(({ person, moment }) => ({ step: moment.index, params: { person } }));

function innerGlovesUnseen(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.owner;
    const body = bodyIn(moment.after, person);
    const glove = SIDES.map((side) => gloveOn(body, side)).find((item) => item !== undefined);
    if (takenOff(moment, ['glove']).length === 0 || !glove || bareHands(body)) return [];
    if (SIDES.some((side) => gloveOn(body, side) !== glove)) return [];
    const next = reading.moments.find(
      ({ index, touching, cleans, step }) =>
        index > moment.index && cleans !== person && touching.has(person) && step.items.length > 0,
    );
    const until = next?.index ?? Number.POSITIVE_INFINITY;
    return lookedOver(reading, person, moment.index, until, glove)
      ? []
      : [{ step: moment.index, params: { person, item: glove } }];
  });
}

function unseenAtEnd(reading: Reading): readonly Found[] {
  const observers = reading.procedure.people.filter(({ role }) => role === 'observer').map(({ id }) => id);
  const people = inTwoPairs(reading).filter((person) => !observers.includes(person));
  return people.flatMap((person) => {
    const last = reading.moments.findLast((moment) => moment.owner === person && takenOff(moment).length > 0);
    if (!last || lookedOver(reading, person, last.index, Number.POSITIVE_INFINITY)) return [];
    return [{ step: reading.moments.length - 1, params: { person } }];
  });
}

/** The check must name the respirator and come before anything else goes over it. */
function sealUnchecked(reading: Reading): readonly Found[] {
  return reading.moments.flatMap((moment) => {
    const person = moment.owner;
    const item = putOn(moment, ['face-cover']).find((candidate) => RESPIRATORS.includes(candidate));
    if (!item) return [];
    const over = reading.moments.find(
      (later) =>
        later.index > moment.index &&
        later.owner === person &&
        putOn(later, ['head-cover', 'eye-cover', 'powered-hood']).length > 0,
    );
    const checked = reading.moments.some(
      ({ index, owner, step }) =>
        index > moment.index &&
        index < (over?.index ?? Number.POSITIVE_INFINITY) &&
        owner === person &&
        step.action === 'inspect' &&
        step.items.includes(item),
    );
    return checked ? [] : [{ step: moment.index, params: { person, item } }];
  });
}

function unrubbedAtStart(reading: Reading): readonly Found[] {
  return reading.procedure.people.flatMap(({ id: person }) => {
    const first = reading.moments.find(
      (moment) => moment.owner === person && moment.step.action === 'put-on',
    );
    if (!first) return [];
    const [item = ''] = first.step.items;
    const cleaned = reading.moments.some((moment) => moment.index < first.index && moment.cleans === person);
    return cleaned ? [] : [{ step: first.index, params: { person, item } }];
  });
}

const walks = ({ step }: Moment): boolean => ['move', 'step-on', 'stand'].includes(step.action);

export const LOOKS: readonly Rule[] = [
  {
    id: 'practice.inspect-before-exit',
    kinds: DOFFING,
    looksAt:
      'Somebody who starts on the patient’s side in two pairs of gloves and leaves it before the equipment was looked over. That visible soil is wiped off cannot be seen from the steps.',
    hangsOn: walks,
    find: (reading) =>
      leavesWithout(reading, (person, moment) => lookedOver(reading, person, -1, moment.index)),
  },
  {
    id: 'practice.start-on-all-clear',
    kinds: DOFFING,
    looksAt: 'The same person leaves before anybody has spoken.',
    hangsOn: walks,
    find: (reading) =>
      leavesWithout(reading, (_, moment) =>
        reading.moments.some(({ index, step }) => index < moment.index && step.action === 'say'),
      ),
  },
  {
    id: 'practice.gloves-disinfected-before-leaving',
    kinds: DOFFING,
    looksAt: 'The last thing the same person’s hands did in the room was not to be cleaned.',
    hangsOn: walks,
    find: (reading) =>
      leavesWithout(
        reading,
        (person, moment) => lastHandAct(reading, moment.index, person)?.cleans === person,
      ),
  },
  {
    id: 'practice.inspect-inner-gloves',
    kinds: DOFFING,
    looksAt: 'Outer gloves come off and nobody looks at the inner ones before they meet the next item.',
    find: innerGlovesUnseen,
  },
  {
    id: 'practice.inspect-at-end',
    kinds: DOFFING,
    looksAt:
      'Nobody looks a person in two pairs of gloves over once the last item is off. Not asked of the observer: no source says who observes them.',
    find: unseenAtEnd,
  },
  {
    id: 'practice.donning.seal-check',
    kinds: DONNING,
    looksAt: 'A respirator that is not inspected by name before hood or shield goes over it.',
    find: sealUnchecked,
  },
  {
    id: 'practice.donning.hygiene-first',
    kinds: DONNING,
    looksAt: 'A first item that goes on before the hands were cleaned.',
    find: unrubbedAtStart,
  },
];
