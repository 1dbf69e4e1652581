// What a language must be able to say of an order that was found, and of one thing in place of another: why each move
// stands where it does, what is proved and what is not, what a substitution asks of people.
import type { Measure } from '../check/finding.ts';
import type { EvidenceStatus } from '../evidence/index.ts';
import type { Choice, Difference, FigureName, OrderResult, whyNot } from '../order/index.ts';
import type { Change, Retraining } from '../order/changes.ts';
import type { Rewriting, whyNoSubstitute } from '../order/substitute.ts';
import type { Setting } from './setting.ts';

/** Why no order can be searched, or one thing cannot stand for another. */
export type Refusal = NonNullable<ReturnType<typeof whyNot> | ReturnType<typeof whyNoSubstitute>>;

export type ProofToSay = Pick<OrderResult, 'proved' | 'gap' | 'kept' | 'explored'>;

/** One figure of two measures, with as many digits as it bears. */
export interface FigureWords {
  readonly figure: FigureName;
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly turn: 'better' | 'worse' | 'same';
  /** How far apart, where both read alike and yet differ: 'lower by less than 0.1 percentage points'. */
  readonly slight?: string;
  /** What chances and times rest on; counts rest on nothing. */
  readonly status?: EvidenceStatus;
}

export interface OrderWords {
  /** 'the chance of reaching skin rises from 0.4 % to 0.9 % (judgement)', without a capital and a full stop. */
  readonly difference: (difference: Difference) => string;
  /** Every figure, weightiest first. */
  readonly figures: (before: Measure, after: Measure) => readonly FigureWords[];
  /** Why a step stands where and as it does. `setting` is the order found. */
  readonly choice: (setting: Setting, choice: Choice) => string;
  /** What is proved, or the gap. */
  readonly proof: (result: ProofToSay) => string;
  readonly rewriting: (rewriting: Rewriting) => string;
  /** Whether anything but time is worse than before. */
  readonly kept: (kept: boolean) => string;
  /** One step that is new, gone, moved or done in another way. */
  readonly change: (before: Setting, after: Setting, change: Change) => string;
  /** Who has to learn how many changed steps. */
  readonly retraining: (setting: Setting, retraining: Retraining) => string;
  readonly refusal: (why: Refusal) => string;
}
