// Takes one step after the other for as long as there is something to do, and sleeps until the next is due. Woken by the
// clock, by a new entry, by the network coming back, by somebody who looks at the page. Several tabs may run one each: what
// they do twice the server acknowledges twice and keeps once.
import { hurried, lost, type Moment } from '../../sync/answers.ts';
import { type Ends, restored, take, writtenBy } from '../../sync/exchange.ts';
import { START_STATE, type SyncState } from '../../sync/state.ts';
import { nextStep } from '../../sync/step.ts';

export interface Shown {
  readonly state: SyncState;
  /** Number of this device's last entry here. */
  readonly written: number;
  /** When the first that waits was recorded. */
  readonly since: string | undefined;
}

export interface Runner {
  readonly shown: () => Shown;
  /** There is something new to send, or the time has come. */
  readonly wake: () => void;
  /** The same, and nothing waits that need not. */
  readonly hurry: () => void;
}

export interface RunnerParts {
  readonly open: () => Promise<Ends>;
  readonly moment: () => Moment;
  /** Calls back after so many milliseconds, instead of what it was asked before. */
  readonly later: (work: () => void, ms: number) => void;
  readonly changed: () => void;
  /** Entries of others came in. */
  readonly received: () => void;
}

/** The longest that a timer is trusted: tablets sleep. */
const LONGEST_MS = 30_000;

async function since({ store, device }: Ends, { acknowledged }: SyncState): Promise<string | undefined> {
  const [first] = await store.read(acknowledged + 1, { device, most: 1 });
  return first?.entry.at;
}

export function createRunner({ open, moment, later, changed, received }: RunnerParts): Runner {
  let shown: Shown = { state: START_STATE, written: 0, since: undefined };
  let ends: Ends | undefined;
  let running = false;
  /** Something came up while it ran. */
  let again = false;
  let hurrying = false;

  const show = async (state: SyncState, here: Ends): Promise<void> => {
    const written = await writtenBy(here.store, here.device);
    shown = { state, written, since: written > state.acknowledged ? await since(here, state) : undefined };
    changed();
  };

  /** Until there is nothing to do. Returns how long that lasts. */
  const steps = async (): Promise<number> => {
    if (!ends) {
      ends = await open();
      await show(await restored(ends), ends);
    }
    for (;;) {
      again = false;
      const before = shown.state;
      const at = moment();
      const step = nextStep(before, await writtenBy(ends.store, ends.device), at.now);
      if (step.do === 'wait') {
        await show(shown.state, ends);
        return step.until - at.now;
      }
      const after = await take(ends, before, step, at);
      if (after.next !== before.next) received();
      await show(hurrying ? hurried(after, at.now) : after, ends);
      hurrying = false;
    }
  };

  const run = async (): Promise<void> => {
    if (running) return;
    running = true;
    try {
      const pause = await steps();
      later(wake, again ? 0 : Math.min(pause, LONGEST_MS));
    } catch {
      // The journal here failed: what it holds stays, and is tried again.
      shown = { ...shown, state: lost(shown.state, moment()) };
      changed();
      later(wake, LONGEST_MS);
    } finally {
      running = false;
    }
  };

  const wake = (): void => {
    again = again || running;
    run().catch(() => undefined);
  };

  return {
    shown: () => shown,
    wake,
    hurry: () => {
      hurrying = running;
      shown = { ...shown, state: hurried(shown.state, moment().now) };
      wake();
    },
  };
}
