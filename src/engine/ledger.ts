// The ledger of surfaces: when each became suspect (some slip would do), certain (contaminated though
// nobody slipped), less than certain again, or was cleared by a wipe, a fresh glove or its leaving.

import { FALSE, type Node, TRUE } from './diagram.ts';
import { type Conditions, conditionAt } from './propagate.ts';

export const LEDGER_TURNS = ['suspect', 'certain', 'lessened', 'cleared'] as const;
export type LedgerTurn = (typeof LEDGER_TURNS)[number];

export interface LedgerEntry {
  /** Index of the step at whose end it shows, -1 for the start. */
  readonly step: number;
  readonly surface: number;
  readonly turn: LedgerTurn;
  readonly condition: Node;
}

/** Every turn of every surface, in order of time, then surface. */
export function ledgerOf(conditions: Conditions): LedgerEntry[] {
  const entries: LedgerEntry[] = [];
  conditions.changed.forEach((surfaces, row) => {
    const step = row - 1;
    for (const surface of surfaces) {
      const before = step < 0 ? FALSE : conditionAt(conditions, step - 1, surface);
      const condition = conditionAt(conditions, step, surface);
      const turn = turnOf(before, condition);
      if (turn !== null) entries.push({ step, surface, turn, condition });
    }
  });
  return entries;
}

/** null: still suspect, of something else. */
function turnOf(before: Node, after: Node): LedgerTurn | null {
  if (after === FALSE) return 'cleared';
  if (after === TRUE) return 'certain';
  if (before === TRUE) return 'lessened';
  return before === FALSE ? 'suspect' : null;
}
