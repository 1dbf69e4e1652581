// V29 to V31 and V38: wrist, bin, tap, and spraying.
import { changed } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import {
  cleaningAfter,
  INNER_GLOVES,
  paprGown,
  poster,
  removal,
  SCRUBS,
  withFixture,
  WRISTS,
} from '../subjects.ts';
import { both, type Claim, each, point } from './claim.ts';

const gap = {
  ...paprGown,
  start: [
    ...paprGown.start,
    { surface: 'wearer.wrist.left', state: 'maybe' as const, reason: 'A gap between glove and sleeve.' },
  ],
};

const apron = removal(paprGown, 'apron');
const outer = removal(paprGown, 'outer-gloves');
const gown = removal(paprGown, 'gown');
const lidByHand = withFixture(paprGown, 'bin', { worked: 'hand' });

const wash = poster.steps.at(-1)?.id ?? '';
const tapByHand = withFixture(poster, 'tap', { worked: 'hand' });
const LEVER = 'start:dirty-lever:room.corridor-tap.handle';

const rubInner = cleaningAfter(paprGown, outer);
const sprayed = changed(paprGown, rubInner, { technique: 'spray-hands' });
const credited = { ...sprayed, policy: { ...sprayed.policy, creditSpraying: true } };

export const ROOM: readonly Claim[] = [
  {
    id: 'V29',
    claim: 'A gap between glove and sleeve bares the wrist during care and doffing.',
    sources: ['study.enhanced-2021.routes', 'practice.donning.no-wrist-gap'],
    verdict: 'differs',
    why: 'The model takes gloves and sleeves to overlap, so that no gap is assumed: a wrist is as far away as a hand. A unit whose equipment leaves one states it in the file as the start of the wrist, and the answer is then one event, without a slip at doffing.',
    points: [
      point('Wrists, nothing stated', '1', each(2, 1), (agent) => ask(paprGown, agent).least(WRISTS)),
      point('Wrist, a possible gap stated in the file', '1', both(1), (agent) =>
        ask(gap, agent).least('wearer.wrist.left', { with: 'start:stated-maybe:wearer.wrist.left' }),
      ),
    ],
  },
  {
    id: 'V30',
    claim:
      'A lid touched by hand or a bin too full: to gloves or scrubs; a gown that brushes scrubs at the bin.',
    sources: ['study.suen-2018.fixtures', 'study.kwon-2017.named-failures', 'practice.bin-not-over-full'],
    verdict: 'agrees in part',
    why: 'A lid worked by a pedal is not taken to be contaminated, so that touching it counts only once something has soiled it: two events. An over-full bin, or a lid worked by hand, is as claimed.',
    points: [
      point('Pedal bin: inner glove at the gown, bin too full', '1', each(1, 'none'), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: gown, with: `${gown}:full-bin` }),
      ),
      point('Pedal bin: inner glove at the outer gloves, lid touched', '1', both(2), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: outer, with: `${outer}:touch-fixture` }),
      ),
      point('Lid worked by hand: lid after the apron', '–', each(1, 0), (agent) =>
        ask(lidByHand, agent).least('room.waste-bin.lid', { after: apron }),
      ),
      point('Lid worked by hand: inner glove after the outer gloves', '1', both(0), (agent) =>
        ask(lidByHand, agent).least(INNER_GLOVES, { after: outer }),
      ),
      point('Scrubs, by the gown as it comes off and goes to the bin', '1', each(1, 'none'), (agent) =>
        ask(paprGown, agent).least(SCRUBS, { with: `${gown}:brush` }),
      ),
    ],
  },
  {
    id: 'V31',
    claim: 'A tap touched by hand before the washing is done: from the tap to the washed hand.',
    sources: ['study.suen-2018.fixtures'],
    verdict: 'agrees',
    points: [
      point('Washed hand, tap worked by the elbow', '–', both(2), (agent) =>
        ask(poster, agent).least('wearer.hand.left', { after: wash }),
      ),
      point('Washed hand, tap worked by hand', '1', both(1), (agent) =>
        ask(tapByHand, agent).least('wearer.hand.left', { after: wash, with: LEVER }),
      ),
    ],
  },
  {
    id: 'V38',
    claim: 'Spraying is not credited as cleaning unless the user says so.',
    sources: ['practice.spraying-not-credited', 'efficacy.spraying'],
    verdict: 'agrees',
    points: [
      point('Inner glove, rubbed', '–', each(2, 1), (agent) =>
        ask(paprGown, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
      point('Inner glove, sprayed: as if nothing was done', '1', both(1), (agent) =>
        ask(sprayed, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
      point('Inner glove, sprayed, unit credits it', '–', each(2, 1), (agent) =>
        ask(credited, agent).least(INNER_GLOVES, { after: rubInner }),
      ),
    ],
  },
];
