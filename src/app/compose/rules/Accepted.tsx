// What the unit accepts in writing: which departure, why, by whom, since when, and when it is looked at again. Nothing is
// written down before all of it is said. An open route cannot be accepted.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { isUnmatched } from '../../../check/acceptance.ts';
import type { Acceptance } from '../../../domain/procedure.ts';
import { Day } from '../../parts/Day.tsx';
import { useLanding } from '../../parts/useLanding.ts';
import { today } from '../../today.ts';
import { words } from '../../words.ts';
import type { Checked } from '../checked.ts';
import type { Editing } from '../editing.ts';
import { accept, acceptables, withdraw } from '../model/rules.ts';
import { Select, TextLine } from '../parts.tsx';

interface AcceptedProps extends Editing {
  readonly checked: Checked;
}

/** Said of what a whole check of this very draft found nothing of. */
function NotFound({ checked, one }: { readonly checked: Checked; readonly one: Acceptance }) {
  const { judged, complete, current } = checked;
  if (!judged || !complete || !current || !isUnmatched(one, judged.findings)) return null;
  return (
    <p>The check does not find this in the draft: it may be needed no more, or stand at another step.</p>
  );
}

interface Said {
  readonly reason: string;
  readonly by: string;
  readonly date: string;
  readonly review: string;
}

function lacks({ reason, by, date, review }: Said): string | undefined {
  if (reason.trim() === '') return 'Say why it is accepted.';
  if (by.trim() === '') return 'Say who accepts it, by role.';
  if (date === '' || review === '') return 'Say when, and when it is looked at again.';
  return review < date ? 'The review comes before the day it is accepted.' : undefined;
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
  const missing = what ? lacks(said) : 'Choose what is accepted.';
  const write = (): void => {
    if (!what || missing !== undefined) return;
    const acceptance: Acceptance = { ...what, ...said, reason: said.reason.trim(), by: said.by.trim() };
    edit(accept(draft, acceptance), 'Accept a departure');
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
      <TextLine label="Why" long value={said.reason} set={(reason) => say({ ...said, reason })} />
      <TextLine
        label="Who accepts it, by role (never a name)"
        value={said.by}
        set={(by) => say({ ...said, by })}
      />
      <Day label="Accepted on" value={said.date} set={(date) => say({ ...said, date })} />
      <Day
        label="To be looked at again on"
        value={said.review}
        least={said.date}
        set={(review) => say({ ...said, review })}
      />
      <p className="actions">
        <Button className="button main" isDisabled={missing !== undefined} onPress={write}>
          Accept it
        </Button>{' '}
        <output className="quiet">{missing}</output>
      </p>
    </div>
  );
}

export function Accepted(props: AcceptedProps) {
  const { draft, edit, checked } = props;
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
        {draft.accepted.map((one, index) => {
          const what = words.compare.departure(draft, one);
          return (
            <li key={`${one.finding} ${one.step ?? ''} ${one.surface ?? ''}`} className="stated">
              <b>{what}</b>
              <p>
                {one.reason}{' '}
                <span className="quiet">
                  {one.by}, {one.date}; to be looked at again on {one.review}.
                </span>
              </p>
              <NotFound checked={checked} one={one} />
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
        })}
      </ul>
      <AcceptOne {...props} land={land} />
    </section>
  );
}
