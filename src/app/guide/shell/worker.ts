// The guide's long sums in a worker of their own, so that no press ever waits for them.
import { expose } from 'comlink';
import { analyse } from '../../../check/analysis.ts';
import { isTangled } from '../../../check/limits.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Found, Place } from '../../../guide/index.ts';
import { continueFrom } from '../../../order/continue.ts';
import { type Board, boardOf, worstOf } from '../../model/board.ts';
import type { Guider, WayQuestion } from './result.ts';

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

/** The procedure as it was last sent: what was worked out of it is kept by it, and every message carries a copy. */
let last: { readonly text: string; readonly procedure: Procedure } | undefined;

function same(procedure: Procedure): Procedure {
  const text = JSON.stringify(procedure);
  if (last?.text !== text) last = { text, procedure };
  return last.procedure;
}

/** The best way on that was found; null where it is the rest as written. */
function wayOn({ procedure, done, known }: WayQuestion): Found {
  try {
    const { kept, steps, barriers } = continueFrom(same(procedure), done, known);
    if (kept) return null;
    const places = barriers.map(
      ({ surface, class: of, asWritten, proposed }): Place => ({
        surface,
        class: of,
        before: asWritten,
        after: proposed,
      }),
    );
    const [before, after] = [places.map((one) => one.before), places.map((one) => one.after)];
    return { id: `way-${done}`, steps, barriers: { before: least(before), after: least(after) }, places };
  } catch (error) {
    if (isTangled(error)) return 'not-worked-out';
    throw error;
  }
}

const guider: Guider = {
  // Nothing of the answer is used: the first question behind it finds its code and its procedure warm.
  warm: (procedure) => {
    wayOn({ procedure, done: 0, known: { happened: [], excluded: [], taints: [] } });
    return Promise.resolve();
  },
  way: (question) => Promise.resolve(wayOn(question)),
  board: (procedure) => Promise.resolve(worstBoard(procedure)),
};

expose(guider);
