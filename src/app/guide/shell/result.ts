// What is asked of the guide's worker, and what comes back: plain data only.
import type { Found, Known } from '../../../guide/index.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Board } from '../../model/board.ts';

export interface WayQuestion {
  readonly procedure: Procedure;
  /** Steps that are done. */
  readonly done: number;
  readonly known: Known;
}

export interface Guider {
  /** Works out what every question about this procedure needs. */
  warm(procedure: Procedure): Promise<void>;
  way(question: WayQuestion): Promise<Found>;
  /** For the picture of a step: against the agent that is worst. Undefined where it cannot be worked out exactly. */
  board(procedure: Procedure): Promise<Board | undefined>;
}
