// The guide's long sums in a worker of their own, so that no press ever waits for them.
import { expose } from 'comlink';
import { analyse } from '../../../check/analysis.ts';
import { isTangled } from '../../../check/limits.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { continueFrom } from '../../../order/continue.ts';
import { type Board, boardOf, worstOf } from '../../model/board.ts';
import type { Guider, Way, WayQuestion } from './result.ts';

function worstBoard(procedure: Procedure): Board | undefined {
  try {
    return worstOf(
      procedure.agents.map((agent) => {
        const { compiled, conditions } = analyse(procedure, agent);
        return boardOf(compiled, conditions);
      }),
    );
  } catch (error) {
    if (isTangled(error)) return undefined;
    throw error;
  }
}

const least = (barriers: readonly (number | null)[]): number | null => {
  const finite = barriers.filter((one) => one !== null);
  return finite.length > 0 ? Math.min(...finite) : null;
};

/** The best way on that was found; null where it is the rest as written, or cannot be worked out exactly. */
function wayOn({ procedure, done, known }: WayQuestion): Way | null {
  try {
    const { kept, steps, barriers } = continueFrom(procedure, done, known);
    if (kept) return null;
    const [before, after] = [barriers.map((one) => one.asWritten), barriers.map((one) => one.proposed)];
    const gains = barriers
      .filter(({ asWritten, proposed }) => asWritten !== proposed)
      .map(({ surface, asWritten, proposed }) => ({ surface, before: asWritten, after: proposed }));
    return { id: `way-${done}`, steps, barriers: { before: least(before), after: least(after) }, gains };
  } catch (error) {
    if (isTangled(error)) return null;
    throw error;
  }
}

const guider: Guider = {
  way: (question) => Promise.resolve(wayOn(question)),
  board: (procedure) => Promise.resolve(worstBoard(procedure)),
};

expose(guider);
