// V20, V22, V23, V27 and V28: the coverall, its zip, its seat on the clean chair, and the shirt beneath it.
import { changed, inserted, moved, step, withPerson } from '../../support/procedure.ts';
import { ask, stepOf } from '../ask.ts';
import { cleaningAfter, INNER_GLOVES, paprSuit, paprSuitEarly, removal, rub, whoSuit } from '../subjects.ts';
import { both, type Claim, each, point, yesNo } from './claim.ts';

const rolled = removal(whoSuit, 'coverall');
const fromOutside = inserted(
  changed(whoSuit, rolled, { technique: 'front-pull', items: ['coverall'] }),
  rolled,
  step('outer-off', 'remove', { items: ['outer-gloves'] }),
  rub('rub-inner'),
);

const zip = stepOf(paprSuit, 'unfasten', 'coverall').id;
const suit = removal(paprSuit, 'coverall');
const rubSuit = cleaningAfter(paprSuit, suit);
const beforeZip = paprSuit.steps[paprSuit.steps.findIndex(({ id }) => id === zip) - 1]?.id ?? '';
const twoHands = changed(paprSuit, zip, { technique: 'zip-two-hands' });
const [LEFT = '', RIGHT = ''] = INNER_GLOVES;
const helpedZip = changed(paprSuit, zip, { helper: 'assistant' });
const SEAT = 'start:soiled-back:wearer.coverall.seat';

const covers = removal(paprSuit, 'boot-covers');
const rubCovers = cleaningAfter(paprSuit, covers);
const shoeCovers = changed(
  withPerson(paprSuit, 'wearer', {
    wears: ['inner-gloves', 'coverall', 'shoe-covers', 'blower', 'powered-hood', 'apron', 'outer-gloves'],
  }),
  covers,
  { items: ['shoe-covers'] },
);
const untie = step('untie', 'unfasten', { items: ['shoe-covers'] });
/** Strings and shoe covers after the zip, the rest of the order as it is. */
const untiedLate = inserted(moved(shoeCovers, suit, covers, rubCovers), covers, untie);
/** Strings and shoe covers before the outer gloves. */
const untiedEarly = inserted(
  inserted(
    moved(shoeCovers, removal(paprSuit, 'outer-gloves'), covers, rubCovers),
    covers,
    step('sit-covers', 'sit', { fixture: 'doffing-chair' }),
    untie,
  ),
  removal(paprSuit, 'outer-gloves'),
  step('rise', 'stand'),
);

