// Hand hygiene: after gloves, between items, around the zip, and at the end. Sources: training modules of the
// VHF ensemble (disinfection steps) and the everyday sequence (end). 'Next' is the person's next hand act of any kind;
// looking and speaking may come in between.
import { bodyIn } from '../contacts/scene.ts';
import { itemKind } from '../domain/items.ts';
import { DOFFING, type Found, type Rule } from './departure.ts';
import {
  bareHands,
  glovePairs,
  groupOf,
  lastHandAct,
  type Moment,
  nextHandAct,
  nextMoment,
  otherSideOf,
  putOn,
  type Reading,
  sameAct,
  takenOff,
} from './reading.ts';

/** A fresh glove on an unrubbed bare hand has a rule of its own. */
const freshGloveOnBareHand = (moment: Moment, person: string): boolean =>
  putOn(moment, ['glove']).length > 0 && bareHands(bodyIn(moment.before, person));

function afterGloves(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.owner;
    const [item] = takenOff(moment, ['glove']);
    const next = item && nextHandAct(reading, moment.index, person);
    if (!next || next.cleans === person) return [];
    if (otherSideOf(moment, next) || freshGloveOnBareHand(next, person)) return [];
    return [{ step: moment.index, others: [next.index], params: { person, item } }];
  });
}

/** The next step in which the person's hands are cleaned or touch an item. */
const nextItem = (reading: Reading, from: number, person: string): Moment | undefined =>
  nextMoment(
    reading,
    from,
    (moment) => moment.cleans === person || (moment.touching.has(person) && moment.step.items.length > 0),
  );

function betweenItems(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.step.who;
    const [item] = takenOff(moment);
    if (!item || person !== moment.owner || glovePairs(reading, person) < 2) return [];
    if (takenOff(moment, ['glove']).length > 0) return [];
    const next = nextItem(reading, moment.index, person);
    if (!next || next.cleans === person || sameAct(moment, next) || freshGloveOnBareHand(next, person))
      return [];
    return [{ step: moment.index, others: [next.index], params: { person, item } }];
  });
}

/** Wearers always, others once the procedure takes them out of their own equipment. */
function atTheEnd(reading: Reading): readonly Found[] {
  return reading.procedure.people.flatMap(({ id: person, role }) => {
    const own = reading.moments.filter((moment) => moment.owner === person && takenOff(moment).length > 0);
    const last = reading.moments.findLast(
      (moment) => moment.touching.has(person) && moment.step.items.length > 0 && moment.cleans !== person,
    );
    if (!last || (role !== 'wearer' && own.length === 0)) return [];
    const cleaned = reading.moments.some(
      (moment) =>
        moment.index > last.index && moment.cleans === person && bareHands(bodyIn(moment.before, person)),
    );
    return cleaned ? [] : [{ step: last.index, params: { person } }];
  });
}

function aroundZip(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const [item] = moment.step.items;
    if (moment.step.action !== 'unfasten' || !item || itemKind(item).closure !== 'zip') return [];
    const { helper } = moment.step;
    const person = helper !== undefined && moment.touching.has(helper) ? helper : moment.step.who;
    const before = lastHandAct(reading, moment.index, person);
    const after = nextHandAct(reading, moment.index, person);
    const found = (when: string, other?: Moment): Found => ({
      step: moment.index,
      ...(other ? { others: [other.index] } : {}),
      params: { person, item, when },
    });
    return [
      ...(before?.cleans === person ? [] : [found('before', before)]),
      ...(after && after.cleans !== person && !sameAct(moment, after) ? [found('after', after)] : []),
    ];
  });
}

function notRubbedDry(reading: Reading): readonly Found[] {
  return reading.asked.flatMap((moment) => {
    const person = moment.step.who;
    const wets = moment.technique.moves.some((move) => move.do === 'wet');
    const sprays = moment.technique.moves.some((move) => move.do === 'clean' && move.sprayed);
    if (!wets || sprays) return [];
    const next = nextHandAct(reading, moment.index, person);
    const gloves =
      next && next.step.action === 'put-on' && next.step.items.some((item) => groupOf(item) === 'glove');
    return gloves ? [] : [{ step: moment.index, params: { person } }];
  });
}

export const HYGIENE: readonly Rule[] = [
  {
    id: 'practice.hygiene-after-each-glove-removal',
    kinds: DOFFING,
    looksAt:
      'After a glove comes off, the next thing that person’s hands do must be to be cleaned. Left and right of one pair count as one removal. It is asked of every ensemble, though the everyday sequence itself asks for hygiene only once hands are contaminated: there it is a published contrast, not a slip of the procedure.',
    find: afterGloves,
  },
  {
    id: 'practice.hygiene-between-items',
    kinds: DOFFING,
    looksAt:
      'After any other item comes off, its wearer’s hands must be cleaned before they meet the next item. Only for a person who starts in two pairs of gloves. Blower and hood of one powered respirator count as one item.',
    find: betweenItems,
  },
  {
    id: 'practice.final-hand-hygiene',
    kinds: DOFFING,
    looksAt:
      'After the last item that a wearer’s hands meet, bare hands must be cleaned. Asked of observer and assistant too once the procedure takes their own equipment off.',
    find: atTheEnd,
  },
  {
    id: 'practice.hygiene-around-zip',
    kinds: DOFFING,
    looksAt:
      'The hands that open a zip must have been cleaned just before, and be cleaned after it before they meet anything but that garment. The module itself goes from the zip to the garment; what the zip leaves on gloves is in the check’s routes.',
    find: aroundZip,
  },
  {
    id: 'practice.rub-until-dry',
    kinds: ['doffing', 'donning'],
    looksAt:
      'A way of cleaning hands that leaves them wet. Where a glove follows at once, the rule of the dry hand reports it instead.',
    find: notRubbedDry,
  },
];
