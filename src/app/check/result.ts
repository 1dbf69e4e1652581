// What comes back from the worker: plain data only. It comes twice, first without mends and variants, which take most of
// the time, so that the steps and the picture are there at once.
import type { Finding, Measure, SurfaceVerdict } from '../../check/finding.ts';
import type { Limit } from '../../check/limits.ts';
import type { Cost } from '../../costing/cost.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Agent } from '../../domain/products.ts';
import type { Diagnostic, Span } from '../../language/index.ts';
import type { Board } from '../model/board.ts';

export interface Judged {
  readonly procedure: Procedure;
  readonly hash: string;
  readonly boards: readonly Board[];
  readonly findings: readonly Finding[];
  readonly surfaces: readonly SurfaceVerdict[];
  readonly measures: readonly { readonly agent: Agent; readonly measure: Measure }[];
  /** What was left undone; empty for procedures of a usual size. */
  readonly limits: readonly Limit[];
  /** Of one run; the same against every agent. Absent where a quick check leaves it out. */
  readonly cost?: Cost;
}

export interface Result {
  /** Whether mends and variants have been tried. */
  readonly complete: boolean;
  readonly diagnostics: readonly Diagnostic[];
  /** Where each step stands in the file. */
  readonly steps: ReadonlyMap<string, Span>;
  /** Absent when the text has errors. */
  readonly judged?: Judged;
}

export interface Question {
  readonly text: string;
  readonly fileName: string;
  /** Text of the donning that this doffing undoes. */
  readonly donning?: string;
}

/** What the worker offers. */
export interface Checker {
  check(question: Question, answer: (result: Result) => void): Promise<void>;
}
