// A run as the screens see it: found or begun, then redrawn with every state of the guide.
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { type Screen, screenOf, type State } from '../../../guide/index.ts';
import { awake, onAwake, openExit, type Unopened } from '../shell/rooms.ts';
import type { Run } from '../shell/runner.ts';

/** Undefined while it is being looked for. */
export function useOpened(exit: string): Run | Unopened | undefined {
  const [found, setFound] = useState<{ readonly exit: string; readonly is: Run | Unopened }>();
  useEffect(() => {
    let current = true;
    openExit(exit).then(
      (is) => current && setFound({ exit, is }),
      () => current && setFound({ exit, is: 'unknown' }),
    );
    return () => {
      current = false;
    };
  }, [exit]);
  return found?.exit === exit ? found.is : undefined;
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
