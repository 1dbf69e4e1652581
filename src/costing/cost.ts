// What one run of a procedure costs in equipment, wipes, products, mats, people's time and waste: sums over a compiled
// procedure, nothing else. It is the same against every agent.
import type { Compiled } from '../contacts/interpret.ts';
import { compile } from '../contacts/interpret.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { EvidenceId } from '../evidence/index.ts';
import { type ItemFlow, itemFlows, REPROCESSED } from './items.ts';
import { type PersonTime, peopleTimes, type Spell, spellOf, timeRecords } from './time.ts';
import { type UseLine, usedUp } from './uses.ts';

export interface Waste {
  /** Single-use items taken off, wipes and mats. */
  readonly pieces: number;
  /** Always null: no published figure per item or run. */
  readonly litres: null;
  readonly kilograms: null;
  /** Why there is no figure, and what is published instead. */
  readonly evidence: readonly EvidenceId[];
}

export interface Cost {
  readonly run: Spell;
  readonly items: readonly ItemFlow[];
  readonly uses: readonly UseLine[];
  readonly people: readonly PersonTime[];
  readonly waste: Waste;
  readonly evidence: {
    /** What parts items into single use and reprocessed. */
    readonly items: EvidenceId;
    readonly times: readonly EvidenceId[];
  };
}

const WASTE_RECORDS: readonly EvidenceId[] = [
  'waste.item.no-figure',
  'waste.lowe-2014.day',
  'waste.barrels',
  'waste.bag-fill',
];

function wasteOf(items: readonly ItemFlow[], uses: readonly UseLine[]): Waste {
  const worn = items.reduce((sum, { discarded }) => sum + discarded.count, 0);
  const other = uses
    .filter(({ supply }) => supply.kind !== 'product')
    .reduce((sum, { quantity }) => sum + quantity.count, 0);
  return { pieces: worn + other, litres: null, kilograms: null, evidence: WASTE_RECORDS };
}

/** Per run. */
export function costOf(compiled: Compiled): Cost {
  const items = itemFlows(compiled);
  const uses = usedUp(compiled);
  return {
    run: spellOf(compiled.performed),
    items,
    uses,
    people: peopleTimes(compiled),
    waste: wasteOf(items, uses),
    evidence: { items: REPROCESSED, times: timeRecords(compiled.performed) },
  };
}

/** The same from a procedure as it was read. */
export const costOfProcedure = (procedure: Procedure): Cost =>
  costOf(compile(procedure, procedure.agents[0] ?? 'enveloped'));
