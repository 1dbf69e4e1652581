// What the figures of a cost rest on, and how far that may be trusted.
import { evidence, type EvidenceId, type EvidenceStatus, evidenceStatuses } from '../evidence/index.ts';
import type { Cost } from './cost.ts';
import { PRESENCE } from './time.ts';

/** The weakest status of these records. */
export function weakestOf(ids: readonly EvidenceId[]): EvidenceStatus {
  const ranks = ids.map((id) => evidenceStatuses.indexOf(evidence(id).status));
  return evidenceStatuses[Math.max(0, ...ranks)] ?? 'judgement';
}

/** Every record that a cost rests on, once. */
export function groundsOf({ evidence: grounds, uses, waste }: Cost): readonly EvidenceId[] {
  return [
    ...new Set([
      grounds.items,
      ...uses.flatMap((use) => use.evidence),
      ...grounds.times,
      PRESENCE,
      ...waste.evidence,
    ]),
  ];
}
