// Evidence in English: what it says, where it is from, how far it may be trusted.
import { evidence, type EvidenceId, source } from '../../evidence/index.ts';
import type { EvidenceWords } from '../words.ts';
import { STATUS_WORDS } from './numbers.ts';

/** A rule is said in full; of a number the sentence says what it is. */
export function evidenceWords(id: EvidenceId): EvidenceWords {
  const record = evidence(id);
  const { title, body, year } = source(record.source.id);
  const { value } = record;
  return {
    says: typeof value === 'string' && record.unit === 'rule' ? value : record.says,
    source: `${title}. ${body}${year === null ? '' : `, ${year}`}. ${record.where}`,
    status: STATUS_WORDS[record.status],
  };
}
