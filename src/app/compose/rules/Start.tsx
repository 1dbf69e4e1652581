// What is known of surfaces at the start. Where nothing is said, the outside of what faced the patient counts as
// contaminated and what lies beneath as not.
import { Button } from 'react-aria-components';
import type { StartingState } from '../../../domain/procedure.ts';
import { LONGEST } from '../../../domain/lengths.ts';
import { words } from '../../words.ts';
import type { Editing } from '../editing.ts';
import { changeStart, startSurfaces, stateStart, unstateStart } from '../model/rules.ts';
import { Chooser, Select, TextLine } from '../parts.tsx';

const STATES: readonly { readonly value: StartingState['state']; readonly name: string }[] = [
  { value: 'contaminated', name: 'contaminated' },
  { value: 'maybe', name: 'may be contaminated' },
  { value: 'uncontaminated', name: 'known not to be contaminated' },
];

export function Start({ draft, edit }: Editing) {
  const name = (surface: string): string => words.surface(draft, surface);
  return (
    <section aria-labelledby="start-title">
      <h2 id="start-title">At the start</h2>
      <p>
        The outside of what faced the patient counts as contaminated, what lies beneath as not. Say so where
        you know better.
      </p>
      <ul className="rows plain">
        {draft.start.map(({ surface, state, reason }) => (
          <li key={surface} className="stated">
            <b>{name(surface)}</b>
            <div className="fields">
              <Select
                label={`State of ${name(surface)}`}
                value={state}
                choices={STATES}
                set={(to) =>
                  edit(changeStart(draft, surface, { state: to as StartingState['state'] }), 'Change a start')
                }
              />
              <TextLine
                label="Why (may stay empty)"
                most={LONGEST.note}
                value={reason ?? ''}
                set={(to) =>
                  edit(changeStart(draft, surface, { reason: to }), 'Change a start', `start-${surface}`)
                }
              />
            </div>
            <Button
              className="button"
              aria-label={`No longer state: ${name(surface)}`}
              onPress={() => edit(unstateStart(draft, surface), 'No longer state a surface')}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <Chooser
        label="State a surface"
        press="Add"
        choices={startSurfaces(draft).map((surface) => ({ value: surface, name: name(surface) }))}
        take={(surface) => edit(stateStart(draft, surface), `State ${name(surface)}`)}
      />
    </section>
  );
}
