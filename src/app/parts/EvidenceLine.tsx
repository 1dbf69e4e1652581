// A piece of evidence beside what rests on it: value, source, status, and the way to its record.
import { Link } from 'wouter';
import { evidence, type EvidenceId } from '../../evidence/index.ts';
import { valueText } from '../model/evidence.ts';
import { words } from '../words.ts';
import { StatusBadge } from './Badge.tsx';

export function EvidenceLine({ id }: { readonly id: EvidenceId }) {
  const record = evidence(id);
  const { says, source } = words.evidence(id);
  return (
    <p className="evidence-line">
      <span>{says}</span> {record.unit !== 'rule' && <b>{valueText(record).replace(/\.$/, '')}.</b>}{' '}
      <StatusBadge status={record.status} /> <span className="quiet">{source}.</span>{' '}
      <Link href={`/evidence?find=${id}`} className="inline-link">
        {id}
      </Link>
    </p>
  );
}
