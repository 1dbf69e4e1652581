// What the check takes on, and how it says so when a procedure asks for more. Real procedures are far below every limit;
// they are there so that no file, however built, ends in a hang or a crash.
import type { BasicEvent, Plan } from '../contacts/plan.ts';
import { Tangled } from '../engine/nodeTable.ts';
import type { Edit } from './edit.ts';

/**
 * Events that the diagram's recursion can stand on a small stack (its depth is their number), variants tried, steps
 * worked out again for mends, and nodes that mends may add.
 */
export const LIMITS = { events: 3000, variants: 25_000, mendSteps: 100_000, mendNodes: 1 << 20 } as const;

/** A part of the check that was left undone, or done in part, and why. */
export interface Limit {
  readonly code: 'exact' | 'mends' | 'variants';
  readonly params: Readonly<Record<string, string>>;
}

/** Refuses what the diagram could not hold. */
export function assertManageable(plan: { readonly events: readonly BasicEvent[] } & Partial<Plan>): void {
  if (plan.events.length > LIMITS.events) throw new Tangled();
}

/** The variants that are tried: all, or omissions first and then moves over ever longer distances until the limit. */
export function limitedVariants(
  steps: number,
  all: Iterable<Edit>,
): { readonly edits: Iterable<Edit>; readonly limit?: Limit } {
  if (steps * steps <= LIMITS.variants) return { edits: all };
  return {
    edits: nearest(steps),
    limit: {
      code: 'variants',
      params: { tried: String(LIMITS.variants), all: String(steps * steps - steps) },
    },
  };
}

function* nearest(steps: number): Generator<Edit> {
  let left = LIMITS.variants;
  for (let at = 0; at < steps && left > 0; at += 1, left -= 1) yield { do: 'remove', at };
  for (let distance = 1; distance < steps; distance += 1) {
    for (let from = 0; from < steps; from += 1) {
      for (const to of distance === 1 ? [from + 1] : [from - distance, from + distance]) {
        if (to < 0 || to >= steps) continue;
        if (left <= 0) return;
        left -= 1;
        yield { do: 'move', from, to };
      }
    }
  }
}
