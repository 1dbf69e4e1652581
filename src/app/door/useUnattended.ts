// A page that nobody uses signs out: on a shared desk whoever comes next must not find what was read. Told a minute before, and
// stayed by any key or touch. The page counts by itself, because a paired device's own requests keep the server's session alive.
import { useEffect, useRef, useState } from 'react';

/** The house's own choice, shorter than the server's 30 minutes. */
const LEAVE_MS = 10 * 60_000;
const WARN_MS = LEAVE_MS - 60_000;
/** How often somebody who types is told to the server: well within its 30 minutes. */
const TELL_MS = 5 * 60_000;
const LOOK_MS = 5_000;
const SIGNS = ['keydown', 'pointerdown', 'wheel', 'touchmove', 'input'] as const;

interface Acts {
  readonly leave: () => void;
  readonly stay: () => void;
}

/** Whether it is about to leave. */
export function useUnattended({ leave, stay }: Acts): boolean {
  const [soon, setSoon] = useState(false);
  const acts = useRef<Acts>({ leave, stay });
  useEffect(() => {
    acts.current = { leave, stay };
  });
  useEffect(() => {
    let used = Date.now();
    let told = used;
    const use = (): void => {
      used = Date.now();
      setSoon(false);
    };
    const look = (isBack = false): void => {
      const now = Date.now();
      if (now - used >= LEAVE_MS) {
        acts.current.leave();
        return;
      }
      setSoon(now - used >= WARN_MS);
      if (!isBack && (now - told < TELL_MS || used <= told)) return;
      told = now;
      acts.current.stay();
    };
    // In another tab somebody may have signed out meanwhile.
    const back = (): void => {
      if (document.visibilityState === 'visible') look(true);
    };
    document.addEventListener('visibilitychange', back);
    const watch = setInterval(look, LOOK_MS);
    for (const sign of SIGNS) window.addEventListener(sign, use, { capture: true, passive: true });
    return () => {
      clearInterval(watch);
      document.removeEventListener('visibilitychange', back);
      for (const sign of SIGNS) window.removeEventListener(sign, use, { capture: true });
    };
  }, []);
  return soon;
}
