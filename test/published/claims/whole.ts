// V34 to V37: what hygiene weighs, what is contaminated by design, and two versions of one procedure side by side. They speak
// of a whole procedure, so most points are counts.
import { applyEdit } from '../../../src/check/edit.ts';
import type { Mend } from '../../../src/check/finding.ts';
import type { Procedure } from '../../../src/domain/procedure.ts';
import type { Agent } from '../../../src/domain/products.ts';
import { verifyProcedure } from '../../../src/verify.ts';
import { ask, stepOf } from '../ask.ts';
import { rankOf } from '../shares.ts';
import {
  ASSISTANT_GLOVE,
  everyday1,
  larkmoor1,
  larkmoor2,
  paprGown,
  paprSuit,
  poster,
  removal,
} from '../subjects.ts';
import { both, type Claim, each, point } from './claim.ts';

const ofKind = (procedure: Procedure, agent: Agent, code: RegExp): number =>
  verifyProcedure(procedure, { agents: [agent], mends: false, variants: false }).findings.filter((finding) =>
    code.test(finding.code),
  ).length;

/** Every event that alone reaches a surface which does not stand open, worked out afresh for the whole procedure. */
function alone(procedure: Procedure, agent: Agent): ReadonlySet<string> {
  const { analysis } = ask(procedure, agent);
  const { surfaces } = analysis.compiled.plan;
  return new Set(
    analysis.protectedSurfaces.flatMap((index) => {
      const surface = surfaces[index]?.id ?? '';
      return ask(procedure, agent)
        .alone(surface)
        .map((event) => `${event} ${surface}`);
    }),
  );
}

const mendsOf = (procedure: Procedure, agent: Agent): readonly Mend[] =>
  verifyProcedure(procedure, { agents: [agent], variants: false }).findings.flatMap(({ mends }) => mends);

/** Whether a mend lists exactly the single slips that only the edited procedure has. */
function listsAll(procedure: Procedure, agent: Agent, mend: Mend): boolean {
  const before = alone(procedure, agent);
  const openBefore = (key: string): boolean => ask(procedure, agent).least(key.split(' ')[1] ?? '') === 0;
  const fresh = [...alone(applyEdit(procedure, mend.edit), agent)].filter((key) => !before.has(key));
  const expected = fresh.filter((key) => !openBefore(key)).sort();
  return expected.join('\n') === [...(mend.newSlips ?? [])].sort().join('\n');
}

const SMALL: readonly Procedure[] = [everyday1, poster];
const everyMend = (agent: Agent) =>
  SMALL.flatMap((procedure) => mendsOf(procedure, agent).map((mend) => ({ procedure, mend })));

const zip = stepOf(paprSuit, 'unfasten', 'coverall').id;

export const WHOLE: readonly Claim[] = [
  {
    id: 'V34',
    claim:
      'Expected, not measured: hygiene steps are in more minimal combinations than any other step, hood removal next. (The study ranks them so by a risk index, which is another thing.)',
    sources: ['study.mumma-2018.hand-hygiene.risk-index', 'study.mumma-2018.hood.risk-index'],
    verdict: 'agrees in part',
    why: 'Hygiene comes first against an enveloped agent. Against one that alcohol does not kill the rub is worth nothing and is in no combination: what matters is what touches what. Hood removal comes late: it is one step with few slips after it, and in this order the gown still covers the scrubs. An index of how often and how badly people err is not a count of combinations.',
    points: [
      point('Rank of all hygiene steps together', '1', each(1, 10), (agent) =>
        rankOf(paprGown, agent, 'hand hygiene'),
      ),
      point('Rank of hood removal', '2', each(8, 5), (agent) => rankOf(paprGown, agent, 'powered hood')),
    ],
  },
  {
    id: 'V35',
    claim:
      'With nobody slipping at least outer gloves, the assistant’s gloves and the zip fingers are contaminated; no open path to skin is required.',
    sources: ['study.tomas-2015.no-lapse-seen', 'study.kwon-2017.ebola.doffing-deviation'],
    verdict: 'agrees',
    points: [
      point('Outer gloves at the start', '0', both(0), (agent) =>
        ask(paprSuit, agent).least('wearer.outer-gloves.right.outside', {
          after: paprSuit.steps[0]?.id ?? '',
        }),
      ),
      point('Assistant’s gloves at the hood', '0', both(0), (agent) =>
        ask(paprSuit, agent).least(ASSISTANT_GLOVE, { after: removal(paprSuit, 'powered-hood') }),
      ),
      point('Zip fingers', '0', both(0), (agent) =>
        ask(paprSuit, agent).least('wearer.inner-gloves.right.outside', { after: zip }),
      ),
      point('Open routes to skin or mucosa, powered respirator and gown', '–', both(0), (agent) =>
        ofKind(paprGown, agent, /^open\.(skin|mucosa)$/),
      ),
    ],
  },
  {
    id: 'V36',
    claim: 'A protocol with at least one path to skin and, once revised, none.',
    sources: ['study.berryhill-2024.finding'],
    verdict: 'cannot be reproduced',
    why: 'Only the abstract was read: neither the pathways nor the changes of that protocol are known, and inventing them would prove nothing. What can be tested is the shape of the claim, on the two versions of the invented unit: the comparison shows the open routes of the first and, for the agent it was written against, none in the second, and that slips remain in both.',
    points: [
      point('Invented unit, version 1: findings of an open route', '1 or more', both(3), (agent) =>
        ofKind(larkmoor1, agent, /^open\./),
      ),
      point('Invented unit, version 2: findings of an open route', '0', each(0, 1), (agent) =>
        ofKind(larkmoor2, agent, /^open\./),
      ),
      point('Version 1: ankle, by the hand that took the boot covers', '–', both(1), (agent) =>
        ask(larkmoor1, agent).least('wearer.ankle.left', { with: 'shoes-wiped:ankle-touch' }),
      ),
      point('Version 2: the same', '–', each(2, 1), (agent) =>
        ask(larkmoor2, agent).least('wearer.ankle.left', { with: 'shoes-wiped:ankle-touch' }),
      ),
    ],
  },
  {
    id: 'V37',
    claim:
      'A redesign can add paths: a report of change lists the new minimal combinations as well as those that go.',
    sources: ['study.wong-2019.redesign'],
    verdict: 'agrees in part',
    why: 'A mend lists every single slip that reaches somebody only once it is made, and the findings that come and go. New combinations of two and more are counted in the new figures and not listed one by one.',
    points: [
      point('Mends of two small procedures: do some add single slips', 'yes', both('yes'), (agent) =>
        everyMend(agent).some(({ mend }) => (mend.newSlips?.length ?? 0) > 0) ? 'yes' : 'no',
      ),
      point(
        'Mends that leave out one that a fresh check finds',
        '0',
        both(0),
        (agent) => everyMend(agent).filter(({ procedure, mend }) => !listsAll(procedure, agent, mend)).length,
      ),
    ],
  },
];
