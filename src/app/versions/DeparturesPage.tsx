// Every departure from published practice that any version accepts in writing, the overdue first.
import { Link } from 'wouter';
import { departureRows, reviewsDue } from '../../versions/departures.ts';
import { useBook } from '../journal/useBook.ts';
import { On } from '../parts/On.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { AcceptedRows } from './Accepted.tsx';
import { fileIn } from './files.ts';
import { counted, dueText } from './labels.ts';
import { versionPath } from './model.ts';
import { Opening } from './Opening.tsx';

export function DeparturesPage({ today }: { readonly today: string }) {
  const state = useBook();
  useTitle('Accepted departures');
  const rows = departureRows(state.versions, (content) => fileIn(state, content), today);
  const overdue = rows.filter((row) => row.overdue).length;
  const due = reviewsDue(state.versions, today);
  return (
    <div className="narrow">
      <h1>Accepted departures</h1>
      <p className="lead">
        What the unit’s versions accept in writing, to be looked at again on a day. As of <On day={today} />:{' '}
        {overdue === 0 ? 'none is overdue' : `${overdue} overdue`}.
      </p>
      <Opening />
      {rows.length === 0 && <p>No version in the journal accepts a departure.</p>}
      <AcceptedRows rows={rows} named />
      <h2>Versions to be looked at again</h2>
      {due.length === 0 && <p>No version is approved.</p>}
      <ul className="plain">
        {due.map(({ procedure, version, content, reviewOn, days }) => (
          <li key={`${procedure} ${version}`}>
            <Link href={versionPath(procedure, version)} className="inline-link">
              {fileIn(state, content)?.title ?? procedure}, version {version}
            </Link>{' '}
            <span className={days < 0 ? 'badge severity-error' : 'badge'}>
              {days < 0 ? '▲ ' : ''}
              {dueText(days)}
            </span>{' '}
            <span className="quiet">
              by <On day={reviewOn} />
            </span>
          </li>
        ))}
      </ul>
      <p className="quiet">{counted(rows.length, 'departure')} in all.</p>
    </div>
  );
}
