// The order of the events in the diagram. The size of a decision diagram hangs on it, its meaning does not. An event stands
// where its last use is: a pinhole that matters in ten steps stands with the tenth, and a soiled strap with
// the step that first touches it. On the three-person procedure that is a tenth of the nodes of plain event order.

import type { Guard, Operation, Plan } from '../contacts/plan.ts';

/** Per event: its place, lowest first. The highest are decided on first. */
export function ranksOf(plan: Plan): Int32Array {
  const operations = plan.steps.flatMap((step) => step.operations);
  const place = lastUses(plan, operations);
  const order = plan.events.map((_, event) => event).sort((a, b) => place[a]! - place[b]! || a - b);
  const ranks = new Int32Array(order.length);
  order.forEach((event, rank) => {
    ranks[event] = rank;
  });
  return ranks;
}

const guardsOf = (operation: Operation): readonly Guard[] => {
  if (operation.op === 'sanitise') return operation.failure;
  return operation.op === 'contact' || operation.op === 'taint' ? [operation.when] : [];
};

function lastUses(plan: Plan, operations: readonly Operation[]): Float64Array {
  const place = new Float64Array(plan.events.length).fill(-1);
  const firstTouch = new Map<number, number>();
  operations.forEach((operation, at) => {
    for (const guard of guardsOf(operation)) for (const event of guard) place[event] = at;
    const touched = operation.op === 'contact' ? [operation.a, operation.b] : [operation.a];
    for (const surface of touched) if (!firstTouch.has(surface)) firstTouch.set(surface, at);
  });
  for (const operation of plan.start) {
    const touch = firstTouch.get(operation.a) ?? operations.length;
    const other = operation.op === 'contact' ? (firstTouch.get(operation.b) ?? touch) : touch;
    for (const event of guardsOf(operation).flat()) {
      if (place[event]! < 0) place[event] = Math.min(touch, other) - 0.5;
    }
  }
  return place;
}
