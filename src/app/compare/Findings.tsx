// Findings gained and lost: what is worse stands first. The same fault against two agents is one row.
import { Link } from 'wouter';
import type { Finding } from '../../check/finding.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { type AgentChoice, type Shown, shownFor } from '../model/findings.ts';
import { SeverityBadge } from '../parts/Badge.tsx';
import { words } from '../words.ts';
import type { Compared } from './result.ts';

interface RowProps {
  readonly shown: Shown;
  readonly id: string;
  readonly procedure: Procedure;
}

function Row({ shown: { finding, agents }, id, procedure }: RowProps) {
  const [step = -1] = finding.steps;
  const { title } = words.finding(procedure, finding);
  return (
    <li className={`finding kind-${finding.kind}`}>
      <p className="tags">
        <SeverityBadge severity={finding.severity} />
        <span className="badge">{words.findingKind(finding.kind)}</span>
        {agents.length === 1 && agents[0] && <span className="badge">{words.agent(agents[0])}</span>}
      </p>
      <p>
        {title}
        {step >= 0 && (
          <>
            {' '}
            <Link href={`/procedure/${id}/steps?step=${step + 1}`} className="inline-link">
              step {step + 1}
            </Link>
          </>
        )}
      </p>
    </li>
  );
}

interface GroupProps {
  readonly title: string;
  /** What this group means. */
  readonly means: string;
  readonly shown: readonly Shown[];
  readonly id: string;
  readonly procedure: Procedure;
  readonly open: boolean;
}

function Group({ title, means, shown, id, procedure, open }: GroupProps) {
  if (shown.length === 0) return null;
  return (
    <details open={open}>
      <summary>
        <b>
          {title} ({shown.length})
        </b>
      </summary>
      <p className="quiet">{means}</p>
      <ul className="rows">
        {shown.map((one) => (
          <Row key={one.key} shown={one} id={id} procedure={procedure} />
        ))}
      </ul>
    </details>
  );
}

interface FindingsProps {
  readonly compared: Compared;
  readonly ids: readonly [string, string];
  readonly choice: AgentChoice;
}

export function FindingChanges({ compared, ids, choice }: FindingsProps) {
  const { a, b, comparison, complete } = compared;
  const { gone, gained, newErrors, noLongerOpen, kept } = comparison.findings;
  const shown = (findings: readonly Finding[]) => shownFor(findings, choice);
  const notes = gained.filter((one) => !newErrors.includes(one) && !noLongerOpen.includes(one));
  const both = shown(kept.map((one) => one.b)).length;
  return (
    <section aria-labelledby="findings-title">
      <h2 id="findings-title">Findings gained and lost</h2>
      <Group
        title="New errors in the second"
        means="The second has these, and the first has not: mend them, or accept them in writing where that can be."
        shown={shown(newErrors)}
        id={ids[1]}
        procedure={b}
        open
      />
      {shown(newErrors).length === 0 && <p>The second has no error that the first has not.</p>}
      <Group
        title="No longer in the second"
        means="Findings of the first that this check does not find in the second."
        shown={shown(gone)}
        id={ids[0]}
        procedure={a}
        open
      />
      <Group
        title="No longer open, but one slip away"
        means="These places stood open in the first; in the second it takes one slip or circumstance."
        shown={shown(noLongerOpen)}
        id={ids[1]}
        procedure={b}
        open={false}
      />
      <Group
        title="New notes in the second"
        means="To be known; none of them has to be mended."
        shown={shown(notes)}
        id={ids[1]}
        procedure={b}
        open={false}
      />
      <p className="quiet">
        {both} {both === 1 ? 'finding is' : 'findings are'} in both.
        {!complete && ' Steps left out and moved are still being tried.'}
      </p>
    </section>
  );
}
