// The rows of the picture of two procedures side by side. A step that both have in the same order stands level on both
// sides; one that moved stands once on each side, joined by a slanted line; long stretches without a change fold into one row.
import { type Happening, happenedTo, type StepRow } from '../../compare/align.ts';

export type Slot =
  | { readonly is: 'row'; readonly a: number | null; readonly b: number | null; readonly what: Happening }
  /** So many unchanged steps, from these on. */
  | { readonly is: 'fold'; readonly a: number; readonly b: number; readonly count: number };

/** A line from a slot on the left to one on the right. */
export interface Join {
  readonly from: number;
  readonly to: number;
  readonly what: Happening;
}

export interface Aligned {
  readonly slots: readonly Slot[];
  readonly joins: readonly Join[];
}

type Row = Extract<Slot, { is: 'row' }>;

/** A moved step leaves its old place on the left as a row of its own, after what it stood behind there. */
function withOldPlaces(rows: readonly StepRow[]): readonly Row[] {
  const result: Row[] = rows.map((row) => ({
    is: 'row',
    a: row.moved ? null : row.a,
    b: row.b,
    what: happenedTo(row),
  }));
  const movers = rows.filter((row) => row.moved && row.a !== null).sort((x, y) => (x.a ?? 0) - (y.a ?? 0));
  for (const row of movers) {
    const before = result.findLastIndex((one) => one.a !== null && one.a < (row.a ?? 0));
    result.splice(before + 1, 0, { is: 'row', a: row.a, b: null, what: happenedTo(row) });
  }
  return result;
}

/** Unchanged steps kept on each side of a change, and the shortest stretch worth folding. */
const KEPT = 1;
const SHORTEST = 3;

function folded(rows: readonly Row[]): readonly Slot[] {
  const near = (at: number): boolean =>
    rows.slice(Math.max(0, at - KEPT), at + KEPT + 1).some(({ what }) => what !== 'same');
  const slots: Slot[] = [];
  for (let at = 0; at < rows.length; ) {
    let end = at;
    while (end < rows.length && !near(end)) end += 1;
    const first = rows[at]!;
    if (end - at >= SHORTEST && first.a !== null && first.b !== null)
      slots.push({ is: 'fold', a: first.a, b: first.b, count: end - at });
    else slots.push(...rows.slice(at, Math.max(end, at + 1)));
    at = Math.max(end, at + 1);
  }
  return slots;
}

/** `whole`: fold nothing. */
export function alignedOf(rows: readonly StepRow[], whole: boolean): Aligned {
  const all = withOldPlaces(rows);
  const slots = whole ? all : folded(all);
  const at = (side: 'a' | 'b', step: number | null): number =>
    slots.findIndex((slot) => slot.is === 'row' && slot[side] === step);
  const joins = rows.flatMap((row): readonly Join[] => {
    if (row.a === null || row.b === null) return [];
    const [from, to] = [at('a', row.a), at('b', row.b)];
    return from < 0 || to < 0 ? [] : [{ from, to, what: happenedTo(row) }];
  });
  return { slots, joins };
}
