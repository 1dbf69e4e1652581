// What working a step out gives: plain data that can be gone on from.
import type { Step } from '../domain/procedure.ts';
import type { Technique } from '../domain/techniques/index.ts';
import type { Operation } from './plan.ts';
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
