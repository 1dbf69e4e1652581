// The explicit-state reference engine: a plan run under one concrete set of true events, surface by surface,
// with no diagram and no cleverness. It is what the fast engine is judged by, and it keeps the transfers
// from which a route is told.

import type { Guard, Operation, Plan } from '../contacts/plan.ts';

/** Where contamination started, passed on, or ended; `step` is -1 for the start. */
export interface Trace {
  readonly kind: 'taint' | 'contact' | 'clear';
  readonly step: number;
  /** Index of the operation in its step. */
  readonly operation: number;
  /** The surface it came from; absent for a taint and for a cleaning. */
  readonly from?: number;
  readonly to: number;
  readonly guard: Guard;
  /** Whether the surface changed: false when it was contaminated already, or had nothing to lose. */
  readonly changed: boolean;
}

export interface ReferenceRun {
  /** Entry k+1 is after step k, entry 0 after the start: whether each surface is contaminated. */
  readonly after: readonly (readonly boolean[])[];
  /** Whether each surface was contaminated after any single operation. */
  readonly ever: readonly boolean[];
  /** Every taint, transfer and cleaning, in order. */
  readonly traces: readonly Trace[];
}

interface Run {
  readonly holds: (guard: Guard) => boolean;
  readonly state: boolean[];
  readonly traces: Trace[];
}

/** Runs the plan with exactly these events true. */
export function run(plan: Plan, trueEvents: ReadonlySet<number>): ReferenceRun {
  const holds = (guard: Guard): boolean => guard.every((event) => trueEvents.has(event));
  const current: Run = { holds, state: plan.surfaces.map(() => false), traces: [] };
  const ever = plan.surfaces.map(() => false);
  const after: boolean[][] = [];
  [plan.start, ...plan.steps.map((step) => step.operations)].forEach((operations, row) => {
    operations.forEach((operation, index) => {
      perform(current, operation, row - 1, index);
      current.state.forEach((dirty, surface) => {
        if (dirty) ever[surface] = true;
      });
    });
    after.push([...current.state]);
  });
  return { after, ever, traces: current.traces };
}

function perform(current: Run, operation: Operation, step: number, index: number): void {
  const { holds, state, traces } = current;
  const soil = (kind: 'taint' | 'contact', to: number, guard: Guard, from?: number): void => {
    const source = from === undefined ? {} : { from };
    traces.push({ kind, step, operation: index, ...source, to, guard, changed: !state[to] });
    state[to] = true;
  };
  const clear = (to: number, guard: Guard): void => {
    traces.push({ kind: 'clear', step, operation: index, to, guard, changed: state[to] === true });
    state[to] = false;
  };
  switch (operation.op) {
    case 'taint':
      if (holds(operation.when)) soil('taint', operation.a, operation.when);
      return;
    case 'contact': {
      if (!holds(operation.when)) return;
      const [dirtyA, dirtyB] = [state[operation.a], state[operation.b]];
      if (dirtyB) soil('contact', operation.a, operation.when, operation.b);
      if (dirtyA) soil('contact', operation.b, operation.when, operation.a);
      return;
    }
    case 'sanitise':
      if (!operation.failure.some(holds)) clear(operation.a, []);
      return;
    case 'fresh':
    case 'retire':
      clear(operation.a, []);
  }
}
