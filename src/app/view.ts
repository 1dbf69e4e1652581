// What every view of a procedure is given.
import type { Judged } from './check/result.ts';
import type { Board } from './model/board.ts';
import type { AgentChoice, Shown } from './model/findings.ts';

export interface ViewProps {
  /** Id of the procedure in addresses. */
  readonly id: string;
  readonly judged: Judged;
  /** Against the chosen agent, or the worst of all. */
  readonly board: Board;
  readonly shown: readonly Shown[];
  readonly choice: AgentChoice;
  /** Whether mends and variants have been tried. */
  readonly complete: boolean;
}
