// Small marks that say a grade by shape and word, colour only as a third.
import type { Severity } from '../../check/finding.ts';
import type { EvidenceStatus } from '../../evidence/index.ts';
import { words } from '../words.ts';

const SIGNS: Readonly<Record<Severity, string>> = { error: '▲', note: '●' };

export function SeverityBadge({ severity }: { readonly severity: Severity }) {
  return (
    <span className={`badge severity-${severity}`}>
      <span aria-hidden="true">{SIGNS[severity]} </span>
      {words.severity(severity)}
    </span>
  );
}

/** How far a number may be trusted; stands beside every number that has a source. */
export function StatusBadge({ status }: { readonly status: EvidenceStatus }) {
  return <span className={`badge status-${status.replaceAll(' ', '-')}`}>{words.status(status)}</span>;
}
