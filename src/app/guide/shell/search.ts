// The page's side of the guide's worker: a search for another way on, and the board of a procedure for its pictures. The
// worker of the searches is started and warmed when an exit begins, so that after a slip nobody waits for its code.
import { type Remote, wrap } from 'comlink';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Effect, Found } from '../../../guide/index.ts';
import type { Board } from '../../model/board.ts';
import type { Guider } from './result.ts';

interface Helper {
  readonly ask: <Answer>(work: (guider: Remote<Guider>) => Promise<Answer>) => Promise<Answer>;
  readonly end: () => void;
}

/** A worker of its own, with what it says when it does not start. */
function helper(): Helper {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const guider = wrap<Guider>(worker);
  const crashed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => reject(new Error(event.message || 'it did not start')));
  });
  crashed.catch(() => undefined);
  return {
    ask: async (work) => Promise.race([work(guider), crashed]),
    end: () => worker.terminate(),
  };
}

async function once<Answer>(work: (guider: Remote<Guider>) => Promise<Answer>): Promise<Answer> {
  const made = helper();
  try {
    return await made.ask(work);
  } finally {
    made.end();
  }
}

let searcher: Helper | undefined;

/** Asks the worker that is kept; one that failed is ended, and the next question starts another. */
async function kept<Answer>(work: (guider: Remote<Guider>) => Promise<Answer>): Promise<Answer> {
  searcher ??= helper();
  const asked = searcher;
  try {
    return await asked.ask(work);
  } catch (error) {
    asked.end();
    if (searcher === asked) searcher = undefined;
    throw error;
  }
}

/** Called when an exit begins here. */
export function warmUp(procedure: Procedure): void {
  kept(async (guider) => guider.warm(procedure)).catch(() => undefined);
}

export const searchWay = async ({
  procedure,
  doneSteps,
  known,
}: Extract<Effect, { do: 'search-continuation' }>): Promise<Found> =>
  kept(async (guider) => guider.way({ procedure, done: doneSteps, known }));

export const boardFor = async (procedure: Procedure): Promise<Board | undefined> =>
  once(async (guider) => guider.board(procedure));
