// What a practice rule is and what it reports. A rule asks one published question of a procedure; it answers with the
// steps where the procedure departs from it. Its text and source are the evidence record of the same id.
import type { PracticeRuleId } from '../evidence/index.ts';
import type { ProcedureKind } from '../domain/procedure.ts';
import type { Moment, Reading } from './reading.ts';

/** A departure from published practice. Step indices are those of the procedure, from 0. */
export interface Departure {
  readonly rule: PracticeRuleId;
  /** Index of the step where to look. */
  readonly step: number;
  /** Indices of other steps that it is about. */
  readonly others?: readonly number[];
  /**
   * Ids for the sentence: `person` always; `item`, `of` (whose item), `other` (an item in the way), `place`, `fixture`, `zone`,
   * `technique` where there is one; `when` is `before` or `after` (hygiene around the zip).
   */
  readonly params: Readonly<Record<string, string>>;
}

export type Found = Omit<Departure, 'rule'>;

export interface Rule {
  readonly id: PracticeRuleId;
  readonly kinds: readonly ProcedureKind[];
  /** What of a procedure it looks at, and where it does not apply: one or two plain sentences. */
  readonly looksAt: string;
  /**
   * For a rule about the whole: whether this step, coming last, can change its answer; absent where any can, and for rules
   * that are asked of every step apart.
   */
  readonly hangsOn?: (moment: Moment) => boolean;
  find(reading: Reading): readonly Found[];
}

export const DOFFING: readonly ProcedureKind[] = ['doffing'];
export const DONNING: readonly ProcedureKind[] = ['donning'];
export const BOTH: readonly ProcedureKind[] = ['doffing', 'donning'];
