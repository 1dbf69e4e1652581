// Whoever is not a lead reads what their role may do, and finds nothing here that the server would refuse.
import { Link } from 'wouter';
import type { InsideProps } from '../door/Door.tsx';
import { HEALTH } from '../health/labels.ts';
import { Own } from './Own.tsx';
import { NOT_LEAD } from './leadLabels.ts';
import { abilitiesOf, recordsOf } from './roles.ts';

export function NotLead({ guest, keeper }: InsideProps) {
  const { role, health } = guest.account;
  return (
    <>
      <section aria-labelledby="unit-role">
        <h2 id="unit-role">{NOT_LEAD.title}</h2>
        <ul>
          {abilitiesOf(role).map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
        <p>
          {NOT_LEAD.onDevice}: {recordsOf(role)}.
        </p>
        {role === 'occupational-health' && (
          <p>
            <Link href="/health-records">{HEALTH.title}</Link>
            {health === 'waits' && `: ${NOT_LEAD.waits}`}
          </p>
        )}
        <p>{NOT_LEAD.lead}</p>
      </section>
      <Own guest={guest} keeper={keeper} />
    </>
  );
}
