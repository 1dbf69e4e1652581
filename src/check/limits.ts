// What the check takes on, and how it says so when a procedure asks for more. Real procedures are far below every limit;
// they are there so that no file, however built, ends in a hang or a crash.
import type { Plan } from '../contacts/plan.ts';
import type { Agent } from '../domain/products.ts';
import { type NodeTable, Tangled } from '../engine/nodeTable.ts';

/**
 * Work is counted (nodeTable.ts), never timed, so that the same file is answered the same everywhere; a million is about a
 * third of a second. With both agents the whole check of anything ends within half a minute on one core.
 * events: the diagram's recursion is as deep as there are, and stands on a small stack. cells: surfaces times steps, a
 * condition each. exactWork: conditions, combinations and chances against one agent. mendWork, variantWork: all mends, all
 * variants against one agent. blends: nodes times draws behind the intervals.
 */
export const LIMITS = {
  events: 3000,
  cells: 10_000_000,
  exactWork: 10_000_000,
  mendWork: 16_000_000,
  variantWork: 16_000_000,
  blends: 1_000_000_000,
} as const;

/** What a trial costs beside its pairs, in the same coin: for each of its steps, and for each surface. */
export const TRIAL_COST = { step: 15, surface: 1 / 8 } as const;

/** A part of the check that was left undone, or done in part, and why. */
export interface Limit {
  /** Absent where it holds for all. */
  readonly agent?: Agent;
  readonly code: 'exact' | 'mends' | 'variants';
  readonly params: Readonly<Record<string, string>>;
}

/** Refuses what the diagram could not hold. */
export function assertManageable({ events, surfaces, steps }: Plan): void {
  const cells = surfaces.length * steps.length;
  if (events.length > LIMITS.events || cells > LIMITS.cells) throw new Tangled();
}

/** Does a part of the check with so much work allowed; what comes after it has the allowance of an exact answer. */
export function within<Result>(diagram: NodeTable, work: number, part: () => Result): Result {
  diagram.allow(work);
  try {
    return part();
  } finally {
    diagram.allow(LIMITS.exactWork);
  }
}

export const isTangled = (error: unknown): error is Tangled => error instanceof Tangled;

/** What was tried of all variants, where that is not all. */
export const variantLimit = (tried: number, all: number): readonly Limit[] =>
  tried < all ? [{ code: 'variants', params: { tried: String(tried), all: String(all) } }] : [];
