// V10 to V13 and V21: the assistant's gloves, the assistant's feet, one person in two roles, and the suit rolled by its
// outside. The national orders give the assistant no task on the clean side after the hood, so one is added where a claim
// speaks of 'the next thing touched': a hand that steadies the wearer, or one laid on the clean chair.
import { inserted, person, step, without } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import {
  ASSISTANT_GLOVE,
  CLEAN_FLOOR,
  cleaningAfter,
  combined,
  n95Gown,
  paprGown,
  paprSuit,
  removal,
  SHIRT,
  TROUSERS,
} from '../subjects.ts';
import { both, type Claim, each, point } from './claim.ts';

const steady = step('steady', 'touch', { who: 'assistant', of: 'wearer', place: 'back' });
const lean = step('lean', 'touch', { who: 'assistant', fixture: 'clean-chair' });

const hood = removal(paprGown, 'powered-hood');
const rubAfterHood = cleaningAfter(paprGown, hood, 'assistant');
const afterGown = cleaningAfter(paprGown, removal(paprGown, 'gown'));
const steadied = inserted(paprGown, afterGown, steady);
const leaned = inserted(paprGown, afterGown, lean);

const apron = removal(n95Gown, 'apron');
const rubAfterApron = cleaningAfter(n95Gown, apron, 'assistant');
const steadiedN95 = inserted(n95Gown, cleaningAfter(n95Gown, removal(n95Gown, 'gown')), steady);
const TIE = 'start:soiled-strap:wearer.apron.waist-tie';

const paprApron = removal(paprGown, 'apron');
const walkedPast = inserted(
  {
    ...paprGown,
    people: [...paprGown.people, person({ id: 'passer-by', role: 'observer', starts: 'clean-side' })],
  },
  paprGown.steps.at(-1)?.id ?? '',
  step('passes', 'move', { who: 'passer-by', zone: 'clean-side' }),
);

const alone = combined(paprGown);
const OBSERVER = ['observer.hand.left', 'observer.hand.right', 'observer.scrubs.front'];

const suit = removal(paprSuit, 'coverall');
const zip = paprSuit.steps.findIndex(({ action, items }) => action === 'unfasten' && items[0] === 'coverall');
const zipHelped = {
  ...paprSuit,
  steps: paprSuit.steps.map((one, at) => (at === zip ? { ...one, helper: 'assistant' } : one)),
};

export const HELPERS: readonly Claim[] = [
  {
    id: 'V10',
    claim:
      'At the hood the assistant holds its outside: their glove is contaminated by design until they clean it. Without that hygiene it goes on to the next thing they touch.',
    sources: ['study.gurses-2019.apron-strap', 'practice.helper-hygiene-after-each-assist'],
    verdict: 'agrees',
    points: [
      point('Assistant’s glove as the hood is off', '0', both(0), (agent) =>
        ask(paprGown, agent).least(ASSISTANT_GLOVE, { after: hood }),
      ),
      point('And after their hygiene', '1', each(1, 0), (agent) =>
        ask(paprGown, agent).least(ASSISTANT_GLOVE, { after: rubAfterHood }),
      ),
      point('Clean chair that they then lean on, hygiene written', '1', each(1, 0), (agent) =>
        ask(leaned, agent).least('room.clean-chair.seat'),
      ),
      point('Clean chair, hygiene left out', '0 (the omission is the one slip)', both(0), (agent) =>
        ask(without(leaned, rubAfterHood), agent).least('room.clean-chair.seat'),
      ),
      point(
        'Back of the scrubs that they steady, hygiene left out',
        '0 (the omission is the one slip)',
        both(0),
        (agent) => ask(without(steadied, rubAfterHood), agent).least('wearer.scrubs.back'),
      ),
    ],
  },
  {
    id: 'V11',
    claim:
      'The assistant unties the apron and does not clean their hands: the next help takes it to the wearer’s clean side.',
    sources: ['study.gurses-2019.apron-strap'],
    verdict: 'agrees',
    points: [
      point('Assistant’s glove, by a soiled tie', '1', both(1), (agent) =>
        ask(n95Gown, agent).least(ASSISTANT_GLOVE, { after: apron, with: TIE }),
      ),
      point('Back of the scrubs that they later steady, hygiene left out', '1', both(1), (agent) =>
        ask(without(steadiedN95, rubAfterApron), agent).least('wearer.scrubs.back', { with: TIE }),
      ),
      point('The same, hygiene written', '–', each(2, 1), (agent) =>
        ask(steadiedN95, agent).least('wearer.scrubs.back', { with: TIE }),
      ),
    ],
  },
  {
    id: 'V12',
    claim:
      'The assistant steps over the line and back: the floor of the clean side is contaminated, and then whoever walks there.',
    sources: ['study.gurses-2019.crossing'],
    verdict: 'agrees',
    points: [
      point('Floor of the clean side', '1', both(1), (agent) =>
        ask(paprGown, agent).least(CLEAN_FLOOR, { with: `${paprApron}:cross-line:helper` }),
      ),
      point('Soles of somebody who only walks there', '1', both(1), (agent) =>
        ask(walkedPast, agent).least('passer-by.shoes.left.sole', { with: `${paprApron}:cross-line:helper` }),
      ),
    ],
  },
  {
    id: 'V13',
    claim:
      'One person as observer and assistant: combinations that took two people take one, and the observer is reached by one slip.',
    sources: ['practice.observer-and-assistant-apart', 'practice.observer-hands-off'],
    verdict: 'agrees in part',
    why: 'The observer’s gloves are then contaminated by design and the gown by one bump, and skin, out of reach before, is two events away through two pairs of gloves. That the same person then has to notice the slip that they make is not in the model: an observer’s attention is a chance that the unit states, and nobody’s in particular.',
    points: [
      point('Two people: observer’s skin and scrubs', 'none', both('none'), (agent) =>
        ask(paprGown, agent).least(OBSERVER),
      ),
      point('One person: observer’s outer gloves as the hood is off', '–', both(0), (agent) =>
        ask(alone, agent).least('observer.outer-gloves.right.outside', { after: hood }),
      ),
      point('One person: front of the observer’s gown', '1', both(1), (agent) =>
        ask(alone, agent).least('observer.gown.front', { after: hood }),
      ),
      point('One person: observer’s skin and scrubs', '1', both(2), (agent) =>
        ask(alone, agent).least(OBSERVER),
      ),
    ],
  },
  {
    id: 'V21',
    claim:
      'The assistant rolls the coverall down by its outside: their gloves are contaminated by design, the wearer’s scrubs only by a slip.',
    sources: ['practice.garment-inside-out', 'study.kwon-2017.helper-deviations'],
    verdict: 'agrees in part',
    why: 'Trousers are open without a slip, not through the assistant but through the wearer’s zip hand: no hygiene was found between the zip and freeing the legs. When the assistant works the zip, one event is needed as the claim says; a resistant agent is on the wearer’s gloves anyway.',
    points: [
      point('Assistant’s gloves as the suit is off', '0', both(0), (agent) =>
        ask(paprSuit, agent).least(ASSISTANT_GLOVE, { after: suit }),
      ),
      point('Shirt, by the assistant’s hand', '1', both(1), (agent) =>
        ask(paprSuit, agent).least(SHIRT, { with: `${suit}:wrong-grip:helper` }),
      ),
      point('Trousers, wearer works the zip', '1', both(0), (agent) => ask(paprSuit, agent).least(TROUSERS)),
      point('Trousers, assistant works the zip', '1', each(1, 0), (agent) =>
        ask(zipHelped, agent).least(TROUSERS),
      ),
    ],
  },
];
