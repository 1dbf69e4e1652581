// V24 to V26: boot covers early or late, legs laid over one another, and the soles.
import { changed, without } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import {
  ANKLES,
  CLEAN_FLOOR,
  HANDS,
  INNER_GLOVES,
  paprGown,
  paprGownLate,
  paprSuitEarly,
  removal,
  TROUSERS,
} from '../subjects.ts';
import { both, type Claim, each, point, yesNo } from './claim.ts';

const early = removal(paprGown, 'boot-covers');
const late = removal(paprGownLate, 'boot-covers');
const suitEarly = removal(paprSuitEarly, 'boot-covers');
const shoes = paprGown.steps.find(({ action }) => action === 'wipe')?.id ?? '';
const noSoles = changed(paprGown, shoes, { technique: 'without-soles' });
const notWiped = without(paprGown, shoes);

export const FEET: readonly Claim[] = [
  {
    id: 'V24',
    claim:
      'Boot covers after the garment, with inner gloves only: boot to glove to scrubs and ankle, and leg to leg. With outer gloves and garment still on there is no path to scrubs.',
    sources: ['study.kwon-2017.named-failures', 'study.mumma-2019.above-average'],
    verdict: 'agrees in part',
    why: 'Leg to leg and hand to ankle come out as claimed. One path is left in the early order that the claim does not count: under a gown boot covers lie on the trouser leg, and brush it as they are pulled off. Worn over a suit they do not, and there is none.',
    points: [
      point('Late: trousers, by a leg laid over the other', '1', both(1), (agent) =>
        ask(paprGownLate, agent).least(TROUSERS, { with: `${late}:leg-on-leg` }),
      ),
      point('Late: inner gloves as the covers are off', '–', both(0), (agent) =>
        ask(paprGownLate, agent).least(INNER_GLOVES, { after: late }),
      ),
      point('Late: ankle, by a hand', '1', both(1), (agent) =>
        ask(paprGownLate, agent).least(ANKLES, { with: `${late}:ankle-touch` }),
      ),
      point('Early: trousers, by a leg laid over the other', '2 or more', both('none'), (agent) =>
        ask(paprGown, agent).least(TROUSERS, { with: `${early}:leg-on-leg` }),
      ),
      point('Early: trousers, by their own cover', '2 or more', both(1), (agent) =>
        ask(paprGown, agent).least(TROUSERS, { with: `${early}:brush` }),
      ),
      point(
        'Early, covers over a suit: trousers, by the boot-cover step',
        '2 or more',
        both('none'),
        (agent) => ask(paprSuitEarly, agent).least(TROUSERS, { with: suitEarly }),
      ),
    ],
  },
  {
    id: 'V25',
    claim: 'Legs crossed or a foot on the knee at the boot or shoe step: to the trousers.',
    sources: ['study.kwon-2017.named-failures', 'practice.legs-apart'],
    verdict: 'agrees',
    points: [
      point('Boot step, scrubs bare', '1', both(1), (agent) =>
        ask(paprGownLate, agent).least(TROUSERS, { with: `${late}:leg-on-leg` }),
      ),
      point('Shoe step, after walking on the doffing floor', '1', both(1), (agent) =>
        ask(paprGown, agent).least(TROUSERS, { with: `${shoes}:leg-on-leg` }),
      ),
    ],
  },
  {
    id: 'V26',
    claim:
      'Soles left out of the shoe wipe dirty the clean floor without any slip; the wipe goes to the inner glove, and a hand at the ankle to skin.',
    sources: ['practice.shoes-wiped-with-soles', 'practice.ankles-untouched'],
    verdict: 'agrees in part',
    why: 'The hand with the wipe does not count as contaminated by the wipe itself, only by touching the shoe, so that ankle and hand take one event more than the claim gives.',
    points: [
      point('Clean floor, soles wiped', '1', both(1), (agent) => ask(paprGown, agent).least(CLEAN_FLOOR)),
      point('Clean floor, soles left out', '0', both(0), (agent) => ask(noSoles, agent).least(CLEAN_FLOOR)),
      point('Clean floor, shoes not wiped', '0', both(0), (agent) => ask(notWiped, agent).least(CLEAN_FLOOR)),
      point('Inner glove, by the shoe', '0 to 1', each(1, 'none'), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: shoes, with: `${shoes}:wrong-grip` }),
      ),
      point('Ankle, by a hand', '1', each(2, 1), (agent) =>
        ask(paprGown, agent).least(ANKLES, { with: `${shoes}:ankle-touch` }),
      ),
      point(
        'Resistant agent: are inner gloves contaminated before the shoes',
        '–',
        each('no', 'yes'),
        (agent) =>
          yesNo(
            ask(paprGown, agent).least(INNER_GLOVES, {
              after: paprGown.steps[paprGown.steps.findIndex(({ id }) => id === shoes) - 1]?.id ?? '',
            }) === 0,
          ),
      ),
      point('Hands, from the shoe through the glove', '–', each(3, 'none'), (agent) =>
        ask(paprGown, agent).least(HANDS, { with: `${shoes}:wrong-grip` }),
      ),
    ],
  },
];
