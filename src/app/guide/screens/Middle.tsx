// The part of the observer's screen that scrolls by itself, and the word under it where more lies below: nothing on this screen
// may look as if it were all while something is out of sight.
import { type ReactNode, type RefObject, useEffect, useState } from 'react';
import { Scroll } from '../../parts/Scroll.tsx';

interface MiddleProps {
  readonly label: string;
  readonly moreBelow: string;
  readonly at: RefObject<HTMLElement | null>;
  readonly children: ReactNode;
}

/** Pixels that a browser rounds away. */
const ROUNDED = 2;

function useMoreBelow(at: RefObject<HTMLElement | null>): boolean {
  const [more, setMore] = useState(false);
  useEffect(() => {
    const room = at.current;
    if (!room) return undefined;
    const look = (): void => setMore(room.scrollHeight - room.clientHeight - room.scrollTop > ROUNDED);
    const resized = new ResizeObserver(look);
    resized.observe(room);
    const changed = new MutationObserver(look);
    changed.observe(room, { attributes: true, childList: true, characterData: true, subtree: true });
    room.addEventListener('scroll', look, { passive: true });
    return () => {
      resized.disconnect();
      changed.disconnect();
      room.removeEventListener('scroll', look);
    };
  }, [at]);
  return more;
}

export function Middle({ label, moreBelow, at, children }: MiddleProps) {
  const more = useMoreBelow(at);
  return (
    <div className="g-main">
      <Scroll className="g-middle" label={label} at={at}>
        {children}
      </Scroll>
      <p className="g-below" hidden={!more}>
        ▼ {moreBelow}
      </p>
    </div>
  );
}
