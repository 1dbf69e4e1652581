// A first password, shown once: it lies in this page's memory alone, until it is put away or the page is left.
import { Button } from 'react-aria-components';
import { ACCOUNTS } from './leadLabels.ts';

export interface Once {
  readonly name: string;
  readonly password: string;
}

interface OnceProps {
  readonly once: Once | undefined;
  readonly putAway: () => void;
}

export function OncePassword({ once, putAway }: OnceProps) {
  return (
    <div aria-live="polite">
      {once && (
        <div className="once">
          <p>
            {ACCOUNTS.password(once.name)}: <code className="once-password">{once.password}</code>
          </p>
          <p>{ACCOUNTS.once}</p>
          <p className="actions">
            <Button className="button" onPress={putAway}>
              {ACCOUNTS.putAway}
            </Button>
          </p>
        </div>
      )}
    </div>
  );
}
