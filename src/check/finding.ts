// What the check says, as data: a code, where, why (its route), and the mends that were tried. Words come last
// (words/). Severity has two grades only: `error` must be mended or accepted in writing, `note` is to be known.
import type { EvidenceId } from '../evidence/index.ts';
import type { Acceptance } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import type { ProblemCode } from '../contacts/problem.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import type { Edit } from './edit.ts';

export type Severity = 'error' | 'note';

/**
 * impossible: what the procedure cannot do. open: contaminated though nobody slips. accepted: the same on a surface
 * that may be (outer gloves, a helper's gloves, the zip hand). one-slip: combinations of one. practice: a departure
 * from published practice. variant: a step left out or moved that makes it worse. coverage: a place left bare, an item
 * left open by a donning or left on by a doffing. acceptance: what stands in writing and does not hold.
 */
export const FINDING_KINDS = [
  'impossible',
  'open',
  'accepted',
  'one-slip',
  'practice',
  'variant',
  'coverage',
  'acceptance',
] as const;
export type FindingKind = (typeof FINDING_KINDS)[number];

export type FindingCode =
  | `impossible.${ProblemCode}`
  | 'impossible.layering'
  | 'impossible.not-worked-out'
  | `open.${SurfaceClass}`
  | `accepted.${SurfaceClass}`
  | `one-slip.${SurfaceClass}`
  | `practice.${string}`
  | 'variant.omission'
  | 'variant.order'
  | 'coverage.bare'
  | 'coverage.left-on'
  | 'coverage.left-open'
  | 'acceptance.unmatched'
  | 'acceptance.void'
  | 'acceptance.overdue';

/** One link of a route: at this step, by this contact, contamination passed on. */
export interface RouteLink {
  /** Index of the step, -1 for the start. */
  readonly step: number;
  /** Absent where contamination starts. */
  readonly from?: string;
  readonly to: string;
  /** Keys of the events that the contact took; empty when it always happens. */
  readonly events: readonly string[];
}

/** What a variant of the procedure scores, worst first; smaller is better in each. */
export interface Measure {
  /** Steps that cannot be done. */
  readonly impossible: number;
  /** Open routes to mucosa, skin, clothes and shoes, clean side. */
  readonly open: readonly [number, number, number, number];
  /** Chance that at least one surface of the class is reached (same order). */
  readonly chance: readonly [number, number, number, number];
  /** Departures from practice that are not accepted. */
  readonly departures: number;
  readonly seconds: number;
}

/** An edit that was tried, and what it changes. */
export interface Mend {
  readonly edit: Edit;
  /** Finding's surface: barriers before and after; null = nothing reaches it any more. */
  readonly barriers?: { readonly before: number | null; readonly after: number | null };
  readonly before: Measure;
  readonly after: Measure;
  /** Codes and surfaces of findings that go, and of new ones (a redesign can add routes). */
  readonly gone: readonly string[];
  readonly added: readonly string[];
  /**
   * Slips and circumstances that alone reach a protected surface only once the edit is made, as `event surface`; a place
   * that was one slip away before may get another (Wong 2019). Absent where there is none.
   */
  readonly newSlips?: readonly string[];
}

export interface Finding {
  readonly code: FindingCode;
  readonly kind: FindingKind;
  readonly severity: Severity;
  readonly agent?: Agent;
  /** Indices of the steps it points at, the first being where to look. */
  readonly steps: readonly number[];
  /** The worst surface it is about. */
  readonly surface?: string;
  /** All surfaces it is about, worst first; one slip may reach several. */
  readonly surfaces: readonly string[];
  readonly params: Readonly<Record<string, string>>;
  /** Keys of the slips and circumstances it takes; empty for an open route. */
  readonly events: readonly string[];
  readonly route: readonly RouteLink[];
  /** Short id under which `replay` runs exactly these slips. */
  readonly replay?: string;
  readonly mends: readonly Mend[];
  /** How many edits were tried; absent where none is. */
  readonly tried?: number;
  readonly accepted?: Acceptance;
  readonly evidence: readonly EvidenceId[];
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

export interface Combination {
  readonly events: readonly string[];
  readonly chance: number;
  readonly replay: string;
}

export interface EventImportance {
  readonly event: string;
  readonly birnbaum: number;
  readonly fussellVesely: number;
}

/** What the check says of one protected surface. */
export interface SurfaceVerdict {
  readonly surface: string;
  readonly class: SurfaceClass;
  readonly agent: Agent;
  /** 0 = open route, n = slips and circumstances at least, null = nothing reaches it. */
  readonly barriers: number | null;
  /** The same, as the surface is at the end. */
  readonly barriersAtEnd: number | null;
  /** Number of minimal combinations of any order, exactly, and by order. */
  readonly combinationCount: string;
  readonly combinationsByOrder: Readonly<Record<string, string>>;
  /** The smallest first; `combinationCount` says how many there are. */
  readonly combinations: readonly Combination[];
  readonly chance: number;
  /** 90 % interval from the uncertainty of the slips' chances. */
  readonly interval: Interval;
  readonly importance: readonly EventImportance[];
}
