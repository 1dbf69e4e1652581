// One procedure against one agent, all the way to conditions: what every finding is read from. Everything here can be
// gone on from, so that a mend or a variant is tried from the first step it changes.
import { type Compiled, compile } from '../contacts/interpret.ts';
import type { SurfaceClass } from '../contacts/plan.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { Diagram, type Node } from '../engine/diagram.ts';
import { Families } from '../engine/families.ts';
import { type Conditions, judgedOf, propagate } from '../engine/propagate.ts';
import { assertManageable, LIMITS } from './limits.ts';

/** Where a route may end, worst first (design: mucosa, skin, underclothes, the clean side). */
export const CLASS_GROUPS: readonly (readonly SurfaceClass[])[] = [
  ['mucosa'],
  ['skin'],
  ['clothes', 'shoes'],
  ['clean-side'],
];

export function classRank(surfaceClass: SurfaceClass): number {
  const rank = CLASS_GROUPS.findIndex((group) => group.includes(surfaceClass));
  return rank < 0 ? CLASS_GROUPS.length : rank;
}

export interface Analysis {
  readonly agent: Agent;
  readonly compiled: Compiled;
  readonly diagram: Diagram;
  readonly families: Families;
  readonly conditions: Conditions;
  /** Indices of protected surfaces, worst class first. */
  readonly protectedSurfaces: readonly number[];
  /** Per protected surface, in the same order: the condition it is judged by. */
  readonly judged: readonly Node[];
}

/** Compiles and propagates from a cold diagram. Throws `Tangled` where that cannot be done exactly. */
export function analyse(procedure: Procedure, agent: Agent): Analysis {
  const compiled = compile(procedure, agent);
  assertManageable(compiled.plan);
  const diagram = new Diagram(compiled.plan.events.length);
  const families = new Families(diagram);
  for (const table of [diagram, families]) table.allow(LIMITS.exactWork);
  const conditions = propagate(compiled.plan, diagram);
  const protectedSurfaces = compiled.plan.surfaces
    .map((surface, index) => ({ surface, index }))
    .filter(({ surface }) => surface.protected)
    .sort((a, b) => classRank(a.surface.class) - classRank(b.surface.class))
    .map(({ index }) => index);
  return {
    agent,
    compiled,
    diagram,
    families,
    conditions,
    protectedSurfaces,
    judged: protectedSurfaces.map((surface) => judgedOf(conditions, surface)),
  };
}