export const SUIT: readonly Claim[] = [
  {
    id: 'V20',
    claim:
      'The coverall rolled down from its inside keeps inner gloves off its outside. Held from the outside, or where the edge curls back, they meet it.',
    sources: ['study.enhanced-2021.routes', 'practice.garment-inside-out'],
    verdict: 'agrees',
    points: [
      point('International order: inner gloves, nobody slips', 'not contaminated', both('no'), (agent) =>
        yesNo(ask(whoSuit, agent).least(INNER_GLOVES, { after: rolled }) === 0),
      ),
      point('Inner gloves, by an edge that curls', '1', both(1), (agent) =>
        ask(whoSuit, agent).least(INNER_GLOVES, { after: rolled, with: `${rolled}:edge-curls` }),
      ),
      point('Inner gloves, by holding the outside', '1', both(1), (agent) =>
        ask(whoSuit, agent).least(INNER_GLOVES, { after: rolled, with: `${rolled}:wrong-grip` }),
      ),
      point('Rolled by its outside as a technique', '–', both(0), (agent) =>
        ask(fromOutside, agent).least(INNER_GLOVES, { after: rolled }),
      ),
    ],
  },
  {
    id: 'V22',
    claim:
      'The zip: the hand that works it is contaminated by design until it is next cleaned, and a second hand on the front is too.',
    sources: ['practice.zip-one-hand', 'practice.hygiene-around-zip'],
    verdict: 'agrees',
    points: [
      point('Working hand before the zip, flap opened and gloves cleaned', '–', each(1, 0), (agent) =>
        ask(paprSuit, agent).least(RIGHT, { after: beforeZip }),
      ),
      point('Working hand after the zip', '0', both(0), (agent) =>
        ask(paprSuit, agent).least(RIGHT, { after: zip }),
      ),
      point('Other hand, one hand used', '1', each(1, 0), (agent) =>
        ask(paprSuit, agent).least(LEFT, { after: zip }),
      ),
      point('Other hand, two hands used', '0', both(0), (agent) =>
        ask(twoHands, agent).least(LEFT, { after: zip }),
      ),
      point('Working hand after the next hygiene', '1', each(1, 0), (agent) =>
        ask(paprSuit, agent).least(RIGHT, { after: rubSuit }),
      ),
    ],
  },
  {
    id: 'V23',
    claim:
      'The wearer sits on the clean chair with the coverall still on the legs: its seat goes to the chair, and to the next who sits there.',
    sources: ['study.suen-2018.fixtures', 'practice.clean-and-dirty-chair-apart'],
    verdict: 'agrees',
    points: [
      point('Clean chair, as written', '0 to 1', both(0), (agent) =>
        ask(paprSuit, agent).least('room.clean-chair.seat'),
      ),
      point('Clean chair, assistant works the zip', '0 to 1', each(1, 0), (agent) =>
        ask(helpedZip, agent).least('room.clean-chair.seat'),
      ),
      point('Clean chair, by the soiled seat of the suit', '1', each(1, 'none'), (agent) =>
        ask(helpedZip, agent).least('room.clean-chair.seat', { with: SEAT }),
      ),
      point('Seat of the scrubs, from there', '1', each(1, 'none'), (agent) =>
        ask(helpedZip, agent).least('wearer.scrubs.seat', { with: SEAT }),
      ),
      point('Clean chair, suit taken off standing', '–', both(0), (agent) =>
        ask(paprSuitEarly, agent).least('room.clean-chair.seat'),
      ),
    ],
  },
  {
    id: 'V27',
    claim:
      'Shoe-cover strings untied after the zip is open: bending brings the edge of the coverall to shirt and inner gloves. Untied before it, the path is gone.',
    sources: ['study.enhanced-2021.routes', 'practice.shoe-cover-strings-before-zip'],
    verdict: 'agrees in part',
    why: 'The path to the shirt is as claimed, and gone with the other order. To the inner gloves it adds nothing here: they hold the strings, which faced the patient, and are contaminated by that already.',
    points: [
      point('Strings after the zip: shirt, by the edge', '1', both(1), (agent) =>
        ask(untiedLate, agent).least('wearer.scrubs.front', { with: 'untie:edge-curls' }),
      ),
      point('Strings after the zip: inner gloves, by anything', '1', both(0), (agent) =>
        ask(untiedLate, agent).least(INNER_GLOVES, { after: 'untie' }),
      ),
      point('Strings before the zip: is there such a slip at all', 'no', both('no'), (agent) =>
        yesNo(
          ask(untiedEarly, agent).analysis.compiled.plan.events.some(({ key }) => key === 'untie:edge-curls'),
        ),
      ),
    ],
  },
  {
    id: 'V28',
    claim:
      'A shirt that is not tucked in meets the coverall as it comes off: a slip at donning that shows at doffing.',
    sources: ['study.enhanced-2021.routes', 'practice.shirt-tucked'],
    verdict: 'agrees in part',
    why: 'The hem is reached by one brush, but for every shirt: the model has no tucked and untucked one, takes the hem to lie within reach in all, and so cannot show what tucking in is worth. Whether a procedure asks for it is a matter of reading it aloud.',
    points: [
      point('Hem of the shirt', '1', both(1), (agent) =>
        ask(paprSuit, agent).least('wearer.scrubs.hem', { with: suit }),
      ),
      point('Hem of the shirt, assistant works the zip', '1', both(1), (agent) =>
        ask(helpedZip, agent).least('wearer.scrubs.hem'),
      ),
    ],
  },
];
