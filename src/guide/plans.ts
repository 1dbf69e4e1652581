// A procedure worked out against each of its agents, once: what the guide asks of the plan, it asks many times an hour.
// Kept by the procedure itself, so that the guide stays a pure function of what it is given.
import { type Compiled, compile } from '../contacts/interpret.ts';
import type { BasicEvent } from '../contacts/plan.ts';
import type { Procedure } from '../domain/procedure.ts';

const COMPILED = new WeakMap<Procedure, readonly Compiled[]>();

/** One per agent of the procedure, in its order. */
export function compiledFor(procedure: Procedure): readonly Compiled[] {
  const known = COMPILED.get(procedure);
  if (known) return known;
  const made = procedure.agents.map((agent) => compile(procedure, agent));
  COMPILED.set(procedure, made);
  return made;
}

const EVENTS = new WeakMap<Procedure, ReadonlyMap<string, BasicEvent>>();

/** Every slip and circumstance by its key; what an agent makes impossible is told by another. */
export function eventsFor(procedure: Procedure): ReadonlyMap<string, BasicEvent> {
  const known = EVENTS.get(procedure);
  if (known) return known;
  const made = new Map(
    compiledFor(procedure).flatMap(({ plan }) => plan.events.map((event) => [event.key, event] as const)),
  );
  EVENTS.set(procedure, made);
  return made;
}

/** The slips that can happen at a step, in the order of the plan; circumstances stand with the start. */
export const eventsAt = (procedure: Procedure, step: number): readonly BasicEvent[] =>
  [...eventsFor(procedure).values()].filter((event) => event.step === step);
