// One broken fact of a procedure that had no departure, and the rule that must report it.
import type { Procedure } from '../../../src/domain/procedure.ts';
import type { PracticeRuleId, SourceId } from '../../../src/evidence/index.ts';

export interface Case {
  readonly rule: PracticeRuleId;
  /** Where the rule is published (evidence/practice.json). */
  readonly source: SourceId;
  readonly broken: string;
  readonly procedure: Procedure;
  /** Step where it must be reported. */
  readonly at: string;
  /** A second rule that the same fact breaks by its own published text. */
  readonly also?: PracticeRuleId;
}
