// What working a step out gives: plain data that can be gone on from. First for nobody in particular, surfaces and events by
// the numbers of the performer (names.ts); then for one procedure against one agent, by those of its plan.
import type { Step } from '../domain/procedure.ts';
import type { Material, ProductId } from '../domain/products.ts';
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

/** A product on a material: whether that works is the agent's to say. */
export interface Credit {
  readonly product: ProductId;
  readonly material: Material;
}

/** An event that a step asks about; with credit, only where that product works. */
export interface Asked {
  readonly event: number;
  readonly credit?: Credit;
}

/** What one step does in one scene, against whatever agent and wherever in the procedure. */
export interface Acted {
  readonly operations: readonly Operation[];
  /** Cleanings that fail by their slips alone where the product works on the agent, elsewhere whatever happens. */
  readonly credits: readonly (readonly [Operation, Credit])[];
  readonly problems: readonly Omit<Problem, 'step'>[];
  readonly technique: Technique;
  readonly after: Scene;
  /** Each once, in the order in which they were asked about. */
  readonly surfaces: readonly number[];
  readonly events: readonly Asked[];
}
