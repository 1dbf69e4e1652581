// V9, V14 and V32: hood before or after the garment, the apron over the head, and the hand that goes to the brow.
import { changed, inserted, moved, step, without } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import { cleaningAfter, MUCOSA, n95Gown, paprGown, poster, removal, rub, SCRUBS } from '../subjects.ts';
import { both, type Claim, each, point } from './claim.ts';

const hood = removal(paprGown, 'powered-hood');
const gown = removal(paprGown, 'gown');
const rubGown = cleaningAfter(paprGown, gown);
const rubHood = cleaningAfter(paprGown, hood);
/** The gown comes off as soon as the belt is, with a rub before it, and the hood after it. */
export const hoodLast = inserted(moved(paprGown, hood, gown, rubGown), gown, rub('rub-belt'));
const swing = `${hood}:swing`;

const apron = removal(poster, 'apron');
const overHead = changed(poster, apron, { technique: 'over-head' });
const STRAP = 'start:soiled-strap:wearer.apron.neck-strap';

const brow = step('brow', 'touch', { place: 'face' });
const rubbedBrow = inserted(paprGown, cleaningAfter(paprGown, rubHood, 'assistant'), brow);
const unrubbedBrow = without(rubbedBrow, rubHood);
const n95Hood = removal(n95Gown, 'surgical-hood');
const n95 = removal(n95Gown, 'n95-respirator');

export const HEAD: readonly Claim[] = [
  {
    id: 'V9',
    claim:
      'A powered hood taken off after the garment meets scrubs by one brush. Taken off before it, the torso is still covered and only neck and collar are one brush away.',
    sources: ['study.mumma-2018.hood-route', 'study.casanova-2018.phi6.scrubs'],
    verdict: 'agrees in part',
    why: 'Against an agent that alcohol does not kill, scrubs are open in the order with the hood last whether it swings or not: the gloves that unclasped the belt take the gown. That the unit of the study took the hood off over bare scrubs is an inference; its order was not read.',
    points: [
      point('Hood before gown: scrubs, by the hood swinging', 'none', both('none'), (agent) =>
        ask(paprGown, agent).least(SCRUBS, { with: swing }),
      ),
      point('Hood before gown: neck, by its edge', '1', both(1), (agent) =>
        ask(paprGown, agent).least('wearer.neck', { with: `${hood}:brush` }),
      ),
      point('Hood after gown: front of scrubs, by the hood swinging', '1', each(1, 'none'), (agent) =>
        ask(hoodLast, agent).least('wearer.scrubs.front', { with: swing }),
      ),
      point('Hood after gown: front of scrubs, by anything', '1', each(1, 0), (agent) =>
        ask(hoodLast, agent).least('wearer.scrubs.front'),
      ),
    ],
  },
  {
    id: 'V14',
    claim:
      'An apron lifted over the head instead of torn at the neck: its front meets shield, hood, hair and neck.',
    sources: ['practice.apron-torn-at-neck'],
    verdict: 'agrees',
    points: [
      point('Poster set (bare hair and neck), torn: neck, by the apron step', 'none', both('none'), (agent) =>
        ask(poster, agent).least('wearer.neck', { with: apron }),
      ),
      point('Over the head: neck, by its front', '1', both(1), (agent) =>
        ask(overHead, agent).least('wearer.neck', { with: `${apron}:brush` }),
      ),
      point('Over the head: neck and hair, by a soiled strap and nobody’s slip', '0 to 1', both(1), (agent) =>
        ask(overHead, agent).least(['wearer.neck', 'wearer.scalp'], { with: STRAP }),
      ),
    ],
  },
  {
    id: 'V32',
    claim:
      'Wiping the brow or pushing hair back once hood or helmet is off: inner glove to forehead, eyes, nose, mouth. Only the hygiene before it stands between.',
    sources: ['practice.no-face-touch-after-hood', 'practice.warn-before-headgear'],
    verdict: 'agrees',
    points: [
      point('Powered hood, in the very step: eyes, nose, mouth', '1', both(1), (agent) =>
        ask(paprGown, agent).least(MUCOSA, { with: `${hood}:reach-to-face` }),
      ),
      point(
        'After the rub that follows: a hand that goes to the face',
        '1 if the rub failed',
        each(1, 0),
        (agent) => ask(rubbedBrow, agent).least('wearer.face'),
      ),
      point('The same with that rub left out', '0', both(0), (agent) =>
        ask(unrubbedBrow, agent).least('wearer.face'),
      ),
      point('Respirator set, surgical hood: face', '–', both(2), (agent) =>
        ask(n95Gown, agent).least('wearer.face', { with: `${n95Hood}:reach-to-face` }),
      ),
      point('Respirator set, as the respirator comes off: eyes, nose, mouth', '–', both(2), (agent) =>
        ask(n95Gown, agent).least(MUCOSA, { with: `${n95}:reach-to-face` }),
      ),
    ],
  },
];
