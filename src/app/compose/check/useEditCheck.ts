// The check of a draft as the page sees it: the newest answer there is, and whether it is about the draft as it stands.
import { proxy, type Remote, wrap } from 'comlink';
import { type Dispatch, type SetStateAction, useEffect, useState } from 'react';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Diagnostic, Span } from '../../../language/index.ts';
import type { Checker, Judged, Result } from '../../check/result.ts';
import { LIBRARY } from '../../library.ts';
import { fileNameOf, textOf } from '../model/draft.ts';
import { onEdit } from '../store/useDrafts.ts';
import { createSchedule, type Runner, type Schedule } from './schedule.ts';
import type { QuickChecker } from './worker.ts';

/** How long nobody must have edited before mends and variants are tried, in milliseconds. */
const PAUSE = 400;

export interface Answer {
  readonly judged?: Judged;
  /** Only the full check reads the text. */
  readonly diagnostics?: readonly Diagnostic[];
  /** Lines of each step in the text, by its id. */
  readonly lines?: ReadonlyMap<string, Span>;
  /** Chances have been worked out; mends and variants have been tried. */
  readonly surfaces: boolean;
  readonly complete: boolean;
}

export interface EditCheck extends Answer {
  /** The draft that this is about. */
  readonly of: Procedure | undefined;
  readonly why?: string;
}

const NOTHING: EditCheck = { of: undefined, surfaces: false, complete: false };

const donningOf = ({ donning }: Procedure): string | undefined =>
  LIBRARY.find(({ fileName, id }) => fileName === donning || id === donning)?.text;

/** A worker that is made when it is needed and thrown away when it is told to stop. */
function holder<Remoted>(make: () => Worker): {
  readonly ask: <T>(work: (remote: Remote<Remoted>) => Promise<T>) => Promise<T>;
  readonly stop: () => void;
} {
  let worker: Worker | undefined;
  let remote: Remote<Remoted> | undefined;
  let broken: Promise<never> | undefined;
  const stop = (): void => {
    worker?.terminate();
    worker = undefined;
    remote = undefined;
  };
  return {
    stop,
    ask: (work) => {
      if (!worker || !remote || !broken) {
        const made = make();
        broken = new Promise<never>((_, reject) => {
          made.addEventListener('error', (event) => reject(new Error(event.message || 'it did not start')));
        });
        broken.catch(stop);
        worker = made;
        remote = wrap<Remoted>(made);
      }
      return Promise.race([work(remote), broken]);
    },
  };
}

function quickRunner(): Runner<Procedure, Answer> {
  const { ask, stop } = holder<QuickChecker>(
    () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
  );
  return {
    stop,
    run: async (draft, answer) => {
      const judged = await ask((remote) => remote.check(draft, donningOf(draft)));
      answer({ judged, surfaces: false, complete: false });
    },
  };
}

const answerOf = ({ judged, diagnostics, complete, steps }: Result): Answer => ({
  diagnostics,
  lines: steps,
  surfaces: true,
  complete,
  ...(judged ? { judged } : {}),
});

function fullRunner(): Runner<Procedure, Answer> {
  const { ask, stop } = holder<Checker>(
    () => new Worker(new URL('../../check/worker.ts', import.meta.url), { type: 'module' }),
  );
  return {
    stop,
    run: (draft, answer) => {
      const donning = donningOf(draft);
      const question = { text: textOf(draft), fileName: fileNameOf(draft), ...(donning ? { donning } : {}) };
      return ask((remote) =>
        remote.check(
          question,
          proxy((result: Result) => answer(answerOf(result))),
        ),
      );
    },
  };
}

function later(work: () => void): () => void {
  const timer = setTimeout(work, PAUSE);
  return () => clearTimeout(timer);
}

const reasonOf = (why: unknown): string => (why instanceof Error ? why.message : String(why));

interface Scheduled {
  readonly schedule: Schedule<Procedure>;
  readonly quick: Runner<Procedure, Answer>;
}

function scheduleWith(setCheck: Dispatch<SetStateAction<EditCheck>>): Scheduled {
  const quick = quickRunner();
  const schedule = createSchedule<Procedure, Answer>({
    quick,
    full: fullRunner(),
    tell: (of, answer) => setCheck({ ...answer, of }),
    failed: (of, why) => setCheck((before) => ({ ...before, of, why: reasonOf(why) })),
    later,
  });
  return { schedule, quick };
}

/** Without steps there is nothing to check. */
function askOf(schedule: Schedule<Procedure>, draft: Procedure): void {
  if (draft.steps.length > 0) schedule.ask(draft);
  else schedule.end();
}

/**
 * Checks the draft at every edit. The worker is asked as the edit is kept, before the page is drawn with it, so that both go on
 * at once; and again with what is drawn, which is nothing new then.
 */
export function useEditCheck(id: string, draft: Procedure): EditCheck {
  const [check, setCheck] = useState<EditCheck>(NOTHING);
  // Made once; its workers start with the first question, and again after they were stopped.
  const [{ schedule, quick }] = useState(() => scheduleWith(setCheck));
  useEffect(
    () => () => {
      schedule.end();
      quick.stop();
    },
    [schedule, quick],
  );
  useEffect(() => onEdit(id, (edited) => askOf(schedule, edited)), [id, schedule]);
  useEffect(() => askOf(schedule, draft), [schedule, draft]);
  return draft.steps.length > 0 ? check : NOTHING;
}
