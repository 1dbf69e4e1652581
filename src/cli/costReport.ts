// From a cost to the object that `cost --json` prints: plain values with their names beside them.
import type { Cost } from '../costing/cost.ts';
import { groundsOf, weakestOf } from '../costing/grounds.ts';
import { isReprocessed } from '../costing/items.ts';
import type { Priced } from '../costing/prices.ts';
import { type Quantity, supplyKey } from '../costing/supply.ts';
import type { Spell } from '../costing/time.ts';
import type { Procedure } from '../domain/procedure.ts';
import { evidence, type EvidenceStatus } from '../evidence/index.ts';
import { CAUTIONS, type Words } from '../words/index.ts';
import { COST_FORMAT, type CostReport } from './costSchema.ts';
import type { Subject } from './subject.ts';
import { VERSION } from './version.ts';

export const quantityReport = ({ unit, count, pairs, singles }: Quantity) => ({
  unit,
  count,
  pairs: pairs ?? null,
  singles: singles ?? null,
});

export const spellReport = ({ seconds, interval }: Spell, status: EvidenceStatus) => ({
  seconds,
  interval: [interval.low, interval.high] as [number, number],
  status,
});

function linesOf(words: Words, { items, uses, people, evidence: grounds }: Cost) {
  const time = weakestOf(grounds.times);
  return {
    items: items.map((flow) => ({
      item: flow.item,
      name: words.item(flow.item),
      singleUse: !isReprocessed(flow.item),
      needed: quantityReport(flow.needed),
      opened: quantityReport(flow.opened),
      discarded: quantityReport(flow.discarded),
      reprocessed: quantityReport(flow.reprocessed),
      leftOn: quantityReport(flow.leftOn),
    })),
    uses: uses.flatMap((use) =>
      use.supply.kind === 'item'
        ? []
        : [
            {
              kind: use.supply.kind,
              product: use.supply.product ?? null,
              name: words.compare.supply(use.supply),
              quantity: quantityReport(use.quantity),
              millilitres: use.millilitres ?? null,
              volumeKnown: use.millilitres === undefined ? null : use.millilitres !== null,
              evidence: [...use.evidence],
              status: weakestOf(use.evidence),
            },
          ],
    ),
    people: people.map(({ person, role, handsOn, tiedUp, steps }) => ({
      person,
      role,
      handsOn: spellReport(handsOn, time),
      tiedUp: spellReport(tiedUp, time),
      steps: steps ? ([steps[0] + 1, steps[1] + 1] as [number, number]) : null,
    })),
  };
}

function pricesReport(words: Words, { currency, lines, total, unpriced }: Priced): CostReport['prices'] {
  return {
    currency,
    lines: lines.map(({ supply, ...line }) => ({
      name: words.compare.supply(supply),
      key: supplyKey(supply),
      ...line,
    })),
    total,
    unpriced: unpriced.map(supplyKey),
  };
}

export interface Costed {
  readonly procedure: Procedure;
  readonly cost: Cost;
  readonly runs: number;
  readonly priced?: Priced;
}

/** The report of a file that cannot be read: only what is wrong with it. */
export const unreadCost = (subject: Subject, runs: number): CostReport => ({
  format: COST_FORMAT,
  version: VERSION,
  file: subject.file,
  status: 2,
  procedure: null,
  runs,
  run: null,
  items: [],
  uses: [],
  people: [],
  waste: null,
  prices: null,
  evidence: [],
  diagnostics: [...subject.complaints],
  cautions: [...CAUTIONS],
});

export function costReportOf(
  words: Words,
  subject: Subject,
  { procedure, cost, runs, priced }: Costed,
): CostReport {
  const { title, kind, version, invented, steps, agents } = procedure;
  return {
    ...unreadCost(subject, runs),
    status: 0,
    procedure: { title, kind, version, invented, steps: steps.length, agents: [...agents] },
    run: spellReport(cost.run, weakestOf(cost.evidence.times)),
    ...linesOf(words, cost),
    waste: { ...cost.waste, evidence: [...cost.waste.evidence] },
    prices: priced ? pricesReport(words, priced) : null,
    evidence: groundsOf(cost).map((id) => {
      const { says, source } = words.evidence(id);
      return { id, says, source, status: evidence(id).status };
    }),
  };
}
