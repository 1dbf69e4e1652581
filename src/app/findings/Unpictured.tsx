// What is left of a check whose conditions could not be worked out: no picture, no ledger, no chances, but what was left
// undone, and every finding that there is, in the order of the check.
import type { Judged } from '../check/result.ts';
import type { Shown } from '../model/findings.ts';
import { SeverityBadge } from '../parts/Badge.tsx';
import { words } from '../words.ts';
import { Summary } from './Summary.tsx';

/** More than anybody reads; the command line tells all. */
const MOST = 300;

interface UnpicturedProps {
  readonly judged: Judged;
  readonly shown: readonly Shown[];
  readonly complete: boolean;
}

export function Unpictured({ judged, shown, complete }: UnpicturedProps) {
  const { procedure, limits } = judged;
  const more = shown.length - MOST;
  return (
    <>
      <Summary shown={shown} title="What the check found" level={2} complete={complete} limits={limits} />
      <section aria-labelledby="unpictured-title">
        <h2 id="unpictured-title">Findings</h2>
        <ul className="plain">
          {shown.slice(0, MOST).map(({ finding, key }) => {
            const { title, text } = words.finding(procedure, finding);
            return (
              <li key={key} className={`finding kind-${finding.kind}`}>
                <SeverityBadge severity={finding.severity} /> <b>{title}</b>
                <p>{text}</p>
              </li>
            );
          })}
        </ul>
        {more > 0 && (
          <p>
            And {more} more. <code>doffline check</code> prints them all.
          </p>
        )}
      </section>
    </>
  );
}
