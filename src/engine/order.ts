// The order of the events in the diagram. The size of a decision diagram hangs on it, its meaning does not. An event stands
// where its last use is: a pinhole that matters in ten steps stands with the tenth, and a soiled strap with
// the step that first touches it. On the three-person procedure that is a tenth of the nodes of plain event order.

import type { Guard, Operation, Plan } from '../contacts/plan.ts';

/** Per event: its place, lowest first. The highest are decided on first. */
export function ranksOf(plan: Plan): Int32Array {
  const place = lastUses(plan);
  const order = Int32Array.from(plan.events.keys()).sort((a, b) => place[a]! - place[b]! || a - b);
  const ranks = new Int32Array(order.length);
  for (let rank = 0; rank < order.length; rank += 1) ranks[order[rank]!] = rank;
  return ranks;
}

const NO_GUARDS: readonly Guard[] = [];

/** The guards of what cleans; those of contacts and taints stand in `when`. */
const failures = (operation: Operation): readonly Guard[] =>
  operation.op === 'sanitise' ? operation.failure : NO_GUARDS;

const whenOf = (operation: Operation): Guard | undefined =>
  operation.op === 'contact' || operation.op === 'taint' ? operation.when : undefined;

/** Where each event is used last, and each surface touched first, counted in operations. */
class Uses {
  readonly last: Float64Array;
  readonly first: Float64Array;
  count = 0;

  constructor({ events, surfaces }: Plan) {
    this.last = new Float64Array(events.length).fill(-1);
    this.first = new Float64Array(surfaces.length).fill(Infinity);
  }

  note(operations: readonly Operation[]): void {
    for (const operation of operations) {
      const when = whenOf(operation);
      if (when) this.#use(when);
      else for (const guard of failures(operation)) this.#use(guard);
      this.#touch(operation.a);
      if (operation.op === 'contact') this.#touch(operation.b);
      this.count += 1;
    }
  }

  #use(guard: Guard): void {
    for (const event of guard) this.last[event] = this.count;
  }

  #touch(surface: number): void {
    if (this.first[surface]! > this.count) this.first[surface] = this.count;
  }
}

function lastUses(plan: Plan): Float64Array {
  const uses = new Uses(plan);
  for (const { operations } of plan.steps) uses.note(operations);
  const place = uses.last;
  for (const operation of plan.start) {
    const touch = Math.min(uses.first[operation.a]!, uses.count);
    const other = operation.op === 'contact' ? Math.min(uses.first[operation.b]!, touch) : touch;
    for (const event of whenOf(operation) ?? failures(operation).flat())
      if (place[event]! < 0) place[event] = other - 0.5;
  }
  return place;
}
