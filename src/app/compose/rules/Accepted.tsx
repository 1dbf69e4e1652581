// What the unit accepts in writing: which departure, why, by whom, since when, and when it is looked at again. Nothing is
// written down before all of it is said. An open route cannot be accepted.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { isOverdue, isUnmatched } from '../../../check/acceptance.ts';
import type { Acceptance } from '../../../domain/procedure.ts';
import { useLanding } from '../../parts/useLanding.ts';
import { today } from '../../today.ts';
import { words } from '../../words.ts';
import type { Checked } from '../checked.ts';
import type { Editing } from '../editing.ts';
import { accept, acceptables, withdraw } from '../model/rules.ts';
import { Select } from '../parts.tsx';
import { Anew } from './Anew.tsx';
import { lacks, type Said, SaidFields, trimmed } from './Said.tsx';

interface AcceptedProps extends Editing {
  readonly checked: Checked;
}

/** Said of what a whole check of this very draft found nothing of. */
function NotFound({ checked, one }: { readonly checked: Checked; readonly one: Acceptance }) {
  const { judged, complete, current } = checked;
  if (!judged || !complete || !current || !isUnmatched(one, judged.procedure, judged.findings)) return null;
  return (
    <p>The check does not find this in the draft: it may be needed no more, or stand at another step.</p>
  );
}

function AcceptOne({ draft, edit, checked, land }: AcceptedProps & { readonly land: () => void }) {
  const [chosen, choose] = useState('');
  const [said, say] = useState<Said>({ reason: '', by: '', date: today(), review: '' });
  const all = checked.judged
    ? acceptables(
        checked.judged.procedure,
        checked.shown.map(({ finding }) => finding),
      )
    : [];
  const byKey = new Map(all.map((one) => [JSON.stringify(one), one]));
  const what = byKey.get(chosen);
  const missing = what ? lacks(said, today()) : 'Choose what is accepted.';
  const write = (): void => {
    if (!what || missing !== undefined) return;
    edit(accept(draft, { ...what, ...trimmed(said) }), 'Accept a departure');
    choose('');
    // The next is most often accepted by the same role on the same day, for a reason of its own.
    say({ ...said, reason: '' });
    land();
  };
  if (!checked.judged)
    return <p className="quiet">What can be accepted is known once the draft is checked.</p>;
  if (all.length === 0) return <p className="quiet">Nothing that was found could be accepted.</p>;
  return (
    <div className="fields">
      <Select
        long
        label="Accept in writing"
        value={what ? chosen : ''}
        none="(choose)"
        choices={[...byKey].map(([value, one]) => ({ value, name: words.compare.departure(draft, one) }))}
        set={choose}
      />
      <SaidFields said={said} say={say} />
      <p className="actions">
        <Button className="button main" isDisabled={missing !== undefined} onPress={write}>
          Accept it
        </Button>{' '}
        <output className="quiet">{missing}</output>
      </p>
    </div>
  );
}

interface RowProps extends AcceptedProps {
  readonly one: Acceptance;
  readonly index: number;
  readonly land: () => void;
}

function Row({ draft, edit, checked, one, index, land }: RowProps) {
  const what = words.compare.departure(draft, one);
  const overdue = isOverdue(one, today());
  return (
    <li className={overdue ? 'stated overdue' : 'stated'}>
      <b>{what}</b>
      <p>
        {one.reason}{' '}
        <span className="quiet">
          {one.by}, {one.date}; to be looked at again on {one.review}.
        </span>
      </p>
      {overdue && (
        <p>
          <span className="badge severity-error">▲ overdue since {one.review}</span> It counts as not
          accepted: accept it anew, or mend the step.
        </p>
      )}
      <NotFound checked={checked} one={one} />
      <Anew draft={draft} edit={edit} index={index} one={one} what={what} land={land} />
      <Button
        className="button"
        aria-label={`No longer accept: ${what}`}
        onPress={() => {
          edit(withdraw(draft, index), 'No longer accept a departure');
          land();
        }}
      >
        No longer accept
      </Button>
    </li>
  );
}

export function Accepted(props: AcceptedProps) {
  const { draft } = props;
  const { place, land } = useLanding<HTMLHeadingElement>();
  return (
    <section aria-labelledby="accepted-title">
      <h2 id="accepted-title" ref={place} tabIndex={-1}>
        Accepted in writing
      </h2>
      <p>
        A departure from published practice, or a place left bare, may be accepted with a reason, by a role,
        to be looked at again. It stays visible. An open route cannot be accepted: it must be mended.
      </p>
      <ul className="rows plain">
        {draft.accepted.map((one, index) => (
          <Row key={JSON.stringify(one)} {...props} one={one} index={index} land={land} />
        ))}
      </ul>
      <AcceptOne {...props} land={land} />
    </section>
  );
}
