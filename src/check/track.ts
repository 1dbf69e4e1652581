// The base analysis written down operation by operation, so that a variant can run beside it: what every operation found
// and left on its surfaces, and where each step stands. Values are nodes of the analysis' own diagram.
import type { Operation } from '../contacts/plan.ts';
import { copyOf, momentAfter, stepOnce, UNWATCHED } from '../engine/propagate.ts';
import { FALSE } from '../engine/diagram.ts';
import type { Analysis } from './analysis.ts';
import { type Stations, stationsOf } from './editRun.ts';

/** One operation of the base: the condition of its surfaces before and after, and of what `a` ever was. */
export interface Trodden {
  /** Alone in a list, as the engine takes it. */
  readonly operations: readonly [Operation];
  readonly a: number;
  /** The other surface of a contact; `a` again elsewhere. */
  readonly b: number;
  readonly before: readonly [number, number, number];
  readonly after: readonly [number, number, number];
}

export interface Track extends Stations {
  /** Per step. */
  readonly steps: readonly (readonly Trodden[])[];
  /** Per step: the surfaces whose condition or past is not the same before and after it. */
  readonly changed: readonly Int32Array[];
  /** Surfaces that the base knows. */
  readonly width: number;
  /** Row k is before step k; one column per surface. */
  readonly rows: Int32Array;
  readonly everRows: Int32Array;
}

function trodden(analysis: Analysis, step: number): readonly Trodden[] {
  const moment = copyOf(momentAfter(analysis.conditions, step - 1));
  const { state, ever } = moment;
  const now = (a: number, b: number) => [state[a]!, state[b]!, ever[a]!] as const;
  return (analysis.compiled.plan.steps[step]?.operations ?? []).map((operation): Trodden => {
    const { a } = operation;
    const b = operation.op === 'contact' ? operation.b : a;
    const operations = [operation] as const;
    const before = now(a, b);
    stepOnce(analysis.diagram, moment, operations);
    return { operations, a, b, before, after: now(a, b) };
  });
}

function changedIn({ compiled, conditions }: Analysis, step: number): Int32Array {
  const width = compiled.plan.surfaces.length;
  const { rows, everRows } = conditions;
  const changed: number[] = [];
  for (let surface = 0; surface < width; surface += 1) {
    const [before, after] = [step * width + surface, (step + 1) * width + surface];
    if (rows[before] !== rows[after] || everRows[before] !== everRows[after]) changed.push(surface);
  }
  return Int32Array.from(changed);
}

export function trackOf(analysis: Analysis): Track {
  const { compiled, conditions } = analysis;
  const { performed, interpreter } = compiled;
  return {
    ...stationsOf(interpreter, performed),
    steps: performed.map((_, step) => trodden(analysis, step)),
    changed: performed.map((_, step) => changedIn(analysis, step)),
    width: compiled.plan.surfaces.length,
    rows: conditions.rows,
    everRows: conditions.everRows,
  };
}

/** The condition of a surface before step `at` of the base; clean where only a variant knows the surface. */
export const rowAt = ({ rows, width }: Track, at: number, surface: number): number =>
  surface < width ? rows[at * width + surface]! : FALSE;

/** What it ever was before its present condition; of a surface that only a variant knows, nothing is told. */
export const everAt = ({ everRows, width }: Track, at: number, surface: number, watched: boolean): number =>
  surface < width ? everRows[at * width + surface]! : watched ? FALSE : UNWATCHED;
