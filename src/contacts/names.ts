// The numbers of a performer: surfaces by id, events by the step that asks and by key. They go on growing while procedures
// are edited; a plan has numbers of its own (registry.ts).
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Material } from '../domain/products.ts';
import type { SlipId } from '../domain/slips.ts';
import type { Surface } from './plan.ts';
import { type DescribedSurface, surfaceOf } from './registry.ts';

/** An event by name, as the registry of a plan wants it. */
export interface NamedEvent {
  readonly key: string;
  readonly what: SlipId;
  readonly who?: string;
  readonly on?: string;
}

export interface Names {
  /** Ids of surfaces, by number. */
  readonly surfaces: readonly string[];
  readonly events: readonly NamedEvent[];
  surface(id: string): number;
  /** Whether this one asks for the first time, as far as the one who asked last tells. */
  isFirst(surface: number, asking: object): boolean;
  /** Of a step, or of the start; the same key in another step is another event. */
  event(step: Step | undefined, event: NamedEvent): number;
  material(surface: number): Material;
  /** What a surface is, known or not. */
  described(id: string): Surface;
}

export function namesFor(procedure: Procedure): Names {
  const surfaces: string[] = [];
  const described = new Map<string, DescribedSurface>();
  const events: NamedEvent[] = [];
  const surfaceNumbers = new Map<string, number>();
  const asked: object[] = [];
  const eventNumbers = new Map<Step | undefined, Map<string, number>>();
  const descriptionOf = (id: string): DescribedSurface => {
    const known = described.get(id) ?? surfaceOf(procedure, id);
    described.set(id, known);
    return known;
  };
  return {
    surfaces,
    events,
    surface(id) {
      const known = surfaceNumbers.get(id);
      if (known !== undefined) return known;
      surfaceNumbers.set(id, surfaces.length);
      return surfaces.push(id) - 1;
    },
    isFirst(surface, asking) {
      if (asked[surface] === asking) return false;
      asked[surface] = asking;
      return true;
    },
    event(step, event) {
      const own = eventNumbers.get(step) ?? new Map<string, number>();
      if (own.size === 0) eventNumbers.set(step, own);
      const known = own.get(event.key);
      if (known !== undefined) return known;
      own.set(event.key, events.length);
      return events.push(event) - 1;
    },
    material: (surface) => descriptionOf(surfaces[surface] ?? '').material,
    described: (id) => descriptionOf(id).surface,
  };
}
