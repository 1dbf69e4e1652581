// The explicit-state reference (src/engine/reference.ts) for many sets of true events at once: one bit per set, 32 sets to
// a word. A surface's state is a row of bits, and each operation does to all sets what the reference does to
// one, with `and`, `or` and `not` where that has `&&`, `||` and `!`. No diagram, and no set is inferred from another.
// test/engine/lanes.test.ts holds it to the reference, set by set.
import type { Guard, Operation, Plan } from '../../src/contacts/plan.ts';

/** Sets of true events, by key, so that two plans whose slips have the same names can be run under the same sets. */
export interface Lanes {
  readonly count: number;
  /** Per key: the sets in which it is true. */
  readonly rows: ReadonlyMap<string, Uint32Array>;
  /** Bits that belong to a set; the last word may have spare ones. */
  readonly all: Uint32Array;
}

/** Every set of at most `order` of these keys, the empty set first. */
export function setsUpTo(keys: readonly string[], order: number): readonly (readonly string[])[] {
  const sets: (readonly string[])[] = [[]];
  let last: readonly (readonly number[])[] = [[]];
  for (let size = 1; size <= order; size += 1) {
    last = last.flatMap((set) => keys.flatMap((_, at) => (at > (set.at(-1) ?? -1) ? [[...set, at]] : [])));
    for (const set of last) sets.push(set.map((at) => keys[at]!));
  }
  return sets;
}

export function lanesOf(sets: readonly (readonly string[])[]): Lanes {
  const width = Math.ceil(sets.length / 32);
  const rows = new Map<string, Uint32Array>();
  sets.forEach((set, lane) => {
    for (const key of set) {
      const row = rows.get(key) ?? new Uint32Array(width);
      rows.set(key, row);
      row[lane >>> 5]! |= 1 << (lane & 31);
    }
  });
  const all = new Uint32Array(width).fill(0xffffffff);
  if (sets.length % 32 > 0) all[width - 1] = 2 ** (sets.length % 32) - 1;
  return { count: sets.length, rows, all };
}

export interface LanesRun {
  /** Per surface: the sets under which it was ever contaminated, and under which it is at the end. */
  readonly ever: readonly Uint32Array[];
  readonly end: readonly Uint32Array[];
}

type Rows = readonly Uint32Array[];

/** Sets in which all of the guard's events are true; an event without a row is true in none. */
function guardRow(guard: Guard, events: Rows, all: Uint32Array): Uint32Array {
  if (guard.length === 1) return events[guard[0]!]!;
  const row = all.slice();
  for (const event of guard) events[event]!.forEach((word, at) => (row[at]! &= word));
  return row;
}

function touch(a: Uint32Array, b: Uint32Array, when: Uint32Array): void {
  for (let at = 0; at < when.length; at += 1) {
    const either = (a[at]! | b[at]!) & when[at]!;
    a[at]! |= either;
    b[at]! |= either;
  }
}

function perform(operation: Operation, state: Rows, ever: Rows, rowOf: (guard: Guard) => Uint32Array): void {
  const a = state[operation.a]!;
  if (operation.op === 'taint') {
    rowOf(operation.when).forEach((word, at) => (a[at]! |= word));
  } else if (operation.op === 'contact') {
    const b = state[operation.b]!;
    touch(a, b, rowOf(operation.when));
    b.forEach((word, at) => (ever[operation.b]![at]! |= word));
  } else if (operation.op === 'sanitise') {
    const fails = new Uint32Array(a.length);
    for (const guard of operation.failure) rowOf(guard).forEach((word, at) => (fails[at]! |= word));
    fails.forEach((word, at) => (a[at]! &= word));
  } else a.fill(0);
  a.forEach((word, at) => (ever[operation.a]![at]! |= word));
}

/** Runs the plan once for every set. */
export function runLanes(plan: Plan, lanes: Lanes): LanesRun {
  const width = lanes.all.length;
  const none = new Uint32Array(width);
  const events = plan.events.map(({ key }) => lanes.rows.get(key) ?? none);
  const state = plan.surfaces.map(() => new Uint32Array(width));
  const ever = plan.surfaces.map(() => new Uint32Array(width));
  const rowOf = (guard: Guard): Uint32Array => guardRow(guard, events, lanes.all);
  for (const operations of [plan.start, ...plan.steps.map((step) => step.operations)]) {
    for (const operation of operations) perform(operation, state, ever, rowOf);
  }
  return { ever, end: state };
}

/** Per protected surface: the sets that reach it, judged as the check judges it (ever, or as it leaves). */
export function reachedIn(plan: Plan, lanes: Lanes): ReadonlyMap<string, Uint32Array> {
  const { ever, end } = runLanes(plan, lanes);
  return new Map(
    plan.surfaces.flatMap((surface, index) =>
      surface.protected ? [[surface.id, (surface.judged === 'end' ? end : ever)[index]!] as const] : [],
    ),
  );
}
