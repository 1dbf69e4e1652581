// The picture that belongs to what stands on the observer's screen: of which step, and the plan's or what was recorded. A second
// display is told the same, so that nobody in the room looks at another state.
import { useMemo } from 'react';
import type { Core, Screen } from '../../../guide/index.ts';
import type { Board } from '../../model/board.ts';
import type { Recorded } from '../shell/view.ts';
import { stepShown } from './Large.tsx';
import { recordedOn, withRecorded } from './recorded.ts';
import { useBoard } from './useBoard.ts';

export interface Pictured {
  readonly recorded: Recorded;
  /** With what was recorded put in. */
  readonly board: Board;
}

/** Whatever else these are about, it is not the picture of a step. */
const WITHOUT: readonly Screen['phase'][] = ['emergency', 'stopped', 'ended'];

/** Undefined where no picture belongs there, and until its board is worked out. */
export function usePictured(screen: Screen, core: Core): Pictured | undefined {
  const { procedure } = core.script.setup;
  const planned = useBoard(procedure);
  const step = stepShown(screen, core);
  const isShown = step < procedure.steps.length && !WITHOUT.includes(screen.phase);
  return useMemo(() => {
    if (!planned || !isShown) return undefined;
    const recorded = recordedOn(planned, core, step);
    return { recorded, board: withRecorded(planned, recorded) };
  }, [planned, core, step, isShown]);
}
