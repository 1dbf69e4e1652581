// The language of the page: one place to choose it. Every sentence about the procedure comes from words/; the page's own
// labels stand where they are used.
import type { EvidenceId } from '../evidence/index.ts';
import { evidence } from '../evidence/index.ts';
export { ENGLISH as words } from '../words/en/index.ts';

/** Whether an id names a piece of evidence. */
export function hasEvidence(id: string): id is EvidenceId {
  try {
    return evidence(id as EvidenceId) !== undefined;
  } catch {
    return false;
  }
}
