// What is accepted is looked at again: accepted anew by a role, with a new day of review, and perhaps for another reason. The old day
// is gone from the draft; the version that had it keeps it.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Acceptance } from '../../../domain/procedure.ts';
import { today } from '../../today.ts';
import type { Editing } from '../editing.ts';
import { renew } from '../model/rules.ts';
import { lacks, type Said, SaidFields, trimmed } from './Said.tsx';

interface AnewProps extends Editing {
  readonly index: number;
  readonly one: Acceptance;
  /** What it is, in words. */
  readonly what: string;
  readonly land: () => void;
}

function Fields({ draft, edit, index, one, what, land }: AnewProps) {
  const [said, say] = useState<Said>({ reason: one.reason, by: '', date: today(), review: '' });
  const missing = lacks(said, today());
  const write = (): void => {
    if (missing !== undefined) return;
    edit(renew(draft, index, trimmed(said)), 'Accept a departure anew');
    land();
  };
  return (
    <div className="fields">
      <SaidFields said={said} say={say} />
      <p className="actions">
        <Button
          className="button"
          aria-label={`Accept it anew: ${what}`}
          isDisabled={missing !== undefined}
          onPress={write}
        >
          Accept it anew
        </Button>{' '}
        <output className="quiet">{missing}</output>
      </p>
    </div>
  );
}

/** The fields are there only while they are wanted. */
export function Anew(props: AnewProps) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Look at it again, and accept it anew</summary>
      {open && <Fields {...props} />}
    </details>
  );
}
