// A procedure, step by step, into operations. `interpreter` can go on from any scene, which is how variants and the order
// search try a moved step without starting again; the same step in the same scene is worked out once.
import { itemKind } from '../domain/items.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { usualTechnique, techniqueOf, type Technique } from '../domain/techniques/index.ts';
import { indexOf, partSurface } from './body.ts';
import { type Frame, itemSides, owner, problem } from './frame.ts';
import { checkCleaned, checkNeeds } from './needs.ts';
import { perform } from './perform.ts';
import type { Operation, Plan } from './plan.ts';
import type { Problem } from './problem.ts';
import { createRegistry, type Registry } from './registry.ts';
import { type Scene, sceneKey, sceneOf } from './scene.ts';
import { settle } from './settle.ts';
import { begin } from './start.ts';

/** What one step does in one scene. */
export interface Performed {
  readonly step: Step;
  readonly operations: readonly Operation[];
  readonly problems: readonly Problem[];
  readonly technique: Technique;
  readonly before: Scene;
  readonly after: Scene;
}

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

const NONE: Technique = { id: 'none', action: 'say', groups: [], moves: [], time: 'duration.say' };

const techniqueFor = (step: Step): Technique | undefined =>
  step.technique === undefined ? usualTechnique(step.action, step.items) : techniqueOf(step.technique);

/** Equipment put on comes from its box or rack: nothing that happened to the last one counts. What is on stays as it is. */
function unpack(frame: Frame): void {
  if (frame.step.action !== 'put-on') return;
  for (const item of frame.step.items) {
    for (const side of itemSides(frame, 'both', item)) {
      if (indexOf(owner(frame), item, side) >= 0) continue;
      const layer = side ? { item, side } : { item };
      for (const part of itemKind(item).parts) {
        frame.operations.push({
          op: 'fresh',
          a: frame.registry.surface(partSurface(owner(frame).id, layer, part)),
        });
      }
    }
  }
}

function performStep(frame: Frame): void {
  checkNeeds(frame);
  unpack(frame);
  for (const move of frame.technique.moves) perform(frame, move);
  checkCleaned(frame);
  settle(frame);
}

/** The same, with its problems told of another position. */
function at(result: Performed, index: number): Performed {
  if (result.problems.every((found) => found.step === index)) return result;
  return { ...result, problems: result.problems.map((found) => ({ ...found, step: index })) };
}

/** An interpreter for one procedure and one agent. Its registry grows as variants meet new surfaces and slips. */
export function interpreter(procedure: Procedure, agent: Agent): Interpreter {
  const registry = createRegistry(procedure);
  const memo = new Map<string, Performed>();
  const frameFor = (scene: Scene, step: Step, index: number): Frame => ({
    procedure,
    registry,
    agent,
    step,
    index,
    technique: techniqueFor(step) ?? NONE,
    before: scene,
    scene,
    operations: [],
    problems: [],
    gone: new Set(),
  });
  const START: Step = { id: 'start', who: procedure.people[0]?.id ?? '', action: 'say', items: [] };
  const opening = frameFor(sceneOf(procedure), START, -1);
  begin(opening);
  const run = (scene: Scene, step: Step, index: number): Performed => {
    const frame = frameFor(scene, step, index);
    if (frame.technique === NONE)
      problem(frame, 'technique-unclear', { action: step.action, item: step.items[0] ?? '' });
    performStep(frame);
    const { operations, problems, technique } = frame;
    return { step, operations, problems, technique, before: scene, after: frame.scene };
  };
  return {
    registry,
    start: { operations: opening.operations, scene: opening.scene },
    perform(scene, step, index) {
      const key = `${step.id}#${JSON.stringify(step)}#${sceneKey(scene)}`;
      const known = memo.get(key);
      if (known) return at(known, index);
      const result = run(scene, step, index);
      memo.set(key, result);
      return result;
    },
  };
}

/** The plan of a procedure against one agent, with each step's technique, scenes and problems. */
export function compile(procedure: Procedure, agent: Agent): Compiled {
  const machine = interpreter(procedure, agent);
  const performed: Performed[] = [];
  let scene = machine.start.scene;
  procedure.steps.forEach((step, index) => {
    const result = machine.perform(scene, step, index);
    performed.push(result);
    scene = result.after;
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
      steps: procedure.steps.map((step, index) => ({
        id: step.id,
        operations: performed[index]?.operations ?? [],
      })),
    },
  };
}
