// The mends that were tried, each with what it changes; for better and for worse.
import type { Finding } from '../../check/finding.ts';
import type { Judged } from '../check/result.ts';
import { words } from '../words.ts';

interface MendsProps {
  readonly finding: Finding;
  readonly judged: Judged;
  readonly complete: boolean;
}

export function Mends({ finding, judged, complete }: MendsProps) {
  const { mends } = finding;
  return (
    <section aria-labelledby="mends-title">
      <h2 id="mends-title">Mends that were tried</h2>
      {mends.length === 0 && (
        <p>{complete ? 'None of the mends that this check tries makes it better.' : 'Being tried now …'}</p>
      )}
      <ol className="mends">
        {mends.map((mend) => {
          const { sentence, changes } = words.mend(judged.procedure, mend);
          return (
            <li key={sentence}>
              <p>
                <b>{sentence}</b>
              </p>
              <ul>
                {changes.map((change) => (
                  <li key={change}>{change.replaceAll('->', '→')}</li>
                ))}
              </ul>
            </li>
          );
        })}
      </ol>
      {mends.length > 0 && (
        <p className="quiet">
          Each was tried by checking the changed procedure anew. Whether it can be done in your room is for
          you to judge.
        </p>
      )}
    </section>
  );
}
