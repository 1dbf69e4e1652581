// One search at a time: begun, shown as going on, called off, ended with an answer. Calling off ends the worker: a search
// does not listen while it works.
import { type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Searcher } from './result.ts';

export type Run<Question, Answer> =
  | { readonly is: 'none' }
  | { readonly is: 'running'; readonly question: Question; readonly since: number }
  | { readonly is: 'off'; readonly after: number }
  | { readonly is: 'failed'; readonly why: string }
  | { readonly is: 'done'; readonly question: Question; readonly answer: Answer; readonly took: number };

export interface Runner<Question, Answer> {
  readonly run: Run<Question, Answer>;
  readonly start: (question: Question) => void;
  readonly cancel: () => void;
}

type Work<Question, Answer> = (searcher: Remote<Searcher>, question: Question) => Promise<Answer>;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function answered<Question, Answer>(
  worker: Worker,
  work: Work<Question, Answer>,
  question: Question,
): Promise<Answer> {
  const crashed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => reject(new Error(event.message || 'it did not start')));
  });
  return Promise.race([work(wrap<Searcher>(worker), question), crashed]);
}

/** Ends with the page that it is on. `work` must be the same function at every call. */
export function useRun<Question, Answer>(work: Work<Question, Answer>): Runner<Question, Answer> {
  const [run, setRun] = useState<Run<Question, Answer>>({ is: 'none' });
  const worker = useRef<Worker>(undefined);
  const end = useCallback(() => {
    worker.current?.terminate();
    worker.current = undefined;
  }, []);
  useEffect(() => end, [end]);
  const start = useCallback(
    (question: Question) => {
      end();
      const since = Date.now();
      const made = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      worker.current = made;
      setRun({ is: 'running', question, since });
      const tell = (next: Run<Question, Answer>): void => {
        if (worker.current !== made) return;
        end();
        setRun(next);
      };
      answered(made, work, question).then(
        (answer) => tell({ is: 'done', question, answer, took: Date.now() - since }),
        (error: unknown) => tell({ is: 'failed', why: reasonOf(error) }),
      );
    },
    [end, work],
  );
  const cancel = useCallback(() => {
    end();
    setRun((before) => (before.is === 'running' ? { is: 'off', after: Date.now() - before.since } : before));
  }, [end]);
  return { run, start, cancel };
}
