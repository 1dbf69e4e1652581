// The departures that one version accepts in writing, or all versions together: what, where, why, by which role, since when
// and until when.
import { isUnmatched } from '../../check/acceptance.ts';
import type { Finding } from '../../check/finding.ts';
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
  /** What a whole check of the version found; absent where none was made. */
  readonly findings: readonly Finding[] | undefined;
}

function Row({ row, named, findings }: RowProps) {
  const { acceptance, file, procedure, version, stage, days, overdue } = row;
  return (
    <li className={overdue ? 'stated overdue' : 'stated'}>
      <b lang={words.language}>{words.compare.departure(file, acceptance)}</b>
      <p>{acceptance.reason}</p>
      {findings && isUnmatched(acceptance, file, findings) && (
        <p>The check does not find this in the version: look whether it is still meant.</p>
      )}
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
  findings,
}: {
  readonly rows: readonly DepartureRow[];
  readonly named?: boolean;
  readonly findings?: readonly Finding[] | undefined;
}) {
  return (
    <ul className="rows plain">
      {rows.map((row) => {
        const { finding, step = '', surface = '' } = row.acceptance;
        return (
          <Row
            key={[row.procedure, row.version, finding, step, surface].join(' ')}
            row={row}
            named={named}
            findings={findings}
          />
        );
      })}
    </ul>
  );
}
