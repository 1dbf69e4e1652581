// The evidence as the page lists it: grouped by the first word of its id, searched in all that it says, and with the
// places where it is used: slips' chances, techniques' times and rules.
import type { ProcedureKind } from '../../domain/procedure.ts';
import { AGENTS, efficacyOf, MATERIALS, PRODUCT_IDS } from '../../domain/products.ts';
import { SLIPS } from '../../domain/slips.ts';
import { TECHNIQUES, type Technique } from '../../domain/techniques/index.ts';
import {
  allEvidence,
  type EvidenceRecord,
  type EvidenceValue,
  type PracticeRuleId,
  source,
} from '../../evidence/index.ts';
import { techniquesThatBreak } from '../../practice/declared.ts';
import { RULES } from '../../practice/index.ts';
import { UNCHECKED } from '../../practice/unchecked.ts';
import { fieldInWords } from '../../words/fields.ts';
import { type Group, groupsOf, holds } from './finder.ts';

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 3, useGrouping: false });

function plain(value: EvidenceValue): string {
  if (typeof value === 'number') return number.format(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(plain).join(', ');
  return Object.entries(value)
    .map(([key, one]) => `${fieldInWords(key)} ${plain(one)}`)
    .join('; ');
}

/** Value, unit, and the interval where there is one. */
export function valueText({ value, unit, interval, distribution, sample }: EvidenceRecord): string {
  const parts = [
    ...(interval
      ? [`${Math.round(interval.level * 100)} % interval ${plain(interval.low)} to ${plain(interval.high)}`]
      : []),
    ...(distribution?.kind === 'lognormal' ? [`error factor ${plain(distribution.errorFactor)}`] : []),
    ...(sample ? [`${sample.events} of ${sample.trials}`] : []),
  ];
  const more = parts.length > 0 ? ` (${parts.join('; ')})` : '';
  return unit === 'rule' || unit === 'statement' ? plain(value) : `${plain(value)} ${unit}${more}`;
}

/** Where a record is used, in words. */
export interface Use {
  readonly as: 'chance of' | 'effect of' | 'time of' | 'source of' | 'basis of';
  readonly what: string;
}

function uses(): ReadonlyMap<string, readonly Use[]> {
  const found = new Map<string, Use[]>();
  const add = (id: string, use: Use): void => {
    found.set(id, [...(found.get(id) ?? []), use]);
  };
  for (const { id, prior } of SLIPS) add(prior, { as: 'chance of', what: id });
  for (const technique of TECHNIQUES as readonly Technique[]) {
    add(technique.time, { as: 'time of', what: technique.id });
    if (technique.from) add(technique.from, { as: 'source of', what: technique.id });
  }

  for (const product of PRODUCT_IDS)
    for (const agent of AGENTS)
      for (const material of MATERIALS) {
        const id = efficacyOf(product, agent, material);
        if (id !== undefined) add(id, { as: 'effect of', what: product });
      }
  for (const { id, basis } of allEvidence) if (basis) add(basis.id, { as: 'basis of', what: id });
  return found;
}

const USES = uses();

export const usesOf = (id: string): readonly Use[] => USES.get(id) ?? [];

/** How the check asks a procedure about a rule of practice. */
export interface Asked {
  /** What of a procedure is looked at; absent where no rule looks at the steps themselves. */
  readonly looksAt?: string;
  readonly kinds: readonly ProcedureKind[];
  /** Ways of doing a step that depart from it by themselves. */
  readonly brokenBy: readonly string[];
  /** Why a procedure's steps cannot show it. */
  readonly notBecause?: string;
}

/** Absent where the record is no rule of practice. */
export function askedOf({ id }: Pick<EvidenceRecord, 'id'>): Asked | undefined {
  if (!isPracticeRule(id)) return undefined;
  const rule = RULES.find((one) => one.id === id);
  const unchecked = UNCHECKED.find((one) => one.id === id);
  return {
    kinds: rule?.kinds ?? [],
    brokenBy: techniquesThatBreak(id),
    ...(rule ? { looksAt: rule.looksAt } : {}),
    ...(unchecked ? { notBecause: unchecked.because } : {}),
  };
}

const isPracticeRule = (id: string): id is PracticeRuleId => id.startsWith('practice.');

/** The first word of its id. */
export const groupOfRecord = (id: string): string => id.split('.')[0] ?? id;

const wordsOf = (record: EvidenceRecord): string => {
  const { title, body, authors } = source(record.source.id);
  return [
    record.id,
    record.says,
    record.status,
    record.note,
    record.where,
    title,
    body,
    authors,
    plain(record.value),
  ].join(' ');
};

const TEXTS: ReadonlyMap<string, string> = new Map(allEvidence.map((one) => [one.id, wordsOf(one)]));

export const isRecord = (id: string): boolean => TEXTS.has(id);

/** Records that hold every word of the search, in their groups by name. */
export const searched = (search: string): readonly Group<EvidenceRecord>[] =>
  groupsOf(
    allEvidence.filter((record) => holds(TEXTS.get(record.id) ?? '', search)),
    ({ id }) => groupOfRecord(id),
  ).toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
