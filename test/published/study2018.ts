// The doffings of 2018 with two tracers (Mumma et al., failure modes and fault trees; Casanova et al., what was found on
// whom): their shares beside our chances, never fitted. Ten doffings: almost any prediction lies in their intervals, so
// what is compared is which routes there are, by mechanism.
import { DRAWS } from '../../src/check/intervals.ts';
import { distributionOf, eventChances } from '../../src/check/chances.ts';
import type { Interval } from '../../src/check/finding.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import type { Agent } from '../../src/domain/products.ts';
import { chanceOf } from '../../src/engine/chance.ts';
import { drawChances } from '../../src/engine/draws.ts';
import { conditionAt, judgedOf } from '../../src/engine/propagate.ts';
import { union } from '../../src/engine/walk.ts';
import type { EvidenceId } from '../../src/evidence/index.ts';
import { ask } from './ask.ts';
import { hoodLast } from './claims/head.ts';
import { HANDS, INNER_GLOVES, MUCOSA, paprGown, SCRUBS } from './subjects.ts';

/** One observation of the study, and the surfaces of ours that stand for it. */
export interface Observation {
  readonly what: string;
  readonly agent: Agent;
  readonly observed: EvidenceId;
  /** The study's own fault-tree prediction, where it was seen. */
  readonly predicted?: EvidenceId;
  readonly surfaces: readonly string[];
  /** As the last step before their removal ends; as judged when absent. */
  readonly beforeRemoval?: boolean;
}

export const OBSERVATIONS: readonly Observation[] = [
  {
    what: 'Enveloped tracer on scrubs',
    agent: 'enveloped',
    observed: 'study.casanova-2018.phi6.scrubs',
    predicted: 'study.mumma-2018.predicted.phi6-scrubs',
    surfaces: SCRUBS,
  },
  {
    what: 'Enveloped tracer on inner gloves',
    agent: 'enveloped',
    observed: 'study.casanova-2018.phi6.inner-gloves',
    surfaces: INNER_GLOVES,
    beforeRemoval: true,
  },
  {
    what: 'Enveloped tracer on hands',
    agent: 'enveloped',
    observed: 'study.casanova-2018.phi6.hands',
    surfaces: HANDS,
  },
  {
    what: 'Enveloped tracer on the face',
    agent: 'enveloped',
    observed: 'study.casanova-2018.phi6.face',
    surfaces: ['wearer.face', ...MUCOSA],
  },
  {
    what: 'Resistant tracer on inner gloves',
    agent: 'non-enveloped',
    observed: 'study.casanova-2018.ms2.inner-gloves',
    predicted: 'study.mumma-2018.predicted.ms2-inner-gloves',
    surfaces: INNER_GLOVES,
    beforeRemoval: true,
  },
  {
    what: 'Resistant tracer on hands',
    agent: 'non-enveloped',
    observed: 'study.casanova-2018.ms2.hands',
    predicted: 'study.mumma-2018.predicted.ms2-hands',
    surfaces: HANDS,
  },
  {
    what: 'Resistant tracer on scrubs',
    agent: 'non-enveloped',
    observed: 'study.casanova-2018.ms2.scrubs',
    predicted: 'study.mumma-2018.predicted.ms2-scrubs',
    surfaces: SCRUBS,
  },
];

/** The order that was read (hood before gown), and the one that the study's own route implies. */
export const ORDERS = {
  'hood before gown': paprGown,
  'hood after gown': hoodLast,
} as const satisfies Readonly<Record<string, Procedure>>;
export type Order = keyof typeof ORDERS;

interface Ours extends Interval {
  readonly chance: number;
}

const SEED = 2018;

/** Chance that at least one of the surfaces is contaminated, with its 90 % interval from the chances' uncertainty. */
export function oursFor({ agent, surfaces, beforeRemoval }: Observation, order: Order): Ours {
  const { analysis } = ask(ORDERS[order], agent);
  const { diagram, conditions, compiled } = analysis;
  const { events, surfaces: known } = compiled.plan;
  const { steps, policy } = compiled.procedure;
  const removal = steps.findIndex(
    ({ action, items }) => action === 'remove' && items.includes('inner-gloves'),
  );
  const root = union(
    diagram,
    surfaces.map((id) => {
      const index = known.findIndex((surface) => surface.id === id);
      return beforeRemoval ? conditionAt(conditions, removal - 1, index) : judgedOf(conditions, index);
    }),
  );
  const [spread] = drawChances({
    diagram,
    roots: [root],
    events,
    distributionOf,
    setting: null,
    draws: DRAWS,
    seed: SEED,
  });
  return {
    chance: chanceOf(diagram, root, eventChances(events, policy)),
    low: spread?.low ?? 0,
    high: spread?.high ?? 1,
  };
}
