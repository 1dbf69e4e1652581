// Who read whose records, when and why, as the journal says. Looking here shows nothing of any record.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { clock } from '../sync/ServerSection.tsx';
import { call } from '../sync/wire.ts';
import { READINGS, REASONS } from './labels.ts';
import type { Refused } from '../door/model.ts';
import type { Reading } from './model.ts';
import type { PartProps } from './Read.tsx';
import { Table } from '../parts/Table.tsx';
import { Wrong } from '../parts/Wrong.tsx';

const AT_ONCE = 50;

/** All of them, latest first. */
async function allReadings(): Promise<readonly Reading[] | Refused> {
  const all: Reading[] = [];
  for (let from = 1; ; ) {
    const answer = await call('list-health-readings', { query: { from: String(from) } });
    if (answer.is !== 'answer') return answer;
    all.push(...answer.body.readings);
    if (!answer.body.more) return all.toReversed();
    from = answer.body.next;
  }
}

function Row({ reading }: { readonly reading: Reading }) {
  const { staff } = useBook();
  const { at, by, account, people, records, why } = reading;
  return (
    <tr>
      <th scope="row">{clock(at)}</th>
      <td>
        {memberText(staff, by)} <span className="quiet">{READINGS.account(account)}</span>
      </td>
      <td>{people.map((person) => memberText(staff, person)).join(', ') || READINGS.nothing}</td>
      <td>{records.join(', ') || READINGS.nothing}</td>
      <td>{REASONS[why]}</td>
    </tr>
  );
}

function Rows({ readings }: { readonly readings: readonly Reading[] }) {
  return (
    <Table label={READINGS.list} columns={READINGS.columns}>
      {readings.map((reading) => (
        <Row key={reading.number} reading={reading} />
      ))}
    </Table>
  );
}

export function Readings({ met }: PartProps) {
  const [all, setAll] = useState<readonly Reading[]>();
  const [most, setMost] = useState(AT_ONCE);
  const [wrong, setWrong] = useState('');
  const show = async (): Promise<void> => {
    const found = await allReadings();
    const isList = 'length' in found;
    setWrong(isList ? '' : met(found));
    setAll(isList ? found : undefined);
  };
  const shown = all?.slice(0, most) ?? [];
  const says = all && (all.length === 0 ? READINGS.none : READINGS.count(shown.length, all.length));
  return (
    <section aria-labelledby="health-readings">
      <h2 id="health-readings">{READINGS.title}</h2>
      <p>{READINGS.says}</p>
      <p className="actions">
        <Button
          className="button"
          onPress={() => {
            show().catch(() => undefined);
          }}
        >
          {all ? READINGS.again : READINGS.press}
        </Button>
        <output>{says}</output>
      </p>
      <Wrong text={wrong} />
      {shown.length > 0 && <Rows readings={shown} />}
      {all && all.length > most && (
        <Button className="button" onPress={() => setMost(most + AT_ONCE)}>
          {READINGS.older}
        </Button>
      )}
    </section>
  );
}
