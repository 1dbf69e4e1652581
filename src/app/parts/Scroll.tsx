// A part of the page that scrolls by itself, and so must be reachable by keyboard.
import type { ReactNode, Ref } from 'react';

interface ScrollProps {
  readonly label: string;
  readonly className: string;
  readonly children: ReactNode;
  readonly at?: Ref<HTMLElement>;
}

export function Scroll({ label, className, children, at }: ScrollProps) {
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- without it a keyboard cannot scroll here
    <section ref={at} className={className} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
