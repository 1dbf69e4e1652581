// What is asked of the worker that searches, and what comes back: plain data only.
import type { Measure } from '../../check/finding.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Agent } from '../../domain/products.ts';
import type { OrderResult } from '../../order/index.ts';
import type { Substitution } from '../../order/substitute.ts';

export interface Limits {
  readonly agent: Agent;
  readonly milliseconds: number;
  /** Departures from practice that the given steps do not make may be chosen. */
  readonly free: boolean;
}

/** Against an agent that the procedure names and the search did not look at. */
export interface Aside {
  readonly agent: Agent;
  readonly before: Measure;
  readonly after: Measure;
}

export interface Ordered {
  readonly result: OrderResult;
  readonly asides: readonly Aside[];
  /** The given steps leave somebody in equipment, so that their figures are of less than a whole exit. */
  readonly incomplete: boolean;
}

export interface Swapped {
  readonly done: Substitution;
  readonly asides: readonly Aside[];
}

/** What the worker offers. */
export interface Searcher {
  order(procedure: Procedure, limits: Limits): Promise<Ordered>;
  /** Undefined where no way was found to do the steps with it. */
  swap(procedure: Procedure, from: string, to: string, limits: Limits): Promise<Swapped | undefined>;
}
