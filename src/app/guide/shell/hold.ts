// Which tab of this browser runs an exit: one at a time, so that nothing is recorded twice. Where the browser has locks
// (https addresses), it frees one by itself when a tab closes or dies; elsewhere tabs ask one another. A tab that is asked
// to let go saves first what it has; one that does not answer is taken to be dead or asleep, and learns of it when it wakes.
import type { Link } from './link.ts';

export type HoldMessage =
  | { readonly is: 'who' | 'give' | 'taken'; readonly tab: string }
  | { readonly is: 'mine' | 'given' | 'unsaved'; readonly to: string };

type Locks = Pick<LockManager, 'request'>;

export interface HoldParts {
  /** Unlike that of any other tab. */
  readonly tab: string;
  readonly link: Link<HoldMessage>;
  /** Undefined where the browser has none. */
  readonly locks: Locks | undefined;
  readonly wait: (milliseconds: number) => Promise<void>;
  /** Another tab asks for the exit: saves what is not saved and says whether everything is. */
  readonly letGo: () => Promise<boolean>;
  /** Another tab has it now. */
  readonly lost: () => void;
}

export interface Hold {
  /** True: this tab has it. False: another has. */
  readonly claim: () => Promise<boolean>;
  /** Somebody said that this tab runs it from now on. `unsaved`: the other tab has entries that it cannot save, and keeps it. */
  readonly take: () => Promise<'taken' | 'unsaved'>;
  /** This tab has seen that another runs it. */
  readonly leave: () => void;
}

/** How long other tabs are given to answer; a tab that saves needs longer. The house's own choice. */
const ANSWER_MS = 400;
const SAVING_MS = 3000;

/** One lock of the browser: had, or not, until it is let go or taken away. */
function lockOf(name: string, locks: Locks, stolen: () => void) {
  let free: (() => void) | undefined;
  const ask = async (options: LockOptions): Promise<boolean> =>
    new Promise((resolve) => {
      let had = false;
      const hold = async (lock: Lock | null): Promise<void> => {
        had = lock !== null;
        resolve(had);
        if (had)
          await new Promise<void>((done) => {
            free = done;
          });
      };
      locks.request(name, options, hold).catch(() => {
        resolve(false);
        if (had && free) stolen();
        free = undefined;
      });
    });
  const release = (): void => {
    free?.();
    free = undefined;
  };
  return { ask, release };
}

export function holdOf(exit: string, parts: HoldParts): Hold {
  const { tab, link, locks, wait, letGo, lost } = parts;
  let held = false;
  let claiming = false;
  /** Called with every message to this tab while it waits for one. */
  let hear: (is: HoldMessage['is']) => void = () => undefined;
  const lose = (): void => {
    if (!held) return;
    held = false;
    lost();
  };
  const lock = locks && lockOf(`doffline-exit-${exit}`, locks, lose);

  const leave = (): void => {
    lock?.release();
    lose();
  };
  const give = async (to: string): Promise<void> => {
    if (!(await letGo())) {
      link.post({ is: 'unsaved', to });
      return;
    }
    leave();
    link.post({ is: 'given', to });
  };
  link.listen((message) => {
    if ('to' in message) {
      if (message.to === tab) hear(message.is);
      return;
    }
    // Of two that ask at once the first by name has it.
    const mine = held || (claiming && tab < message.tab);
    if (message.is === 'who' && mine) link.post({ is: 'mine', to: message.tab });
    else if (message.is === 'who' && claiming) hear('mine');
    else if (message.is === 'taken') lose();
    else if (message.is === 'give' && held) give(message.tab).catch(() => undefined);
  });

  /** What another tab answers, or nothing. */
  const answer = async (ask: 'who' | 'give', patience: number): Promise<HoldMessage['is'] | 'none'> => {
    const heard = new Promise<HoldMessage['is']>((resolve) => {
      hear = resolve;
    });
    link.post({ is: ask, tab });
    return Promise.race([heard, wait(patience).then((): 'none' => 'none')]);
  };

  const claim = async (): Promise<boolean> => {
    if (held) return true;
    claiming = true;
    // A page that is loaded anew may find its own lock for a moment.
    held = lock
      ? (await lock.ask({ ifAvailable: true })) ||
        (await wait(ANSWER_MS).then(async () => lock.ask({ ifAvailable: true })))
      : (await answer('who', ANSWER_MS)) === 'none';
    claiming = false;
    return held;
  };
  const take = async (): Promise<'taken' | 'unsaved'> => {
    if (held) return 'taken';
    if ((await answer('give', SAVING_MS)) === 'unsaved') return 'unsaved';
    if (lock) await lock.ask({ steal: true });
    held = true;
    link.post({ is: 'taken', tab });
    return 'taken';
  };
  return { claim, take, leave };
}
