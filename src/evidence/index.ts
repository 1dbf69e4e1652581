// The one door to evidence/*.json: typed access by id. Nothing is checked at run time; test/evidence/ checks every
// record against a strict schema, and ids.ts makes a misspelt id a compile error.
// Records with a `basis` get value and distribution here, from the record that they lean on.
import chlorine from '../../evidence/chlorine.json' with { type: 'json' };
import contaminationStudies from '../../evidence/contamination-studies.json' with { type: 'json' };
import disinfection from '../../evidence/disinfection.json' with { type: 'json' };
import durations from '../../evidence/durations.json' with { type: 'json' };
import emergencies from '../../evidence/emergencies.json' with { type: 'json' };
import faceTouching from '../../evidence/face-touching.json' with { type: 'json' };
import faultTrees from '../../evidence/fault-trees.json' with { type: 'json' };
import followUp from '../../evidence/follow-up.json' with { type: 'json' };
import gloves from '../../evidence/gloves.json' with { type: 'json' };
import guide from '../../evidence/guide.json' with { type: 'json' };
import handHygiene from '../../evidence/hand-hygiene.json' with { type: 'json' };
import heat from '../../evidence/heat.json' with { type: 'json' };
import humanReliability from '../../evidence/human-reliability.json' with { type: 'json' };
import legibility from '../../evidence/legibility.json' with { type: 'json' };
import logbook from '../../evidence/logbook.json' with { type: 'json' };
import observers from '../../evidence/observers.json' with { type: 'json' };
import practice from '../../evidence/practice.json' with { type: 'json' };
import slips from '../../evidence/slips.json' with { type: 'json' };
import sources from '../../evidence/sources.json' with { type: 'json' };
import supplies from '../../evidence/supplies.json' with { type: 'json' };
import times from '../../evidence/times.json' with { type: 'json' };
import transfer from '../../evidence/transfer.json' with { type: 'json' };
import type { EvidenceId, SourceId } from './ids.ts';
import type { EvidenceBasis, EvidenceRecord, EvidenceSource, EvidenceValue } from './types.ts';

export { type EvidenceId, evidenceIds, type SourceId } from './ids.ts';
export * from './types.ts';

/** Id of a rule of published practice. */
export type PracticeRuleId = Extract<EvidenceId, `practice.${string}`>;

type WrittenRecord = Omit<EvidenceRecord, 'value'> & { readonly value?: EvidenceValue };

const written = [
  chlorine,
  contaminationStudies,
  disinfection,
  durations,
  emergencies,
  faceTouching,
  faultTrees,
  followUp,
  gloves,
  guide,
  handHygiene,
  heat,
  humanReliability,
  legibility,
  logbook,
  observers,
  practice,
  slips,
  supplies,
  times,
  transfer,
].flat() as unknown as readonly WrittenRecord[];

const writtenById = new Map(written.map((record) => [record.id, record]));

function valueFromBasis(basis: EvidenceBasis): number {
  const base = writtenById.get(basis.id)?.value;
  if (typeof base !== 'number') throw new Error(`evidence: basis ${basis.id} has no number of its own`);
  return base * basis.times;
}

function resolve(record: WrittenRecord): EvidenceRecord {
  const { basis } = record;
  if (basis === undefined) return record as EvidenceRecord;
  const value = valueFromBasis(basis);
  const distribution = { kind: 'lognormal', median: value, errorFactor: basis.errorFactor } as const;
  return { ...record, value, distribution };
}

/** Every record, in file order. */
export const allEvidence: readonly EvidenceRecord[] = written.map(resolve);

/** Every source, in file order. */
export const allSources = sources as unknown as readonly EvidenceSource[];

const recordById = new Map(allEvidence.map((record) => [record.id, record]));
const sourceById = new Map(allSources.map((entry) => [entry.id, entry]));

/** The record of an id. Throws only for an id that the type does not allow. */
export function evidence(id: EvidenceId): EvidenceRecord {
  const record = recordById.get(id);
  if (record === undefined) throw new Error(`evidence: no record ${id}`);
  return record;
}

/** The number of a record whose value is one; throws when it is a rule or a table. Unit: the record's. */
export function evidenceNumber(id: EvidenceId): number {
  const { value } = evidence(id);
  if (typeof value !== 'number') throw new Error(`evidence: ${id} is not a number`);
  return value;
}

/** The sentence of a record whose value is a rule or statement; throws when it is not text. */
export function evidenceText(id: EvidenceId): string {
  const { value } = evidence(id);
  if (typeof value !== 'string') throw new Error(`evidence: ${id} is not a text`);
  return value;
}

/** One number of a record whose value is a table, as `evidenceField('dependence.low', 'weight')`. */
export function evidenceField(id: EvidenceId, field: string): number {
  const { value } = evidence(id);
  const found: unknown =
    typeof value === 'object' ? Object.entries(value).find(([key]) => key === field)?.[1] : value;
  if (typeof found !== 'number') throw new Error(`evidence: ${id} has no number ${field}`);
  return found;
}

/** The source of an id. Throws only for an id that the type does not allow. */
export function source(id: SourceId): EvidenceSource {
  const entry = sourceById.get(id);
  if (entry === undefined) throw new Error(`evidence: no source ${id}`);
  return entry;
}
