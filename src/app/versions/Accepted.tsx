// The departures that one version accepts in writing, or all versions together: what, where, why, by which role, since when
// and until when.
import type { DepartureRow } from '../../versions/departures.ts';
import { Link } from 'wouter';
import { On } from '../parts/On.tsx';
import { words } from '../words.ts';
import { dueText, STAGE_NAMES } from './labels.ts';
import { versionPath } from './model.ts';

interface RowProps {
  readonly row: DepartureRow;
  /** Name the version that it belongs to. */
  readonly named: boolean;
}

function Row({ row, named }: RowProps) {
  const { acceptance, file, procedure, version, stage, days, overdue } = row;
  return (
    <li className={overdue ? 'stated overdue' : 'stated'}>
      <b lang={words.language}>{words.compare.departure(file, acceptance)}</b>
      <p>{acceptance.reason}</p>
      <p className="tags">
        {stage !== 'retired' && (
          <span className={overdue ? 'badge severity-error' : 'badge'}>
            {overdue ? '▲ ' : ''}
            {dueText(days)}
          </span>
        )}
        {named && (
          <>
            <Link href={versionPath(procedure, version)} className="inline-link">
              {file.title}, version {version}
            </Link>
            <span className="badge">{STAGE_NAMES[stage]}</span>
          </>
        )}
        <span className="quiet">
          Accepted by {acceptance.by} on <On day={acceptance.date} />; to be looked at again on{' '}
          <On day={acceptance.review} />.
        </span>
      </p>
    </li>
  );
}

export function AcceptedRows({
  rows,
  named = false,
}: {
  readonly rows: readonly DepartureRow[];
  readonly named?: boolean;
}) {
  return (
    <ul className="rows plain">
      {rows.map((row) => {
        const { finding, step = '', surface = '' } = row.acceptance;
        return (
          <Row key={[row.procedure, row.version, finding, step, surface].join(' ')} row={row} named={named} />
        );
      })}
    </ul>
  );
}
