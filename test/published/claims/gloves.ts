// V6 to V8 and V15 to V18: what gets past the outer glove onto the inner one, what hygiene and fresh gloves are worth, and
// a tear that nobody saw.
import { inserted, step, without } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import {
  chlorineOnGloves,
  cleaningAfter,
  HANDS,
  INNER_GLOVES,
  n95Gown,
  paprGown,
  removal,
  SCRUBS,
} from '../subjects.ts';
import { both, type Claim, each, point, yesNo } from './claim.ts';

const outer = removal(paprGown, 'outer-gloves');
const rubInner = cleaningAfter(paprGown, outer);
const chlorine = chlorineOnGloves(paprGown);
const gown = removal(paprGown, 'gown');
/** Just before the inner gloves come off. */
const last = cleaningAfter(paprGown, paprGown.steps.find(({ action }) => action === 'wipe')?.id ?? '');

const n95Outer = removal(n95Gown, 'outer-gloves');
const rubOuter = n95Gown.steps[n95Gown.steps.findIndex(({ id }) => id === n95Outer) - 2]?.id ?? '';
const n95RubInner = cleaningAfter(n95Gown, n95Outer);
const slid = `${n95Outer}:touch-beneath`;
const notRubbed = without(n95Gown, n95RubInner);
const soiledOuter = without(n95Gown, rubOuter);
const soiledNotRubbed = without(n95Gown, rubOuter, n95RubInner);
const n95GownStep = removal(n95Gown, 'gown');
const change = n95Gown.steps.findIndex(({ action }) => action === 'put-on');
const changeSteps = n95Gown.steps.slice(change - 2, change + 1).map(({ id }) => id);
const unchanged = without(n95Gown, ...changeSteps);
const gripGown = `${n95GownStep}:wrong-grip`;

const look = paprGown.steps.find(({ action, items }) => action === 'inspect' && items.length > 0)?.id ?? '';
const unseen = without(paprGown, look);
const TORN = 'start:worn-through:wearer.inner-gloves';

