// Keeps the screen from going dark while an exit goes on. Browsers may refuse it, take it back when the page is hidden, or
// not have it at an address without https: whether it is held is told, so that the screen can show when it is not.
export interface Awake {
  readonly want: (on: boolean) => void;
  readonly isHeld: () => boolean;
}

export function keepAwake(page: Window, changed: () => void): Awake {
  let wanted = false;
  let lock: WakeLockSentinel | undefined;
  const release = (): void => {
    lock?.release().catch(() => undefined);
    lock = undefined;
  };
  const take = async (): Promise<void> => {
    const { wakeLock } = page.navigator as Partial<Pick<Navigator, 'wakeLock'>>;
    if (!wanted || lock || !wakeLock || page.document.visibilityState !== 'visible') return;
    const taken = await wakeLock.request('screen');
    if (!wanted || lock) {
      await taken.release();
      return;
    }
    lock = taken;
    taken.addEventListener('release', () => {
      if (lock === taken) lock = undefined;
      changed();
    });
    changed();
  };
  const tryTo = (): void => {
    take().catch(changed);
  };
  page.document.addEventListener('visibilitychange', tryTo);
  return {
    want: (on) => {
      wanted = on;
      if (on) tryTo();
      else release();
    },
    isHeld: () => lock !== undefined,
  };
}
