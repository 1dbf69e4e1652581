// What the checks of names need to know of a file: who and what it names. Built from what is left after wrong values
// were taken out; a list is undefined where the file's own is missing or wrong, and nothing is checked against it.
import type { ItemId } from '../domain/items.ts';
import { ROLES, type Role } from '../domain/procedure.ts';
import type { ZoneSide } from '../domain/room.ts';
import type { Report } from './report.ts';
import type { Loose, LooseFile, PersonShape } from './shape.ts';
import type { StepShape } from './shape-steps.ts';

export type LoosePerson = Loose<PersonShape>;
export type LooseStep = Partial<StepShape>;

export interface Context {
  readonly file: LooseFile;
  readonly report: Report;
  readonly people: ReadonlyMap<string, LoosePerson>;
  readonly zones: ReadonlyMap<string, ZoneSide | undefined> | undefined;
  /** Declared and automatic ones. */
  readonly fixtures: readonly string[] | undefined;
  /** Empty where the file has none. */
  readonly products: readonly string[] | undefined;
  readonly steps: readonly (LooseStep | undefined)[];
  readonly wearer: string | undefined;
}

/** What people wear beneath unless the file says otherwise. */
export const UNDERNEATH: readonly ItemId[] = ['scrubs', 'shoes'];

/** The floor that each zone has without being asked. */
export const floorOf = (zone: string): string => `${zone}-floor`;

/** The role of a person: as written, else the name itself where it is one. */
export const roleOf = (name: string, person: LoosePerson | undefined): Role | undefined =>
  person?.role ?? ROLES.find((role) => role === name);

/** Who does a step that names nobody: the first wearer, else the first person. */
export function defaultDoer(people: ReadonlyMap<string, LoosePerson>): string | undefined {
  for (const [name, person] of people) if (roleOf(name, person) === 'wearer') return name;
  return people.keys().next().value;
}

/** Zone in which a person starts unless the file says; undefined where the room has none of that side. */
export function defaultStart(
  role: Role | undefined,
  kind: LooseFile['kind'],
  zones: ReadonlyMap<string, ZoneSide | undefined>,
): string | undefined {
  const wanted = kind === 'donning' ? 'clean' : role === 'wearer' ? 'patient' : 'doffing';
  for (const [zone, side] of zones) if (side === wanted) return zone;
  return undefined;
}

function entries<Value>(
  record: Readonly<Record<string, Value>> | undefined,
): ReadonlyMap<string, NonNullable<Value>> {
  return new Map(
    Object.entries(record ?? {}).map(([key, value]) => [key, value ?? ({} as NonNullable<Value>)]),
  );
}

function productsOf(file: LooseFile): readonly string[] | undefined {
  if (!Object.hasOwn(file, 'products')) return [];
  const { products } = file;
  return products?.includes(undefined) ? undefined : (products as readonly string[] | undefined);
}

export function createContext(file: LooseFile, report: Report): Context {
  const people: ReadonlyMap<string, LoosePerson> = entries<LoosePerson | undefined>(file.people);
  const written = file.room?.zones;
  const zones = written && new Map(Object.entries(written));
  const declared = Object.keys(file.room?.fixtures ?? {});
  return {
    file,
    report,
    people,
    zones,
    fixtures: zones && [...new Set([...declared, ...[...zones.keys()].map(floorOf)])],
    products: productsOf(file),
    steps: (file.steps ?? []) as readonly (LooseStep | undefined)[],
    wearer: defaultDoer(people),
  };
}