export const GLOVES: readonly Claim[] = [
  {
    id: 'V6',
    claim:
      'Two pairs, alcohol rub, an agent that it does not kill: taking off the outer gloves can leave it on the inner ones, and rubbing them does not take it away.',
    sources: ['study.casanova-2016.alcohol.inner-glove-dominant', 'study.casanova-2018.ms2.inner-gloves'],
    verdict: 'agrees',
    points: [
      point('Inner gloves as the outer ones come off', '1', both(1), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: outer }),
      ),
      point('Inner gloves after the rub that follows', '1 (resistant agent)', each(2, 1), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
      point('Inner gloves as the last rub before their removal ends', '–', each(2, 0), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: last }),
      ),
    ],
  },
  {
    id: 'V7',
    claim:
      'The same with chlorine on the gloves, or with an enveloped agent: the rub or wash closes the path.',
    sources: ['study.casanova-2016.chlorine.inner-gloves', 'study.casanova-2018.phi6.inner-gloves'],
    verdict: 'agrees',
    points: [
      point('Inner gloves after alcohol rub', 'closed (enveloped)', each(2, 1), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
      point('Inner gloves after chlorine: the cleaning has to fail as well', 'closed', both(2), (agent) =>
        ask(chlorine, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
    ],
  },
  {
    id: 'V8',
    claim:
      'Chlorine on gloves and alcohol on hands: paths to hands and scrubs that do not pass the gloves survive.',
    sources: ['study.casanova-2016.chlorine.hands', 'study.casanova-2016.chlorine.scrubs'],
    verdict: 'agrees',
    points: [
      point('Scrubs, by the gown that brushes them as it comes off', '1 or more', both(1), (agent) =>
        ask(chlorine, agent).least(SCRUBS, { with: `${gown}:brush` }),
      ),
      point('Hands, by a tear in the inner glove', '1 or more', both(2), (agent) =>
        ask(chlorine, agent).least(HANDS, { with: TORN }),
      ),
    ],
  },
  {
    id: 'V15',
    claim:
      'At outer-glove removal a finger or an inner glove meets the outside of the outer one: the inner glove is contaminated, and goes on to shield, hood, zip and scrubs if it is not cleaned first.',
    sources: ['study.kwon-2017.named-failures', 'practice.second-glove-from-inside'],
    verdict: 'agrees in part',
    why: 'The encoded order rubs the outer gloves just before they come off, so against an agent that the rub kills one more failure is needed; without that rub the sizes are those of the claim. To scrubs each further rub counts as one more.',
    points: [
      point('Inner glove, by a finger that slid onto it', '1', each(2, 1), (agent) =>
        ask(n95Gown, agent).least(INNER_GLOVES, { after: n95Outer, with: slid }),
      ),
      point('The same without the rub of the outer gloves', '1', both(1), (agent) =>
        ask(soiledOuter, agent).least(INNER_GLOVES, { after: n95Outer, with: slid }),
      ),
      point('And after the rub of the inner gloves', '2', each(2, 1), (agent) =>
        ask(soiledOuter, agent).least(INNER_GLOVES, { after: n95RubInner, with: slid }),
      ),
      point('Scrubs, with neither rub', '–', each(3, 1), (agent) =>
        ask(soiledNotRubbed, agent).least(SCRUBS, { with: slid }),
      ),
    ],
  },
  {
    id: 'V16',
    claim:
      'Hygiene of the inner gloves left out between outer-glove removal and face shield: inner glove, strap, hood, then neck and hair.',
    sources: ['practice.hygiene-between-items', 'practice.hygiene-after-each-glove-removal'],
    verdict: 'agrees in part',
    why: 'Leaving the hygiene out does make every route through that glove shorter, but here the strap of the shield runs over the hood, whose outside is contaminated anyway, so that bare skin is one slip further than the claim counts: a hand that goes to the face, or a later rub that fails.',
    points: [
      point('Inner glove as it takes the strap, hygiene written', '2', each(3, 1), (agent) =>
        ask(n95Gown, agent).least(INNER_GLOVES, { after: n95RubInner, with: slid }),
      ),
      point('Inner glove as it takes the strap, hygiene left out', '1', each(2, 1), (agent) =>
        ask(notRubbed, agent).least(INNER_GLOVES, { after: n95Outer, with: slid }),
      ),
      point('Face, hygiene written', '2', each(3, 2), (agent) =>
        ask(soiledOuter, agent).least('wearer.face', { with: slid }),
      ),
      point('Face, hygiene left out', '1', each(2, 2), (agent) =>
        ask(soiledNotRubbed, agent).least('wearer.face', { with: slid }),
      ),
    ],
  },
  {
    id: 'V17',
    claim:
      'Respirator route without the change of inner gloves: the glove that took off the gown takes the straps, and one failed hygiene is enough to the face; with the change a contaminated fresh glove is needed too.',
    sources: ['practice.glove-change-before-respirator'],
    verdict: 'agrees in part',
    why: 'The change adds one failure, as the claim says. Ours is one higher on both sides: the gown is taken by its inside and its ties, so that a slip or a soiled tie has to bring the glove in touch with its outside first. The change has a price that the claim does not name: a glove snapped then reaches eyes that the shield no longer covers.',
    points: [
      point('Face, by a wrong grip on the gown, with the change', '2', each(3, 2), (agent) =>
        ask(n95Gown, agent).least('wearer.face', { with: gripGown }),
      ),
      point('Face, by a wrong grip on the gown, without the change', '1', each(2, 1), (agent) =>
        ask(unchanged, agent).least('wearer.face', { with: gripGown }),
      ),
      point('Mouth, with the change', '2', each(4, 3), (agent) =>
        ask(n95Gown, agent).least('wearer.mouth', { with: gripGown }),
      ),
      point('Mouth, without the change', '1', each(3, 2), (agent) =>
        ask(unchanged, agent).least('wearer.mouth', { with: gripGown }),
      ),
    ],
  },
  {
    id: 'V18',
    claim:
      'A tear in the inner glove that the inspection misses: through it at every later contact. Inspection, and a fresh glove when it finds one, closes the path.',
    sources: ['glove.perforated-in-use', 'practice.inspect-inner-gloves'],
    verdict: 'agrees',
    points: [
      point('Hands, tear and missed inspection', '2', both(2), (agent) =>
        ask(paprGown, agent).least(HANDS, { with: `${look}:missed-tear:inner-gloves` }),
      ),
      point('Hands, tear, inspection left out', '1', both(1), (agent) =>
        ask(unseen, agent).least(HANDS, { with: TORN }),
      ),
      point('The tear alone, inspection written, reaches a hand', 'no', both('no'), (agent) =>
        yesNo(HANDS.some((hand) => ask(paprGown, agent).reaches(hand, TORN))),
      ),
      point('An inspection after the gown only comes too late: hands', '–', both(1), (agent) =>
        ask(
          inserted(
            unseen,
            cleaningAfter(unseen, gown),
            step('late-look', 'inspect', { items: ['inner-gloves'] }),
          ),
          agent,
        ).least(HANDS, { with: TORN }),
      ),
    ],
  },
];
