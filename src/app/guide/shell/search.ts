// The page's side of the guide's worker: a search for another way on, and the board of a procedure for its pictures.
import { type Remote, wrap } from 'comlink';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Continuation, Effect } from '../../../guide/index.ts';
import type { Board } from '../../model/board.ts';
import type { Guider } from './result.ts';

async function inWorker<Answer>(work: (guider: Remote<Guider>) => Promise<Answer>): Promise<Answer> {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const crashed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => reject(new Error(event.message || 'it did not start')));
  });
  try {
    return await Promise.race([work(wrap<Guider>(worker)), crashed]);
  } finally {
    worker.terminate();
  }
}

export const searchWay = async ({
  procedure,
  doneSteps,
  known,
}: Extract<Effect, { do: 'search-continuation' }>): Promise<Continuation | null> =>
  inWorker(async (guider) => guider.way({ procedure, done: doneSteps, known }));

export const boardFor = async (procedure: Procedure): Promise<Board | undefined> =>
  inWorker(async (guider) => guider.board(procedure));
