// The invented unit by one press, and its people with their passwords, shown once.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { DEMO } from './labels.ts';
import { ROLE } from './leadLabels.ts';
import type { People } from './model.ts';
import { Table } from '../parts/Table.tsx';
import { Wrong } from '../parts/Wrong.tsx';

/** `make` gives why it was not made. */
export function Demo({ make }: { readonly make: () => Promise<string> }) {
  const [wrong, setWrong] = useState('');
  return (
    <section className="demo" aria-labelledby="unit-demo">
      <h2 id="unit-demo">{DEMO.title}</h2>
      <p>{DEMO.says}</p>
      <Wrong text={wrong} />
      <p className="actions">
        <Button
          className="button"
          onPress={() => {
            make().then(setWrong, () => undefined);
          }}
        >
          {DEMO.press}
        </Button>
      </p>
    </section>
  );
}

interface PeopleProps {
  readonly people: People;
  readonly go: () => void;
}

export function DemoPeople({ people, go }: PeopleProps) {
  return (
    <section className="demo" aria-labelledby="unit-people">
      <h2 id="unit-people">{DEMO.made}</h2>
      <p>{DEMO.people}</p>
      <Table label={DEMO.list} columns={DEMO.columns}>
        {people.map(({ name, role, password }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{ROLE[role]}</td>
            <td>
              <code>{password}</code>
            </td>
          </tr>
        ))}
      </Table>
      <p className="actions">
        <Button className="button main" onPress={go}>
          {DEMO.go}
        </Button>
      </p>
    </section>
  );
}
