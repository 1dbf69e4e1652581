// Records that were read, as long as they are shown.
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { clock } from '../sync/ServerSection.tsx';
import { linesOf } from './drafts.ts';
import { READ } from './labels.ts';
import type { HealthRecords } from './model.ts';

type One = HealthRecords[number];

function Content({ record }: Pick<One, 'record'>) {
  const lines = linesOf(record);
  if (lines.length === 0) return <p className="quiet">{READ.empty}</p>;
  return (
    <dl>
      {lines.map(({ name, text }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className="health-text">{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function RecordCard({ one }: { readonly one: One }) {
  const { staff } = useBook();
  const { number, person, form, version, record, at, by } = one;
  return (
    <li className="record">
      <h3>
        {READ.record(number)}: {form.replaceAll('-', ' ')} (version {version})
      </h3>
      <p>
        {memberText(staff, person)} {person in staff && <code className="quiet">{person}</code>}
      </p>
      <Content record={record} />
      <p className="quiet">{READ.written(clock(at), memberText(staff, by))}</p>
    </li>
  );
}

export function Records({ records }: { readonly records: HealthRecords }) {
  return (
    <ol className="records">
      {records.map((one) => (
        <RecordCard key={one.number} one={one} />
      ))}
    </ol>
  );
}
