// What a language must be able to say of two procedures side by side, and of what a run uses up. `a` is the first
// procedure, `b` the second.
import type { StepRow } from '../compare/align.ts';
import type { AroundChange } from '../compare/around.ts';
import type { Gap } from '../compare/match.ts';
import type { ComparedField } from '../compare/steps.ts';
import type { Quantity, Supply } from '../costing/supply.ts';
import type { Acceptance } from '../domain/procedure.ts';
import type { EvidenceStatus } from '../evidence/index.ts';
import type { Setting } from './setting.ts';

/** The second less the first, with its 90 % interval. */
export interface DifferenceToSay {
  readonly value: number;
  readonly interval: { readonly low: number; readonly high: number };
  readonly excludesZero: boolean;
  readonly status: EvidenceStatus;
}

/** Where a departure was accepted. */
export type AcceptedPlace = Pick<Acceptance, 'finding' | 'step' | 'surface'>;

export interface AroundWords {
  /** What changed around the steps, in one sentence. */
  readonly around: (a: Setting, b: Setting, change: AroundChange) => string;
  /** What an accepted departure is about, and where: a phrase for lists. */
  readonly departure: (setting: Setting, place: AcceptedPlace) => string;
}

export interface CompareWords extends AroundWords {
  /** What is used up, as a list shows it: 'outer gloves', 'cloths wetted with strong chlorine (0.5 %)', 'mat'. */
  readonly supply: (supply: Supply) => string;
  /** '2 pairs and 1 single', '4 wipes', '7 uses'. */
  readonly quantity: (quantity: Quantity) => string;
  /** What of a step may differ: 'technique', 'helper'. */
  readonly field: (field: ComparedField) => string;
  /** What happened to a step, in one sentence or three: new, left out, moved, changed, unchanged. */
  readonly step: (a: Setting, b: Setting, row: StepRow) => string;
  /** What only one of the two has, and what that means. */
  readonly gap: (a: Setting, b: Setting, gap: Gap) => string;
  /** Of a chance, in percentage points. */
  readonly chance: (difference: DifferenceToSay) => string;
  /** Of a time, in seconds. */
  readonly time: (difference: DifferenceToSay) => string;
}
