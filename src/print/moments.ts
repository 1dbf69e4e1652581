// What the papers need to know of each step: the scene as it begins, what is contaminated then though nobody slips, and
// whether the step leaves somebody's hands so. Read from the check's own conditions, against any of its agents.
import { outermost } from '../contacts/body.ts';
import { compile } from '../contacts/interpret.ts';
import type { Scene } from '../contacts/scene.ts';
import { type Side, SIDES } from '../domain/places.ts';
import { TRUE } from '../engine/diagram.ts';
import { conditionAt } from '../engine/propagate.ts';
import type { Verdict } from '../verify.ts';

export interface Hold {
  readonly who: string;
  /** Index of the step that cleans those hands next; absent where none does. */
  readonly next?: number;
}

export interface StepMoment {
  readonly before: Scene;
  readonly after: Scene;
  /** Whether a surface is contaminated as the step begins, though nobody slips. */
  readonly contaminated: (surface: string) => boolean;
  readonly holds: readonly Hold[];
}

type Tainted = (step: number, surface: string) => boolean;

/** Whether a surface is contaminated after a step (-1: the start) though nobody slips, against any agent. */
function taintedIn({ analyses }: Verdict): Tainted {
  const numbered = analyses.map(({ compiled, conditions }) => ({
    conditions,
    at: new Map(compiled.plan.surfaces.map(({ id }, index) => [id, index])),
  }));
  return (step, surface) =>
    numbered.some(({ conditions, at }) => {
      const index = at.get(surface);
      return index !== undefined && conditionAt(conditions, step, index) === TRUE;
    });
}

const handAt = (scene: Scene, person: string, side: Side): string => {
  const body = scene.bodies[person];
  return (body && outermost(body, `hand.${side}`)) ?? `${person}.hand.${side}`;
};

function holdsAfter(
  { procedure }: Verdict,
  tainted: Tainted,
  step: number,
  before: Scene,
  after: Scene,
): readonly Hold[] {
  const turned = (person: string): boolean =>
    SIDES.some(
      (side) =>
        tainted(step, handAt(after, person, side)) && !tainted(step - 1, handAt(before, person, side)),
    );
  return procedure.people
    .filter(({ id }) => turned(id))
    .map(({ id }) => {
      const next = procedure.steps.findIndex(
        ({ who, action }, index) => index > step && who === id && action === 'sanitise',
      );
      return { who: id, ...(next < 0 ? {} : { next }) };
    });
}

/** One per step. Without conditions (a check that could not be finished) nothing is shown as contaminated. */
export function momentsOf(verdict: Verdict): readonly StepMoment[] {
  const { procedure, analyses, agents } = verdict;
  const compiled = analyses[0]?.compiled ?? compile(procedure, agents[0] ?? 'enveloped');
  const tainted = taintedIn(verdict);
  return compiled.performed.map(({ before, after }, step) => ({
    before,
    after,
    contaminated: (surface) => tainted(step - 1, surface),
    holds: holdsAfter(verdict, tainted, step, before, after),
  }));
}
