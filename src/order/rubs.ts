// Hand hygiene as the search does it everywhere: worked out once per scene and person, and given the name of its place. Only its
// slips hang on the name.
import type { Interpreter, Performed } from '../contacts/interpret.ts';
import type { Operation } from '../contacts/plan.ts';
import type { Scene } from '../contacts/scene.ts';
import type { Step } from '../domain/procedure.ts';
import type { ProductId } from '../domain/products.ts';
import type { SlipId } from '../domain/slips.ts';

/** Hygiene of somebody in a scene with a product, as the step of this id. */
export type Rub = (scene: Scene, who: string, product: ProductId, id: string) => Performed;

/** The event of the pattern under the step's own name. */
function renamed({ registry }: Interpreter, event: number, pattern: Step, id: string): number {
  const { key, what, step, who, on } = registry.events[event]!;
  return key.startsWith(`${pattern.id}:`)
    ? registry.event(`${id}${key.slice(pattern.id.length)}`, what as SlipId, step, who, on)
    : event;
}

/** `step` makes one object of equal steps, as the interpreter wants them. */
export function rubberFor(machine: Interpreter, step: (fields: Step) => Step): Rub {
  const known = new Map<Performed, Map<string, Performed>>();
  const named = (pattern: Performed, id: string): Performed => ({
    ...pattern,
    step: step({ ...pattern.step, id }),
    operations: pattern.operations.map(
      (one): Operation =>
        one.op === 'sanitise'
          ? {
              ...one,
              failure: one.failure.map((guard) =>
                guard.map((event) => renamed(machine, event, pattern.step, id)),
              ),
            }
          : one,
    ),
  });
  return (scene, who, product, id) => {
    const pattern = machine.perform(
      scene,
      step({ id: `rub-${who}`, who, action: 'sanitise', items: [], product }),
      0,
    );
    const same = known.get(pattern) ?? new Map<string, Performed>();
    known.set(pattern, same);
    const done = same.get(id) ?? named(pattern, id);
    same.set(id, done);
    return done;
  };
}
