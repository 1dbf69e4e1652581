// The registry gives surfaces and basic events their numbers, once, so that a procedure and all its variants speak of
// the same variables. What a surface is made of, and whether it is protected, is read off its id's owner here.
import type { ItemId } from '../domain/items.ts';
import { itemKind } from '../domain/items.ts';
import { type Place, placeName, TISSUE } from '../domain/places.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Material } from '../domain/products.ts';
import { type SlipId, slipOf } from '../domain/slips.ts';
import type { BasicEvent, Surface, SurfaceClass } from './plan.ts';

export interface Registry {
  readonly surfaces: readonly Surface[];
  readonly events: readonly BasicEvent[];
  surface(id: string): number;
  event(key: string, what: SlipId, step: number, who?: string, on?: string): number;
}

interface Described {
  readonly class: SurfaceClass;
  readonly material: Material;
  readonly person?: string;
}

const CLASS_MATERIAL: Readonly<Record<SurfaceClass, Material>> = {
  mucosa: 'mucosa',
  skin: 'skin',
  clothes: 'cloth',
  shoes: 'equipment',
  'clean-side': 'hard',
  fixture: 'hard',
  equipment: 'equipment',
};

const PROTECTED: ReadonlySet<SurfaceClass> = new Set(['mucosa', 'skin', 'clothes', 'shoes', 'clean-side']);

function describePerson(person: string, rest: readonly string[]): Described {
  const place = rest.join('.') as Place;
  const tissue = TISSUE[placeName(place)];
  if (tissue) return { class: tissue, material: tissue, person };
  const kind = itemKind(rest[0] as ItemId);
  const base = kind.underneath ? (kind.group === 'shoes' ? 'shoes' : 'clothes') : 'equipment';
  return { class: base, material: kind.group === 'glove' ? 'glove' : CLASS_MATERIAL[base], person };
}

function describeSurface(procedure: Procedure, id: string): Described {
  const [owner = '', ...rest] = id.split('.');
  if (procedure.people.some((person) => person.id === owner)) return describePerson(owner, rest);
  const clean = procedure.fixtures.find((fixture) => fixture.id === rest[0])?.clean ?? false;
  return { class: clean ? 'clean-side' : 'fixture', material: 'hard' };
}

/** A surface, and what it is made of. */
export interface DescribedSurface {
  readonly surface: Surface;
  readonly material: Material;
}

interface Table<T> {
  readonly rows: T[];
  /** The row's number; `make` is asked once per id. */
  number(id: string, make: () => T): number;
}

function table<T>(): Table<T> {
  const rows: T[] = [];
  const index = new Map<string, number>();
  return {
    rows,
    number(id, make) {
      const known = index.get(id);
      if (known !== undefined) return known;
      index.set(id, rows.length);
      return rows.push(make()) - 1;
    },
  };
}

/** The surface of this id among the people and fixtures of a procedure. */
export function surfaceOf(procedure: Procedure, id: string): DescribedSurface {
  const { class: surfaceClass, material, person } = describeSurface(procedure, id);
  const surface: Surface = {
    id,
    class: surfaceClass,
    protected: PROTECTED.has(surfaceClass),
    judged: surfaceClass === 'shoes' ? 'end' : 'ever',
    ...(person === undefined ? {} : { person }),
  };
  return { surface, material };
}

function eventOf(key: string, what: SlipId, step: number, who?: string, on?: string): BasicEvent {
  const { kind, prior, visible } = slipOf(what);
  return {
    key,
    kind,
    what,
    step,
    prior,
    visible,
    ...(who === undefined ? {} : { who }),
    ...(on === undefined ? {} : { on }),
  };
}

/** An empty registry. Numbers are given in the order of asking and never change; `surfaceOf` tells what a surface is. */
export function createRegistry(surfaceOf: (id: string) => Surface): Registry {
  const surfaces = table<Surface>();
  const events = table<BasicEvent>();
  return {
    surfaces: surfaces.rows,
    events: events.rows,
    surface: (id) => surfaces.number(id, () => surfaceOf(id)),
    event: (key, what, step, who, on) => events.number(key, () => eventOf(key, what, step, who, on)),
  };
}
