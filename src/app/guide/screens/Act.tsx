// A button of the guide: large enough for a gloved finger, saying what it does in words.
import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';

interface ActProps {
  readonly children: ReactNode;
  readonly press: () => void;
  readonly kind?: 'main' | 'stop' | 'plain' | 'wrong';
  readonly keys?: string;
  readonly pressed?: boolean;
}

export function Act({ children, press, kind = 'plain', keys, pressed }: ActProps) {
  return (
    <Button
      className={`g-act ${kind}`}
      onPress={press}
      {...(keys === undefined ? {} : { 'aria-keyshortcuts': keys })}
      {...(pressed === undefined ? {} : { 'aria-pressed': pressed })}
    >
      {children}
    </Button>
  );
}
