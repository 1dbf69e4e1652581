// Where the focus goes when what was pressed goes away or can no longer be pressed. Otherwise a keyboard starts again at the top
// of the page, and a screen reader falls silent.
import { type RefObject, useCallback, useRef } from 'react';

/** Nothing that can be worked from has the focus. */
export function focusLost(): boolean {
  const at = document.activeElement;
  return at === null || at === document.body || at.matches(':disabled');
}

/** Once the page is drawn anew, and a dialog has given the focus back where it could. */
export function landOn(target: () => HTMLElement | null): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      if (focusLost()) target()?.focus();
    }),
  );
}

export function useLanding<Place extends HTMLElement>(): {
  readonly place: RefObject<Place | null>;
  readonly land: () => void;
} {
  const place = useRef<Place>(null);
  const land = useCallback(() => landOn(() => place.current), []);
  return { place, land };
}
