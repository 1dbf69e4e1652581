// One finding beside its step: grade, kind, heading and, unfolded, what it says; with the way to its route.
import { Link } from 'wouter';
import type { Procedure } from '../../domain/procedure.ts';
import type { Shown } from '../model/findings.ts';
import { SeverityBadge } from '../parts/Badge.tsx';
import { words } from '../words.ts';

interface FindingRowProps {
  readonly id: string;
  readonly shown: Shown;
  readonly procedure: Procedure;
}

export function FindingRow({ id, shown, procedure }: FindingRowProps) {
  const { finding, agents, key } = shown;
  const { title, text } = words.finding(procedure, finding);
  const links = finding.route.length;
  const mends = finding.mends.length;
  const where = links > 0 ? `Walk its route (${links})` : mends > 0 ? 'Mends and details' : 'Details';
  return (
    <li className={`finding kind-${finding.kind}`}>
      <p className="tags">
        <SeverityBadge severity={finding.severity} />
        <span className="badge">{words.findingKind(finding.kind)}</span>
        {agents.length === 1 && agents[0] && <span className="badge">{words.agent(agents[0])}</span>}
        {finding.accepted && <span className="badge">accepted in writing</span>}
      </p>
      <details>
        <summary>{title}</summary>
        <p>{text}</p>
      </details>
      <Link href={`/procedure/${id}/finding/${key}`} className="row-link" aria-label={`${where}: ${title}`}>
        {where}
      </Link>
    </li>
  );
}
