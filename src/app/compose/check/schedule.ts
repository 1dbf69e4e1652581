// When an edited draft is checked: at once without mends, variants and chances; in full after a pause. There is only ever
// one draft worth asking about, so what comes back for an older one is dropped, and a full check of it is broken off.

/** Checks of one kind. `stop` may be called at any time; the next call starts anew. */
export interface Runner<Question, Answer> {
  readonly run: (question: Question, answer: (answer: Answer) => void) => Promise<void>;
  readonly stop: () => void;
}

export interface Schedule<Question> {
  /** Nothing is begun anew for what was asked last. */
  readonly ask: (question: Question) => void;
  readonly end: () => void;
}

interface Parts<Question, Answer> {
  readonly quick: Runner<Question, Answer>;
  readonly full: Runner<Question, Answer>;
  readonly tell: (question: Question, answer: Answer) => void;
  readonly failed: (question: Question, why: unknown) => void;
  /** Calls after the pause; gives back what calls it off. */
  readonly later: (work: () => void) => () => void;
}

export function createSchedule<Question, Answer>(parts: Parts<Question, Answer>): Schedule<Question> {
  let wanted: Question | undefined;
  let busy = false;
  let callOff = (): void => undefined;

  const telling = (question: Question) => (answer: Answer) => {
    if (question === wanted) parts.tell(question, answer);
  };

  const fully = (question: Question): void => {
    parts.full.run(question, telling(question)).catch((why: unknown) => {
      if (question === wanted) parts.failed(question, why);
    });
  };

  const quickly = async (): Promise<void> => {
    busy = true;
    let done: Question | undefined;
    for (let question = wanted; question !== undefined && done !== question; question = wanted) {
      // What the quick check cannot do, a half-written step for one, the full check says in words.
      await parts.quick.run(question, telling(question)).catch(() => undefined);
      done = question;
    }
    busy = false;
    const question = done;
    if (question !== undefined && question === wanted) callOff = parts.later(() => fully(question));
  };

  const end = (): void => {
    callOff();
    callOff = () => undefined;
    wanted = undefined;
    parts.full.stop();
  };

  return {
    ask: (question) => {
      if (question === wanted) return;
      end();
      wanted = question;
      if (!busy) quickly().catch(() => undefined);
    },
    end,
  };
}
