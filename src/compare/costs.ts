// What the second procedure takes more or less of than the first: time, with an interval in which steps of one record share
// their draws, and every supply that either needs.
import type { Compiled } from '../contacts/interpret.ts';
import type { Interval } from '../check/finding.ts';
import { type Cost, costOf } from '../costing/cost.ts';
import { type Quantity, type Supply, supplyKey } from '../costing/supply.ts';
import { timeColumn } from '../costing/time.ts';
import { differencesOf, spreadOf } from '../engine/draws.ts';

export interface SupplyChange {
  readonly supply: Supply;
  readonly a: Quantity;
  readonly b: Quantity;
  /** Alcohol hand rub and its like: mL of a run; null where no figure exists. */
  readonly millilitresA?: number | null;
  readonly millilitresB?: number | null;
}

export interface CostChanges {
  readonly a: Cost;
  readonly b: Cost;
  /** The second less the first. */
  readonly time: { readonly seconds: number; readonly interval: Interval; readonly excludesZero: boolean };
  /** Everything that either needs, changed or not. */
  readonly supplies: readonly SupplyChange[];
}

interface Entry {
  readonly supply: Supply;
  readonly quantity: Quantity;
  readonly millilitres?: number | null;
}

const entriesOf = ({ items, uses }: Cost): readonly Entry[] => [
  ...items.map(({ item, needed }): Entry => ({ supply: { kind: 'item', item }, quantity: needed })),
  ...uses,
];

/** None of what the other has some of. */
const none = ({ unit, pairs }: Quantity): Quantity => ({
  unit,
  count: 0,
  ...(pairs === undefined ? {} : { pairs: 0, singles: 0 }),
});

function changeOf(a: Entry | undefined, b: Entry | undefined): SupplyChange | undefined {
  const known = a ?? b;
  if (!known) return undefined;
  const liquid = known.millilitres !== undefined;
  return {
    supply: known.supply,
    a: a?.quantity ?? none(known.quantity),
    b: b?.quantity ?? none(known.quantity),
    ...(liquid
      ? {
          millilitresA: a ? (a.millilitres ?? null) : 0,
          millilitresB: b ? (b.millilitres ?? null) : 0,
        }
      : {}),
  };
}

function supplyChanges(a: Cost, b: Cost): readonly SupplyChange[] {
  const [inA, inB] = [a, b].map(
    (cost) => new Map(entriesOf(cost).map((one) => [supplyKey(one.supply), one])),
  );
  const keys = new Set([...(inA?.keys() ?? []), ...(inB?.keys() ?? [])]);
  return [...keys].flatMap((key) => changeOf(inA?.get(key), inB?.get(key)) ?? []);
}

export function compareCosts(a: Compiled, b: Compiled): CostChanges {
  const [costA, costB] = [costOf(a), costOf(b)];
  const { low, high } = spreadOf(differencesOf(timeColumn(a.performed), timeColumn(b.performed)));
  return {
    a: costA,
    b: costB,
    time: {
      seconds: costB.run.seconds - costA.run.seconds,
      interval: { low, high },
      excludesZero: low > 0 || high < 0,
    },
    supplies: supplyChanges(costA, costB),
  };
}
