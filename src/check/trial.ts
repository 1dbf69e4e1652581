// A trial: an edit worked out from the first step it changes, on the base analysis' own interpreter and diagram, so that
// hundreds of mends and thousands of variants cost little more than the steps they touch.
import type { Performed, Interpreter } from '../contacts/interpret.ts';
import type { Operation, Plan } from '../contacts/plan.ts';
import type { Scene } from '../contacts/scene.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Diagram, Node } from '../engine/diagram.ts';
import { FALSE } from '../engine/diagram.ts';
import { copyOf, everUntil, type Moment, momentAfter, stepOnce, UNWATCHED } from '../engine/propagate.ts';
import type { Analysis } from './analysis.ts';
import { type Edit, edited, firstChanged } from './edit.ts';

export interface Trial {
  readonly steps: readonly Step[];
  readonly performed: readonly Performed[];
  readonly procedure: Procedure;
  readonly plan: Plan;
  /** Per surface index: the condition it is judged by (protected), or as it is at the end. */
  readonly judged: Int32Array;
}

/** A moment with room for surfaces that only the variant touches. */
function widened(moment: Moment, interpreter: Interpreter): Moment {
  const { surfaces } = interpreter.registry;
  if (moment.state.length >= surfaces.length) return moment;
  const state = new Int32Array(surfaces.length);
  state.set(moment.state);
  const ever = Int32Array.from(surfaces, (surface, index) =>
    index < moment.ever.length ? (moment.ever[index] ?? UNWATCHED) : surface.protected ? FALSE : UNWATCHED,
  );
  return { state, ever };
}

function continueFrom(analysis: Analysis, from: number, steps: readonly Step[]): readonly Performed[] {
  const { performed, interpreter } = analysis.compiled;
  const kept = performed.slice(0, from);
  let scene: Scene = kept.at(-1)?.after ?? interpreter.start.scene;
  const rest = steps.slice(from).map((step, offset) => {
    const result = interpreter.perform(scene, step, from + offset);
    scene = result.after;
    return result;
  });
  return [...kept, ...rest];
}

function runOn(diagram: Diagram, moment: Moment, operations: readonly (readonly Operation[])[]): void {
  for (const list of operations) stepOnce(diagram, moment, list);
}

function judgedAfter(diagram: Diagram, moment: Moment, interpreter: Interpreter): Int32Array {
  const ever = everUntil(diagram, moment);
  return Int32Array.from(interpreter.registry.surfaces, (surface, index): Node => {
    const watched = surface.protected && surface.judged === 'ever';
    return (watched ? ever[index] : moment.state[index]) ?? FALSE;
  });
}

/** Works out the edited procedure. The base analysis is not changed; its registry and diagram may grow. */
export function tryEdit(analysis: Analysis, edit: Edit): Trial {
  const { compiled, conditions, diagram } = analysis;
  const { interpreter, procedure } = compiled;
  const steps = edited(procedure.steps, edit);
  const from = Math.min(firstChanged(edit), procedure.steps.length);
  const performed = continueFrom(analysis, from, steps);
  diagram.extend(interpreter.registry.events.length);
  const moment = widened(copyOf(momentAfter(conditions, from - 1)), interpreter);
  runOn(
    diagram,
    moment,
    performed.slice(from).map((result) => result.operations),
  );
  return {
    steps,
    performed,
    procedure: { ...procedure, steps },
    plan: {
      surfaces: interpreter.registry.surfaces,
      events: interpreter.registry.events,
      start: interpreter.start.operations,
      steps: steps.map((step, index) => ({ id: step.id, operations: performed[index]?.operations ?? [] })),
    },
    judged: judgedAfter(diagram, moment, interpreter),
  };
}
