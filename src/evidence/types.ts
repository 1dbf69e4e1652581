// What one piece of evidence is. A number lives here once, with where it comes from and how far it was seen.
// A record either carries its own value, or leans on another by `basis` (value times a factor, with a wider spread),
// so that a chance mapped from a published one cannot drift away from it.
import type { EvidenceId, SourceId } from './ids.ts';

/**
 * How far a record may be trusted. `published`: read at its source, or calculated from what was read.
 * `common practice`: taught widely, no published sentence found. `memory`: recalled, not checked.
 * `judgement`: our own mapping or estimate.
 */
export const evidenceStatuses = ['published', 'common practice', 'memory', 'judgement'] as const;
export type EvidenceStatus = (typeof evidenceStatuses)[number];

/** How much of a source was read; `own` is for judgement and for common practice, which have no document. */
export const seenLevels = ['seen', 'partly seen', 'from memory', 'own'] as const;
export type SeenLevel = (typeof seenLevels)[number];

/** Spread of a chance. Lognormal: `errorFactor` = 95th percentile / median. Chances above 1 are cut at 1. */
export type EvidenceDistribution =
  | { readonly kind: 'lognormal'; readonly median: number; readonly errorFactor: number }
  | { readonly kind: 'beta'; readonly alpha: number; readonly beta: number }
  | { readonly kind: 'fixed' };

export type EvidenceValue =
  | number
  | string
  | boolean
  | readonly EvidenceValue[]
  | { readonly [key: string]: EvidenceValue };

/** The record that this one leans on: its value times `times`, lognormal with `errorFactor`. */
export interface EvidenceBasis {
  readonly id: EvidenceId;
  readonly times: number;
  readonly errorFactor: number;
}

/** `events` of `trials`; the value is then their quotient and the interval follows from them. */
export interface EvidenceSample {
  readonly events: number;
  readonly trials: number;
}

export interface EvidenceInterval {
  readonly low: number;
  readonly high: number;
  /** coverage, 0.95 for a 95 % interval */
  readonly level: number;
  readonly method: string;
}

/** Unit is a phrase ('chance per opportunity', 'seconds', 'rule'). `where` is the table, page or section. */
export interface EvidenceRecord {
  readonly id: EvidenceId;
  readonly value: EvidenceValue;
  readonly unit: string;
  readonly distribution?: EvidenceDistribution;
  readonly basis?: EvidenceBasis;
  readonly sample?: EvidenceSample;
  readonly interval?: EvidenceInterval;
  /** one plain sentence of what it is */
  readonly says: string;
  readonly source: { readonly id: SourceId };
  readonly where: string;
  readonly status: EvidenceStatus;
  readonly note?: string;
}

export interface EvidenceSource {
  readonly id: SourceId;
  readonly title: string;
  /** journal with volume and pages, or issuing body */
  readonly body: string;
  readonly authors: string;
  readonly year: number | null;
  readonly doi?: string;
  readonly url?: string;
  readonly seen: SeenLevel;
  /** which part was read */
  readonly part: string;
  readonly note?: string;
}
