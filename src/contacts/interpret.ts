// A procedure, step by step, into operations. `interpreter` can go on from any scene, which is how variants and the order
// search try a moved step without starting again; the same step in the same scene is worked out once (performer.ts).
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { Binder } from './bind.ts';
import type { Performed } from './performed.ts';
import { performerFor } from './performer.ts';
import type { Operation, Plan } from './plan.ts';
import type { Problem } from './problem.ts';
import { createRegistry, type Registry } from './registry.ts';
import type { Scene } from './scene.ts';

export type { Performed } from './performed.ts';

export interface Interpreter {
  readonly registry: Registry;
  readonly start: { readonly operations: readonly Operation[]; readonly scene: Scene };
  /** Performs a step in a scene; `index` is only where its problems and events say they are. */
  perform(scene: Scene, step: Step, index: number): Performed;
}

export interface Compiled {
  readonly procedure: Procedure;
  readonly agent: Agent;
  readonly plan: Plan;
  readonly performed: readonly Performed[];
  readonly problems: readonly Problem[];
  readonly interpreter: Interpreter;
}

/** The same, with its problems told of another position. */
function at(result: Performed, index: number): Performed {
  if (result.problems.every((found) => found.step === index)) return result;
  return { ...result, problems: result.problems.map((found) => ({ ...found, step: index })) };
}

/** An interpreter for one procedure and one agent. Its registry grows as variants meet new surfaces and slips. */
function interpreter(procedure: Procedure, agent: Agent): Interpreter {
  const performer = performerFor(procedure);
  const registry = createRegistry((id) => performer.names.described(id));
  const binder = new Binder(performer, registry, agent);
  const known = new Map<Scene, Map<Step, Performed>>();
  const { start } = performer;
  return {
    registry,
    start: { operations: binder.operations(start, -1), scene: start.after },
    perform(scene, step, index) {
      const done = known.get(scene)?.get(step);
      if (done) return at(done, index);
      const before = performer.scene(scene);
      const performed = binder.performed(performer.act(before, step), before, step, index);
      const inScene = known.get(before) ?? new Map<Step, Performed>();
      known.set(before, inScene.set(step, performed));
      return performed;
    },
  };
}

/** The plan of a procedure against one agent, with each step's technique, scenes and problems. */
export function compile(procedure: Procedure, agent: Agent): Compiled {
  const machine = interpreter(procedure, agent);
  let scene = machine.start.scene;
  const performed = procedure.steps.map((step, index) => {
    const result = machine.perform(scene, step, index);
    scene = result.after;
    return result;
  });
  return {
    procedure,
    agent,
    performed,
    problems: performed.flatMap((result) => result.problems),
    interpreter: machine,
    plan: {
      surfaces: [...machine.registry.surfaces],
      events: [...machine.registry.events],
      start: machine.start.operations,
      steps: performed.map(({ step, operations }) => ({ id: step.id, operations })),
    },
  };
}
