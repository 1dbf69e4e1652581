// The order of the events in the diagram. The size of a decision diagram hangs on it, its meaning does not. An event stands
// where its last use is: a pinhole that matters in ten steps stands with the tenth, and a soiled strap with
// the step that first touches it. On the three-person procedure that is a tenth of the nodes of plain event order.

import type { Operation, Plan } from '../contacts/plan.ts';

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

/** Hears the events of an operation. */
function eachEvent(operation: Operation, hear: (event: number) => void): void {
  if (operation.op === 'contact' || operation.op === 'taint') operation.when.forEach(hear);
  else if (operation.op === 'sanitise') for (const guard of operation.failure) guard.forEach(hear);
}

function lastUses(plan: Plan, operations: readonly Operation[]): Float64Array {
  const place = new Float64Array(plan.events.length).fill(-1);
  const firstTouch = new Float64Array(plan.surfaces.length).fill(Infinity);
  operations.forEach((operation, at) => {
    eachEvent(operation, (event) => {
      place[event] = at;
    });
    firstTouch[operation.a] = Math.min(firstTouch[operation.a]!, at);
    if (operation.op === 'contact') firstTouch[operation.b] = Math.min(firstTouch[operation.b]!, at);
  });
  for (const operation of plan.start) {
    const touch = Math.min(firstTouch[operation.a]!, operations.length);
    const other = operation.op === 'contact' ? Math.min(firstTouch[operation.b]!, touch) : touch;
    eachEvent(operation, (event) => {
      if (place[event]! < 0) place[event] = other - 0.5;
    });
  }
  return place;
}
