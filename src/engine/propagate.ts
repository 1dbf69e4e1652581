// From a plan to conditions: for every surface, at the end of the start and of each step, the function of
// basic events under which it is contaminated; for every protected surface also whether it ever was. Four
// operations and the taint of the start, each a line or two of and/or over the shared diagram.

import type { Guard, Operation, Plan } from '../contacts/plan.ts';
import { Diagram, FALSE, type Node } from './diagram.ts';
import { ranksOf } from './order.ts';

/** In an `ever` array: a surface that is not protected and so not watched. */
export const UNWATCHED = -1;

/** A moment between two operations: a condition per surface, and what the watched ones were before. */
export interface Moment {
  readonly state: Int32Array;
  /** Per surface: the union of its conditions before each cleaning so far, or UNWATCHED. */
  readonly ever: Int32Array;
}

export interface Conditions {
  readonly plan: Plan;
  readonly diagram: Diagram;
  /** Row k+1 is the state at the end of step k, row 0 the end of the start; one column per surface. */
  readonly rows: Int32Array;
  /** As `rows`: the `ever` arrays, without what still stands in the state. */
  readonly everRows: Int32Array;
  /** Per row: the surfaces whose condition changed in it, ascending (row 0: those not clean). */
  readonly changed: readonly Int32Array[];
  /** Per surface: contaminated at any moment; UNWATCHED where not protected. */
  readonly ever: Int32Array;
}

/** Before anything happened: every surface false. */
function beforeStart(plan: Plan): Moment {
  const ever = Int32Array.from(plan.surfaces, (surface) => (surface.protected ? FALSE : UNWATCHED));
  return { state: new Int32Array(plan.surfaces.length), ever };
}

/** A copy that can go its own way. */
export const copyOf = (moment: Moment): Moment => ({
  state: moment.state.slice(),
  ever: moment.ever.slice(),
});

/** Performs the operations on the moment, in place. */
export function stepOnce(diagram: Diagram, moment: Moment, operations: readonly Operation[]): void {
  for (const operation of operations) perform(diagram, moment, operation);
}

/** What each watched surface ever was, the present included; UNWATCHED elsewhere. */
export function everUntil(diagram: Diagram, moment: Moment): Int32Array {
  return moment.ever.map((before, at) =>
    before === UNWATCHED ? UNWATCHED : diagram.or(before, moment.state[at]!),
  );
}

/** Runs a whole plan. A diagram without nodes takes the plan's order. */
export function propagate(plan: Plan, diagram: Diagram = new Diagram(plan.events.length)): Conditions {
  diagram.extend(plan.events.length);
  if (diagram.count === 2) diagram.order(ranksOf(plan));
  const width = plan.surfaces.length;
  const rows = new Int32Array(width * (plan.steps.length + 1));
  const everRows = new Int32Array(rows.length);
  const moment = beforeStart(plan);
  [plan.start, ...plan.steps.map((step) => step.operations)].forEach((operations, row) => {
    stepOnce(diagram, moment, operations);
    rows.set(moment.state, row * width);
    everRows.set(moment.ever, row * width);
  });
  const ever = everUntil(diagram, moment);
  return { plan, diagram, rows, everRows, changed: changes(rows, width), ever };
}

/** The condition of a surface at the end of a step; -1 is the start. */
export function conditionAt(conditions: Conditions, step: number, surface: number): Node {
  return conditions.rows[(step + 1) * conditions.plan.surfaces.length + surface]!;
}

/** The condition of a surface as the procedure ends. */
export const finalOf = (conditions: Conditions, surface: number): Node =>
  conditionAt(conditions, conditions.plan.steps.length - 1, surface);

/** The condition by which a surface is judged: ever, or as it leaves (`judged: 'end'`, and all unprotected). */
export function judgedOf(conditions: Conditions, surface: number): Node {
  const { judged, protected: watched } = conditions.plan.surfaces[surface]!;
  return watched && judged === 'ever' ? conditions.ever[surface]! : finalOf(conditions, surface);
}

/** The moment after a step (-1: the start), to go on from with other operations. */
export function momentAfter(conditions: Conditions, step: number): Moment {
  const width = conditions.plan.surfaces.length;
  const [from, to] = [(step + 1) * width, (step + 2) * width];
  return { state: conditions.rows.slice(from, to), ever: conditions.everRows.slice(from, to) };
}

function perform(diagram: Diagram, moment: Moment, operation: Operation): void {
  const { state } = moment;
  switch (operation.op) {
    case 'contact':
      touch(diagram, state, operation.a, operation.b, operation.when);
      return;
    case 'taint':
      state[operation.a] = diagram.or(state[operation.a]!, diagram.conjunction(operation.when));
      return;
    case 'sanitise':
      remember(diagram, moment, operation.a);
      state[operation.a] = diagram.and(state[operation.a]!, anyOf(diagram, operation.failure));
      return;
    case 'fresh':
    case 'retire':
      remember(diagram, moment, operation.a);
      state[operation.a] = FALSE;
  }
}

function touch(diagram: Diagram, state: Int32Array, a: number, b: number, when: Guard): void {
  const [one, other] = [state[a]!, state[b]!];
  if (one === other) return;
  const either = diagram.or(one, other);
  state[a] = openedTo(diagram, one, when, either);
  state[b] = openedTo(diagram, other, when, either);
}

/** `either` where the guard holds, else `own`, which lies within it; a single event above both is just one node. */
function openedTo(diagram: Diagram, own: Node, when: Guard, either: Node): Node {
  if (when.length === 0) return either;
  if (when.length === 1) {
    const rank = diagram.rankOf(when[0]!);
    if (rank > diagram.level[own]! && rank > diagram.level[either]!) {
      return diagram.choice(when[0]!, own, either);
    }
  }
  return diagram.or(own, diagram.and(diagram.conjunction(when), either));
}

const anyOf = (diagram: Diagram, guards: readonly Guard[]): Node =>
  guards.reduce<Node>((any, guard) => diagram.or(any, diagram.conjunction(guard)), FALSE);

function remember(diagram: Diagram, { state, ever }: Moment, surface: number): void {
  const before = ever[surface]!;
  if (before !== UNWATCHED) ever[surface] = diagram.or(before, state[surface]!);
}

function changes(rows: Int32Array, width: number): Int32Array[] {
  const lists: Int32Array[] = [];
  for (let at = 0; at < rows.length; at += width) {
    const list: number[] = [];
    for (let i = 0; i < width; i++) {
      const before = at === 0 ? FALSE : rows[at - width + i]!;
      if (rows[at + i] !== before) list.push(i);
    }
    lists.push(Int32Array.from(list));
  }
  return lists;
}
