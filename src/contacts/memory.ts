// Steps that were worked out, by the scene they start in: variants and mends meet the same step in the same scene thousands
// of times. Scenes that are equal become one object, so that a question costs two look-ups and no text.
import type { Step } from '../domain/procedure.ts';
import type { Performed } from './performed.ts';
import { type Scene, sceneKey } from './scene.ts';

/** Performed steps by the scene they start in and the step; one scene stands for all that are equal to it. */
export interface Memory {
  scene(scene: Scene): Scene;
  get(before: Scene, step: Step): Performed | undefined;
  /** Keeps it, its scenes replaced by those that stand for them. */
  keep(performed: Performed): Performed;
}

export function memory(): Memory {
  const scenes = new Map<string, Scene>();
  const steps = new Map<Scene, Map<Step, Performed>>();
  const standing = (scene: Scene): Scene => {
    if (steps.has(scene)) return scene;
    const key = sceneKey(scene);
    const known = scenes.get(key) ?? scene;
    if (known === scene) {
      scenes.set(key, scene);
      steps.set(scene, new Map());
    }
    return known;
  };
  return {
    scene: standing,
    get: (before, step) => steps.get(before)?.get(step),
    keep({ step, operations, problems, technique, ...reached }) {
      const before = standing(reached.before);
      const kept = { step, operations, problems, technique, before, after: standing(reached.after) };
      steps.get(before)?.set(step, kept);
      return kept;
    },
  };
}
