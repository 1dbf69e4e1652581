// A run as the screens see it: found or begun, then redrawn with every state of the guide.
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { type Screen, screenOf, type State } from '../../../guide/index.ts';
import { awake, onAwake, onGone, type Opened, openExit, takeExit } from '../shell/rooms.ts';
import type { Run } from '../shell/runner.ts';

type Found = Opened | 'unsaved-elsewhere';

export interface Opening {
  /** Undefined while it is being looked for. */
  readonly is: Found | undefined;
  /** Looks whether another tab has let it go. */
  readonly look: () => void;
  readonly take: () => void;
}

export function useOpened(exit: string): Opening {
  const [found, setFound] = useState<{ readonly exit: string; readonly is: Found }>();
  const set = useCallback((is: Found) => setFound({ exit, is }), [exit]);
  const look = useCallback((): void => {
    openExit(exit).then(set, () => set('unknown'));
  }, [exit, set]);
  const take = useCallback((): void => {
    takeExit(exit).then(set, () => set('unknown'));
  }, [exit, set]);
  useEffect(look, [look]);
  useEffect(() => onGone((gone) => gone === exit && set('elsewhere')), [exit, set]);
  return { is: found?.exit === exit ? found.is : undefined, look, take };
}

export interface Shown {
  readonly state: State;
  readonly screen: Screen;
}

export function useShown(run: Run): Shown {
  const state = useSyncExternalStore(run.subscribe, run.state);
  const screen = useMemo(() => screenOf(state), [state]);
  return { state, screen };
}

/** From so long on, storing is said to take long. The house's own choice. */
const LONG_MS = 2000;

/**
 * Whether storing has failed or takes long, until it is over: only then is going on unsaved offered. What is merely on its
 * way to the store is there before anybody could press it.
 */
export function useTroubled({ saving, stalled }: Pick<Screen, 'saving' | 'stalled'>): boolean {
  const [troubled, setTroubled] = useState(false);
  // What has failed stays in trouble while it is tried again.
  const settled = stalled || !saving;
  if (settled && troubled !== stalled) setTroubled(stalled);
  useEffect(() => {
    if (!saving) return undefined;
    const timer = setTimeout(() => setTroubled(true), LONG_MS);
    return () => clearTimeout(timer);
  }, [saving]);
  return troubled;
}

/** What became of the last line that was to be read aloud; it may change while the line stays. */
export const useSpeech = (run: Run): ReturnType<Run['speech']> =>
  useSyncExternalStore(run.subscribe, run.speech);

export const useAwake = (): boolean => useSyncExternalStore(onAwake, awake.isHeld);

/** The device's clock, several times a second while something runs. */
export function useNow(runs: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!runs) return undefined;
    const timer = setInterval(() => setNow(Date.now()), 250);
    return () => clearInterval(timer);
  }, [runs]);
  return now;
}
