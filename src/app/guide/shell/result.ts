// What is asked of the guide's worker, and what comes back: plain data only.
import type { Continuation, Known } from '../../../guide/index.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Board } from '../../model/board.ts';

export interface WayQuestion {
  readonly procedure: Procedure;
  /** Steps that are done. */
  readonly done: number;
  readonly known: Known;
}

/** A place that the other way makes harder to reach: slips and circumstances it takes at least; null where nothing does. */
interface Gain {
  readonly surface: string;
  readonly before: number | null;
  readonly after: number | null;
}

export interface Way extends Continuation {
  readonly gains: readonly Gain[];
}

export interface Guider {
  /** Null where nothing better than the rest as written was found. */
  way(question: WayQuestion): Promise<Way | null>;
  /** For the picture of a step: against the agent that is worst. Undefined where it cannot be worked out exactly. */
  board(procedure: Procedure): Promise<Board | undefined>;
}
