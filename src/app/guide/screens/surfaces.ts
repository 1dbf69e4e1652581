// The surfaces that something may have touched, once per procedure: those of its plan, against its first agent.
import { compile } from '../../../contacts/interpret.ts';
import type { Procedure } from '../../../domain/procedure.ts';

const SURFACES = new WeakMap<Procedure, readonly string[]>();

export function compiledSurfaces(procedure: Procedure): readonly string[] {
  const known = SURFACES.get(procedure);
  if (known) return known;
  const made = compile(procedure, procedure.agents[0] ?? 'enveloped').plan.surfaces.map(({ id }) => id);
  SURFACES.set(procedure, made);
  return made;
}
