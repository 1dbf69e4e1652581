// V1 to V5: the everyday pair of orders, and one pair of gloves against two in the same order.
import { changed, inserted, step, withPerson } from '../../support/procedure.ts';
import { ask } from '../ask.ts';
import { everyday1, everyday2, HANDS, MUCOSA, removal, rub, SCRUBS } from '../subjects.ts';
import { both, type Claim, each, point, yesNo } from './claim.ts';

const gloves = removal(everyday1, 'gloves');
const goggles = removal(everyday1, 'goggles');
const gown = removal(everyday1, 'gown');
const mask = removal(everyday1, 'n95-respirator');
const together = removal(everyday2, 'gown');
const grip = `${gown}:wrong-grip`;
const TIE = 'start:soiled-strap:wearer.gown.neck-tie';
const HAND = 'wearer.hand.right';
const leave = everyday1.steps.find(({ action }) => action === 'move')?.id ?? '';

const rubbed = inserted(
  inserted(inserted(everyday1, goggles, rub('rub-gloves')), gown, rub('rub-goggles')),
  leave,
  rub('rub-gown'),
);
const onePair = inserted(everyday1, goggles, rub('rub-gloves'));
const twoPairs = inserted(
  inserted(
    changed(
      withPerson(everyday1, 'wearer', {
        wears: ['inner-gloves', 'gown', 'n95-respirator', 'goggles', 'outer-gloves'],
      }),
      gloves,
      { items: ['outer-gloves'] },
    ),
    goggles,
    rub('rub-gloves'),
  ),
  everyday1.steps.at(-1)?.id ?? '',
  step('inner-off', 'remove', { items: ['inner-gloves'] }),
);

/** Events that alone reach a surface, worn-through gloves by whichever pair is outermost. */
const lone = (procedure: typeof onePair, agent: 'enveloped' | 'non-enveloped', surface: string): string =>
  [...ask(procedure, agent).alone(surface)]
    .map((key) => key.replace('wearer.outer-gloves', 'wearer.gloves'))
    .sort()
    .join(' ');
const sameAlone = (surfaces: readonly string[]) => (agent: 'enveloped' | 'non-enveloped') =>
  yesNo(surfaces.every((surface) => lone(onePair, agent, surface) === lone(twoPairs, agent, surface)));

export const EVERYDAY: readonly Claim[] = [
  {
    id: 'V1',
    claim:
      'Gloves first, then the gown: a bare hand that reaches for the gown meets its outside, and takes it by strap and mask to the face; nothing asks for hygiene in between.',
    sources: ['study.okamoto-2019.hands.gloves-before-gown', 'study.kwon-2017.named-failures'],
    verdict: 'agrees',
    points: [
      point('Everyday example 1: bare hand, by a wrong grip on the gown', '1', both(1), (agent) =>
        ask(everyday1, agent).least(HAND, { with: grip }),
      ),
      point(
        'The same, by a soiled tie and nobody’s slip',
        '1, or 0 if ties count as contaminated',
        both(1),
        (agent) => ask(everyday1, agent).least(HAND, { with: TIE }),
      ),
      point('On to the skin of the face, by the strap of the mask', '1', both(1), (agent) =>
        ask(everyday1, agent).least('wearer.face', { with: grip }),
      ),
      point('On to eyes, nose or mouth', '–', both(2), (agent) =>
        ask(everyday1, agent).least(MUCOSA, { with: grip }),
      ),
    ],
  },
  {
    id: 'V2',
    claim:
      'Gown and gloves in one movement: the bare hand no longer meets the outside of the gown; what is left are the straps of goggles and mask.',
    sources: ['study.okamoto-2019.hands.gloves-before-gown', 'study.cochrane-2020.one-step.bacteria'],
    verdict: 'agrees in part',
    why: 'The contact that the order itself makes, bare hands on the ties, is gone. One slip is left that the claim does not count: as gloves and sleeves roll off together, a freed hand can still close on their outside.',
    points: [
      point('Everyday example 2: has a bare hand at the ties of the gown', 'no', both('no'), (agent) =>
        yesNo(ask(everyday2, agent).alone(HAND).includes(TIE)),
      ),
      point('Bare hand, by the strap of the goggles', '–', both(1), (agent) =>
        ask(everyday2, agent).least(HAND, { with: 'start:soiled-strap:wearer.goggles.strap' }),
      ),
      point('Bare hand, by the strap of the respirator', '–', both(1), (agent) =>
        ask(everyday2, agent).least(HAND, { with: 'start:soiled-strap:wearer.n95-respirator.strap' }),
      ),
      point('Bare hand, by a wrong grip while all rolls off', 'none', both(1), (agent) =>
        ask(everyday2, agent).least(HAND, { with: `${together}:wrong-grip` }),
      ),
    ],
  },
  {
    id: 'V3',
    claim:
      'Gloves first, with hygiene after each item: the hand is still contaminated at the gown step until it is next cleaned, but goes no further to goggles, mask and face.',
    sources: ['practice.hygiene-between-items', 'practice.hygiene-after-each-glove-removal'],
    verdict: 'agrees',
    points: [
      point('Bare hand at the gown step', '1', both(1), (agent) =>
        ask(rubbed, agent).least(HAND, { with: grip }),
      ),
      point('On to the skin of the face: one more failure, of the hygiene', 'cut', each(2, 1), (agent) =>
        ask(rubbed, agent).least('wearer.face', { with: grip }),
      ),
      point('On to eyes, nose or mouth', 'cut', each(3, 2), (agent) =>
        ask(rubbed, agent).least(MUCOSA, { with: grip }),
      ),
    ],
  },
  {
    id: 'V4',
    claim:
      'One pair of gloves against two in the same order: for hands one slip becomes two; for scrubs nothing changes.',
    sources: [
      'study.cochrane-2020.double-gloves.any',
      'study.cochrane-2020.double-gloves.shirt',
      'study.casanova-2012.finding',
    ],
    verdict: 'agrees',
    points: [
      point('Hands, one pair', '1', both(1), (agent) => ask(onePair, agent).least(HANDS)),
      point('Hands, two pairs', '2', both(2), (agent) => ask(twoPairs, agent).least(HANDS)),
      point(
        'Scrubs: the same single slips and circumstances with one pair and two',
        'yes',
        both('yes'),
        (agent) => sameAlone(SCRUBS)(agent),
      ),
    ],
  },
  {
    id: 'V5',
    claim: 'A second pair of gloves must not be said to protect the face better.',
    sources: ['study.cochrane-2020.double-gloves.face'],
    verdict: 'agrees',
    points: [
      point(
        'Face, neck: the same single slips and circumstances with one pair and two',
        'yes',
        both('yes'),
        (agent) => sameAlone(['wearer.face', 'wearer.neck'])(agent),
      ),
      point('Eyes, nose, mouth, one pair', '–', both(2), (agent) => ask(onePair, agent).least(MUCOSA)),
      point('Eyes, nose, mouth, two pairs', 'as with one', both(2), (agent) =>
        ask(twoPairs, agent).least(MUCOSA),
      ),
      point('Face by the mask step, one pair', '–', both(1), (agent) =>
        ask(onePair, agent).least('wearer.face', { with: mask }),
      ),
      point('Face by the mask step, two pairs', 'as with one', both(1), (agent) =>
        ask(twoPairs, agent).least('wearer.face', { with: mask }),
      ),
    ],
  },
];
