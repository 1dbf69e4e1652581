// Runs one exit: gives the guide what is pressed and what happens, and does what it asks for. The screen moves only with the
// guide's own state, which waits for the store. A timer wakes the guide when it is due; nothing else moves by itself.
import { type Effect, type Event, type Found, next, type Press, type State } from '../../../guide/index.ts';
import type { ExitLog } from '../log/exitLog.ts';
import type { Signal } from './signals.ts';
import type { Speech, Voice } from './voice.ts';

export interface RunnerParts {
  readonly log: ExitLog;
  readonly voice: Voice;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Calls back after so many milliseconds; what it returns calls it off. */
  readonly wait: (milliseconds: number, then: () => void) => () => void;
  readonly keepAwake: (on: boolean) => void;
  readonly signal: (signal: Signal) => void;
  readonly search: (asked: Extract<Effect, { do: 'search-continuation' }>) => Promise<Found>;
}

export interface Run {
  readonly exit: string;
  readonly state: () => State;
  /** What became of the last line that was to be read aloud. */
  readonly speech: () => Speech;
  /** Why entries were not stored, the last time it failed. */
  readonly trouble: () => string;
  readonly mute: (off: boolean) => void;
  readonly subscribe: (listener: () => void) => () => void;
  /** `by` is the observer where it is not said. */
  readonly press: (press: Press, by?: string | null) => void;
  /** The device was away: timers are looked at again. */
  readonly wake: () => void;
  /** Another tab is to run it: takes no more presses and saves what is not saved. False, and on as before, where it cannot. */
  readonly settle: () => Promise<boolean>;
  /** Another tab runs it: nothing is recorded, spoken or timed here any more. */
  readonly close: () => void;
}

/** How long the store is given before an exit goes to another tab. The house's own choice. */
const SAVING_MS = 1200;
/** After a store that failed it is tried again by itself. The house's own choice. */
const AGAIN_MS = 5000;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** What wakes the guide when a time is due. */
function timersOf({ wait, now }: Pick<RunnerParts, 'wait' | 'now'>, clock: () => void) {
  const off = new Map<string, () => void>();
  const stop = (timer: string): void => {
    off.get(timer)?.();
    off.delete(timer);
  };
  const start = (timer: string, due: number): void => {
    stop(timer);
    off.set(timer, wait(Math.max(0, due - now()), clock));
  };
  return { start, stop };
}

