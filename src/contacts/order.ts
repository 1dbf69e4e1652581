// The order of the basic events, which is the order of variables in the engine's diagram: by the last step that can use
// them, the latest on top. A hole in a glove can leak until the glove is off; told from its first step it would have to
// be remembered through all conditions in between, and an exit with three people took 30 times the nodes (decision 0002).
import type { Worked } from './performed.ts';
import type { Guard, Operation } from './plan.ts';
import { type Scene, sceneWithHoles } from './scene.ts';

function guardsOf(operation: Operation): readonly Guard[] {
  if (operation.op === 'sanitise') return operation.failure;
  return operation.op === 'contact' || operation.op === 'taint' ? [operation.when] : [];
}

/** Per event: the last step whose operations ask for it; -1 where only the start does. */
function lastUses({ events, performed }: Worked): Int32Array {
  const last = new Int32Array(events.length).fill(-1);
  performed.forEach(({ operations }, step) => {
    for (const operation of operations)
      for (const guard of guardsOf(operation)) for (const event of guard) last[event] = step;
  });
  return last;
}

function withGuards(operation: Operation, change: (guard: Guard) => Guard): Operation {
  if (operation.op === 'sanitise') return { ...operation, failure: operation.failure.map(change) };
  if (operation.op !== 'contact' && operation.op !== 'taint') return operation;
  return operation.when.length === 0 ? operation : { ...operation, when: change(operation.when) };
}

/** The same with its events in the order of their last use; those of the same step stay as they were. */
export function byLastUse(worked: Worked): Worked {
  const last = lastUses(worked);
  const order = worked.events.map((_, event) => event).sort((a, b) => last[a]! - last[b]! || a - b);
  const place = new Int32Array(order.length);
  order.forEach((event, at) => {
    place[event] = at;
  });
  const guard = (events: Guard): Guard => events.map((event) => place[event]!);
  const operations = (list: readonly Operation[]) => list.map((operation) => withGuards(operation, guard));
  const scenes = new Map<Scene, Scene>();
  const scene = (old: Scene): Scene => {
    const made = scenes.get(old) ?? sceneWithHoles(old, guard);
    scenes.set(old, made);
    return made;
  };
  return {
    surfaces: worked.surfaces,
    events: order.map((event) => worked.events[event]!),
    start: { operations: operations(worked.start.operations), scene: scene(worked.start.scene) },
    performed: worked.performed.map((one) => ({
      ...one,
      operations: operations(one.operations),
      before: scene(one.before),
      after: scene(one.after),
    })),
  };
}
