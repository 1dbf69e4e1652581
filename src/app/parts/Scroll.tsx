// A part of the page that scrolls by itself, and so must be reachable by keyboard.
import type { ReactNode, Ref } from 'react';

interface ScrollProps {
  readonly label: string;
  readonly className: string;
  readonly children: ReactNode;
  readonly at?: Ref<HTMLElement>;
}

/** A section is no control, but one that scrolls must take the focus or a keyboard cannot scroll it. */
const REACHABLE = { tabIndex: 0 } as const;

export function Scroll({ label, className, children, at }: ScrollProps) {
  return (
    <section ref={at} className={className} aria-label={label} {...REACHABLE}>
      {children}
    </section>
  );
}