/** Whoever is told that something changed. */
function audience() {
  const listeners = new Set<() => void>();
  const subscribe = (listener: () => void): (() => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  const tellAll = (): void => {
    for (const listener of listeners) listener();
  };
  return { subscribe, tellAll };
}

/** Until the store has answered, or for so long. */
const until = async (
  isAnswered: () => boolean,
  { subscribe, wait }: Pick<Run, 'subscribe'> & Pick<RunnerParts, 'wait'>,
): Promise<void> =>
  new Promise((resolve) => {
    if (isAnswered()) {
      resolve();
      return;
    }
    const off = wait(SAVING_MS, () => done());
    const deaf = subscribe(() => isAnswered() && done());
    const done = (): void => {
      off();
      deaf();
      resolve();
    };
  });

/** Reads aloud unless it is muted, and remembers what became of the line: without a voice for one of those it is for, none. */
function readerOf(voice: Voice, changed: () => void) {
  const silent = new Set<string>();
  let muted = false;
  const told = (language: string, speech: Speech): void => {
    if (speech === 'no-voice') silent.add(language);
    else silent.delete(language);
  };
  return {
    speech: (): Speech => (muted ? 'off' : silent.size > 0 ? 'no-voice' : 'spoken'),
    /** Another line begins. */
    begin: (): void => silent.clear(),
    read: (text: string, language: string): void => {
      if (muted) return;
      const late = (speech: Speech): void => {
        told(language, speech);
        changed();
      };
      told(language, voice.speak(text, language, late));
    },
    mute: (off: boolean): void => {
      muted = off;
      silent.clear();
      if (off) voice.hush();
      changed();
    },
  };
}

type Outside = Exclude<Effect, { do: 'append' | 'speak' | 'search-continuation' }>;

/** Effects whose outcome the guide is not told. */
function outside(
  { keepAwake, signal }: Pick<RunnerParts, 'keepAwake' | 'signal'>,
  timers: ReturnType<typeof timersOf>,
  effect: Outside,
): void {
  if (effect.do === 'start-timer') timers.start(effect.timer, effect.due);
  else if (effect.do === 'stop-timer') timers.stop(effect.timer);
  else if (effect.do === 'keep-awake') keepAwake(effect.on);
  else signal(effect);
}

export function createRun(begun: readonly [State, readonly Effect[]], parts: RunnerParts): Run {
  let [state] = begun;
  let trouble = '';
  /** Presses and times count no more: it is on its way to another tab, or there. */
  let leaving = false;
  const { subscribe, tellAll } = audience();
  const reader = readerOf(parts.voice, tellAll);

  const happen = (event: Event): void => {
    const [after, effects] = next(state, event);
    state = after;
    if (effects.some((effect) => effect.do === 'speak')) reader.begin();
    for (const effect of effects) perform(effect);
    tellAll();
  };
  const clock = (): void => {
    if (!leaving) happen({ is: 'time', at: parts.now(), by: null });
  };
  const timers = timersOf(parts, clock);

  const retry = (): void => happen({ is: 'retry', at: parts.now(), by: state.core.people.observer });
  /** Room may have been made meanwhile. One at a time, however much has failed. */
  const again = (): void => {
    if (state.unsaved.length > 0 && state.saving.length === 0 && !leaving) retry();
  };
  let soon = (): void => undefined;
  const append = ({ entries }: Extract<Effect, { do: 'append' }>): void => {
    const ids = entries.map(({ id }) => id);
    const answer = (is: 'stored' | 'store-failed'): void =>
      happen({ is, entries: ids, at: parts.now(), by: null });
    parts.log.append(entries).then(
      () => answer('stored'),
      (error: unknown) => {
        trouble = reasonOf(error);
        answer('store-failed');
        soon();
        soon = parts.wait(AGAIN_MS, again);
      },
    );
  };

  const search = (asked: Extract<Effect, { do: 'search-continuation' }>): void => {
    const answer = (found: Found): void =>
      happen({ is: 'continuation', search: asked.search, found, at: parts.now(), by: null });
    parts.search(asked).then(answer, () => answer('not-worked-out'));
  };
  function perform(effect: Effect): void {
    if (effect.do === 'append') append(effect);
    else if (effect.do === 'speak') reader.read(effect.text, effect.language);
    else if (effect.do === 'search-continuation') search(effect);
    else outside(parts, timers, effect);
  }

  /** Saves once more what is not saved; whether everything is. */
  const save = async (): Promise<boolean> => {
    const isAnswered = (): boolean => state.saving.length === 0;
    await until(isAnswered, { subscribe, wait: parts.wait });
    if (state.unsaved.length > 0) retry();
    await until(isAnswered, { subscribe, wait: parts.wait });
    return state.unsaved.length === 0 && isAnswered();
  };

  for (const effect of begun[1]) perform(effect);
  return {
    exit: state.core.exit,
    state: () => state,
    speech: reader.speech,
    trouble: () => trouble,
    mute: reader.mute,
    subscribe,
    press: (press, by = state.core.people.observer) => {
      if (leaving) return;
      parts.voice.hush();
      happen({ ...press, at: parts.now(), by });
    },
    wake: clock,
    settle: async () => {
      leaving = true;
      leaving = await save();
      return leaving;
    },
    close: () => {
      leaving = true;
      parts.voice.hush();
      parts.keepAwake(false);
    },
  };
}
