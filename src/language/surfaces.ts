// Names of surfaces, as a start or an acceptance may write them: `wearer.hand.left`, `wearer.apron.front`,
// `wearer.outer-gloves.left.cuff`, `room.door.handle`. All that a file can have are listed, so that a misspelt one
// finds its neighbour.
import { type ItemId, itemKind } from '../domain/items.ts';
import { placeName, PLACES, SIDES, TISSUE } from '../domain/places.ts';
import { fixtureKind, type FixtureKindId } from '../domain/room.ts';
import { type Context, floorOf, UNDERNEATH } from './context.ts';
import { nearest } from './nearest.ts';
import type { Path } from './report.ts';

/** The parts of one item, left and right apart where it is a pair. */
function itemSurfaces(id: ItemId): readonly string[] {
  const { pair, parts } = itemKind(id);
  const names = parts.map((part) => part.id);
  if (!pair) return names.map((part) => `${id}.${part}`);
  return SIDES.flatMap((side) => names.map((part) => `${id}.${side}.${part}`));
}

const SKIN: readonly string[] = PLACES.filter((place) => TISSUE[placeName(place)] !== undefined);

/** What a person has on at the start or puts on in a step. */
function itemsOf({ people, steps, wearer }: Context, name: string): readonly ItemId[] {
  const person = people.get(name);
  const later = steps.flatMap((step) =>
    step?.do === 'put-on' && (step.of ?? step.who ?? wearer) === name ? (step.item ?? []) : [],
  );
  const all = [...(person?.underneath ?? UNDERNEATH), ...(person?.wears ?? []), ...later];
  return [...new Set(all.filter((item) => item !== undefined))];
}

function roomSurfaces({ file, zones }: Context): readonly string[] {
  const kinds = new Map<string, FixtureKindId>(
    [...(zones?.keys() ?? [])].map((zone) => [floorOf(zone), 'floor']),
  );
  for (const [name, fixture] of Object.entries(file.room?.fixtures ?? {})) {
    if (fixture?.kind) kinds.set(name, fixture.kind);
  }
  return [...kinds].flatMap(([name, kind]) => fixtureSurfaces(name, kind));
}

/** The surfaces of somebody who has these items on: skin, mucosa and the parts of each item. */
export const personSurfaces = (name: string, items: readonly ItemId[]): readonly string[] =>
  [...SKIN, ...items.flatMap(itemSurfaces)].map((rest) => `${name}.${rest}`);

export const fixtureSurfaces = (name: string, kind: FixtureKindId): readonly string[] =>
  fixtureKind(kind).parts.map((part) => `room.${name}.${part}`);

/** Every surface that a file's people and room have. */
export function surfacesOf(context: Context): readonly string[] {
  const ofPeople = [...context.people.keys()].flatMap((name) => personSurfaces(name, itemsOf(context, name)));
  return [...ofPeople, ...roomSurfaces(context)];
}

/** Shown as allowed: those that share most with what was written, so that the list stays readable. */
function alike(surface: string, known: readonly string[]): readonly string[] {
  const parts = surface.split('.');
  for (let length = parts.length - 1; length > 0; length -= 1) {
    const start = `${parts.slice(0, length).join('.')}.`;
    const found = known.filter((one) => one.startsWith(start));
    if (found.length > 0) return found;
  }
  return [...new Set(known.map((one) => `${one.split('.')[0]}...`))];
}

export function checkSurface(
  context: Context,
  path: Path,
  surface: string | undefined,
  known: readonly string[],
): void {
  if (surface === undefined || known.includes(surface) || !context.zones) return;
  const near = alike(surface, known);
  const better = nearest(surface, near);
  const hint = better === undefined ? {} : { nearest: better };
  context.report.name(path, 'unknown-surface', surface, known, { allowed: near, ...hint });
}
