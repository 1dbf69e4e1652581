// Who takes part: role, where they stand, which hand they use, what they wear, what stays bare on purpose.
import { Button } from 'react-aria-components';
import { LONGEST } from '../../../domain/lengths.ts';
import { PLACE_NAMES, placesOf, TISSUE } from '../../../domain/places.ts';
import { type Person, type Role, ROLES } from '../../../domain/procedure.ts';
import { Ticks } from '../../parts/Choices.tsx';
import { words } from '../../words.ts';
import { type Editing, stepNumbers } from '../editing.ts';
import { nameFrom, renamed } from '../model/names.ts';
import { addPerson, changePerson, removePerson, stepsWith } from '../model/people.ts';
import { NameLine, Select } from '../parts.tsx';
import { Covering } from './Covering.tsx';
import { Worn } from './Worn.tsx';

const BARE_PLACES = PLACE_NAMES.filter((name) => TISSUE[name]);

interface OneProps extends Editing {
  readonly person: Person;
}

function About({ draft, edit, person }: OneProps) {
  const change = (part: Partial<Person>, done: string) => edit(changePerson(draft, person.id, part), done);
  return (
    <div className="fields">
      <NameLine
        label="Name in this file (never a real one)"
        value={person.id}
        most={LONGEST.name}
        rename={(typed) => edit(renamed(draft, 'person', person.id, nameFrom(typed)), `Rename ${person.id}`)}
      />
      <Select
        label="Role"
        value={person.role}
        choices={ROLES.map((role) => ({ value: role, name: words.role(role) }))}
        set={(role) => change({ role: role as Role }, 'Change a role')}
      />
      <Select
        label="Stands at the start in"
        value={person.starts}
        choices={draft.zones.map(({ id }) => ({ value: id, name: id.replaceAll('-', ' ') }))}
        set={(starts) => change({ starts }, 'Change where somebody starts')}
      />
      <Select
        label="Uses first the"
        value={person.hand}
        choices={[
          { value: 'right', name: 'right hand' },
          { value: 'left', name: 'left hand' },
        ]}
        set={(hand) => change({ hand: hand === 'left' ? 'left' : 'right' }, 'Change a hand')}
      />
    </div>
  );
}

function BareOnPurpose({ draft, edit, person }: OneProps) {
  const chosen = new Set(
    BARE_PLACES.filter((name) => placesOf(name).every((place) => person.leavesBare.includes(place))),
  );
  return (
    <details>
      <summary>Bare on purpose ({chosen.size})</summary>
      <Ticks
        label="Places that this equipment leaves bare on purpose"
        values={BARE_PLACES}
        chosen={chosen}
        set={(now) =>
          edit(
            changePerson(draft, person.id, {
              leavesBare: BARE_PLACES.filter((name) => now.has(name)).flatMap(placesOf),
            }),
            'Change what stays bare',
          )
        }
        nameOf={(name) => name}
      />
    </details>
  );
}

function One(props: OneProps) {
  const { draft, edit, person } = props;
  const used = stepsWith(draft, person.id);
  const who = words.person(draft, person.id);
  const last = draft.people.length < 2;
  return (
    <section className="card" aria-labelledby={`person-${person.id}`}>
      <h3 id={`person-${person.id}`} className="sentence">
        {who}
      </h3>
      <div className="person">
        <div>
          <About {...props} />
          <h4>Worn, in the order of putting on</h4>
          <Worn {...props} />
          <BareOnPurpose {...props} />
          <div className="actions">
            <Button
              className="button"
              aria-label={`Remove ${who}`}
              isDisabled={used.length > 0 || last}
              onPress={() => edit(removePerson(draft, person.id), `Remove ${who}`)}
            >
              Remove
            </Button>
            {used.length > 0 && <span className="quiet">Takes part in {stepNumbers(used)}.</span>}
          </div>
        </div>
        <Covering draft={draft} person={person} />
      </div>
    </section>
  );
}

export function People({ draft, edit }: Editing) {
  return (
    <section aria-labelledby="people-title">
      <h2 id="people-title">People and what they wear</h2>
      {draft.people.map((person) => (
        <One key={person.id} draft={draft} edit={edit} person={person} />
      ))}
      <div className="actions">
        {ROLES.map((role) => (
          <Button
            key={role}
            className="button"
            onPress={() => edit(addPerson(draft, role), `Add: ${words.role(role)}`)}
          >
            + {words.role(role)}
          </Button>
        ))}
      </div>
    </section>
  );
}
