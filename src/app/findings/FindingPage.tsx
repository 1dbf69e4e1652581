// One finding in full: what it says, its route walked link by link with the picture of each, the mends that were tried,
// the slips it takes with what their chances rest on, and the id under which it can be replayed.
import { Link } from 'wouter';
import type { ViewProps } from '../view.ts';
import { EvidenceLine } from '../parts/EvidenceLine.tsx';
import { SeverityBadge } from '../parts/Badge.tsx';
import { slipIn } from '../model/verdicts.ts';
import { slipOf } from '../../domain/slips.ts';
import { words } from '../words.ts';
import { Mends } from './Mends.tsx';
import { RouteWalk } from './RouteWalk.tsx';

interface FindingPageProps extends ViewProps {
  readonly findingKey: string | undefined;
}

function Slips({
  events,
  judged,
}: {
  readonly events: readonly string[];
  readonly judged: ViewProps['judged'];
}) {
  if (events.length === 0) return null;
  return (
    <section aria-labelledby="slips-title">
      <h2 id="slips-title">What it takes</h2>
      <ul className="plain">
        {events.map((event) => {
          const slip = slipIn(event);
          return (
            <li key={event}>
              {words.event(judged.procedure, event)}
              {slip && <EvidenceLine id={slipOf(slip).prior} />}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

export function FindingPage({ findingKey, ...view }: FindingPageProps) {
  const { id, judged, shown, choice, complete } = view;
  const found = shown.find((one) => one.key === findingKey);
  const at = shown.findIndex((one) => one.key === findingKey);
  if (!found) {
    return (
      <p className="narrow">
        {complete
          ? 'This finding is not among those of this procedure against this agent. '
          : 'Still checking: this finding may come yet. '}
        <Link href={`/procedure/${id}/steps?agent=${choice}`}>Back to the steps</Link>
      </p>
    );
  }
  const { finding } = found;
  const { title, text } = words.finding(judged.procedure, finding);
  const step = finding.steps[0] ?? 0;
  const neighbour = (offset: number, name: string) => {
    const other = shown[at + offset];
    return other ? (
      <Link href={`/procedure/${id}/finding/${other.key}?agent=${choice}`} className="button">
        {name}
      </Link>
    ) : null;
  };
  return (
    <article className="finding-page">
      <p className="tags">
        <SeverityBadge severity={finding.severity} />
        <span className="badge">{words.findingKind(finding.kind)}</span>
        {found.agents.map((agent) => (
          <span key={agent} className="badge">
            {words.agent(agent)}
          </span>
        ))}
      </p>
      <h2>{title}</h2>
      <p>{text}</p>
      <RouteWalk key={found.key} {...view} finding={finding} />
      <Mends finding={finding} judged={judged} complete={complete} />
      <Slips events={finding.events} judged={judged} />
      {finding.evidence.length > 0 && (
        <section aria-labelledby="rests-title">
          <h2 id="rests-title">Rests on</h2>
          {finding.evidence.map((one) => (
            <EvidenceLine key={one} id={one} />
          ))}
        </section>
      )}
      {finding.replay !== undefined && (
        <p>
          Replay id: <code>{finding.replay}</code>
        </p>
      )}
      <p className="actions">
        <Link href={`/procedure/${id}/steps?agent=${choice}&step=${step + 1}`} className="button">
          Back to step {step + 1}
        </Link>
        {neighbour(-1, '← Finding before')}
        {neighbour(1, 'Next finding →')}
      </p>
    </article>
  );
}
