// What working a step out gives, and what working a whole procedure out gives: plain data that can be gone on from.
import type { Step } from '../domain/procedure.ts';
import type { Technique } from '../domain/techniques/index.ts';
import type { BasicEvent, Operation, Surface } from './plan.ts';
import type { Problem } from './problem.ts';
import type { Scene } from './scene.ts';

/** What one step does in one scene. */
export interface Performed {
  readonly step: Step;
  readonly operations: readonly Operation[];
  readonly problems: readonly Problem[];
  readonly technique: Technique;
  readonly before: Scene;
  readonly after: Scene;
}

/** All that working a procedure out once has given. */
export interface Worked {
  readonly surfaces: readonly Surface[];
  readonly events: readonly BasicEvent[];
  readonly start: { readonly operations: readonly Operation[]; readonly scene: Scene };
  readonly performed: readonly Performed[];
}
