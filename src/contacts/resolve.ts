// From a technique's references to surfaces: whose hand in which glove, which part of which item, what lies beneath it.
import { type ItemId, itemKind, type Part, type PartId } from '../domain/items.ts';
import type { Ref } from '../domain/moves.ts';
import { isPaired, type Place, placeOn, placesOf, type Side, sideOf } from '../domain/places.ts';
import { fixtureKind, type Fixture } from '../domain/room.ts';
import { type Body, indexOf, outermost, partSurface, spannedBy } from './body.ts';
import { actor, bodyFor, type Frame, itemAt, itemSides, owner, sides } from './frame.ts';
import { bodyIn } from './scene.ts';

const known = (ids: readonly (string | undefined)[]): readonly string[] => [
  ...new Set(ids.filter((id): id is string => id !== undefined)),
];

/**
 * The fixture a reference means: the step's own, else the first of that kind where the actor is; on the way to another
 * zone also there, for the door between two zones is listed in one of them.
 */
export function fixtureFor(frame: Frame, kind: string | undefined): Fixture | undefined {
  const fixtures = frame.procedure.fixtures;
  const named = fixtures.find((fixture) => fixture.id === frame.step.fixture);
  if (named && (kind === undefined || named.kind === kind)) return named;
  if (kind === undefined) return undefined;
  const near = [actor(frame).zone, ...(frame.step.action === 'move' ? [frame.step.zone] : [])];
  return near
    .map((zone) => fixtures.find((fixture) => fixture.kind === kind && fixture.zone === zone))
    .find((fixture) => fixture !== undefined);
}

export const fixtureSurface = (fixture: Fixture, part?: string): string =>
  `room.${fixture.id}.${part ?? fixtureKind(fixture.kind).parts[0]}`;

function handSurfaces(frame: Frame, ref: Extract<Ref, { at: 'hand' }>): readonly string[] {
  const body = bodyFor(frame, ref.whose);
  if (!body) return [];
  return known(sides(frame, ref.which, 'hand', body).map((side) => outermost(body, `hand.${side}`)));
}

/** A part with the places it lies on, so that brushing can be matched place by place. */
export interface PlacedPart {
  readonly id: string;
  readonly places: readonly Place[];
}

/** Whether there is such a thing in this step: worn as it began or now, or on its way from the box. */
function present(frame: Frame, item: ItemId, side: Side | undefined): boolean {
  const { id } = owner(frame);
  return (
    frame.step.action === 'put-on' ||
    [frame.before, frame.scene].some((scene) => indexOf(bodyIn(scene, id), item, side) >= 0)
  );
}

/** Parts of one of the step's items; none of what is not worn, so that what has left is not touched again. */
export function partsOf(
  frame: Frame,
  item: number,
  parts: readonly PartId[] | 'all',
  side: Parameters<typeof itemSides>[1],
): readonly PlacedPart[] {
  const id = itemAt(frame, item);
  if (!id) return [];
  const person = owner(frame).id;
  return itemSides(frame, side, id).flatMap((which) => {
    if (!present(frame, id, which)) return [];
    const layer = which ? { item: id, side: which } : { item: id };
    return itemKind(id)
      .parts.filter((part: Part) => parts === 'all' || parts.includes(part.id))
      .map((part: Part) => ({
        id: partSurface(person, layer, part),
        places: spannedBy(layer, part),
      }));
  });
}

/** What lies under one of the step's items at these places. */
export function under(frame: Frame, item: number, places: readonly Place[]): readonly string[] {
  const body: Body = owner(frame);
  const id = itemAt(frame, item);
  if (id === undefined) return [];
  /** Of a pair, the layer of that side; where the side says nothing, the one that was put on first. */
  const below = (place: Place): number => {
    const own = body.layers.findIndex(
      (layer) =>
        layer.item === id && (layer.side === undefined || layer.side === (sideOf(place) ?? layer.side)),
    );
    return own >= 0 ? own : body.layers.length;
  };
  return known(places.map((place) => outermost(body, place, below(place))));
}

function placeSurfaces(frame: Frame, ref: Extract<Ref, { at: 'place' }>): readonly string[] {
  const body = bodyFor(frame, ref.whose);
  if (!body) return [];
  return known(
    ref.places
      .flatMap((name) =>
        isPaired(name)
          ? sides(frame, ref.side, 'hand', body).map((side) => placeOn(name, side))
          : placesOf(name),
      )
      .map((place) => outermost(body, place)),
  );
}

function floorSurfaces(frame: Frame, which: 'clean' | 'here'): readonly string[] {
  const fixtures = frame.procedure.fixtures;
  const cleanZones = frame.procedure.zones.filter((zone) => zone.side === 'clean').map((zone) => zone.id);
  const wanted =
    which === 'here'
      ? fixtures.filter((fixture) => fixture.id === actor(frame).standing)
      : fixtures.filter((fixture) => fixture.kind === 'floor' && cleanZones.includes(fixture.zone));
  return wanted.map((fixture) => fixtureSurface(fixture));
}

/** What the step itself names: a part of an item, or a place of the owner's body. */
function namedSurfaces(frame: Frame): readonly string[] {
  const { place, part, items } = frame.step;
  const named = part === undefined ? (['front', 'outside', 'upper', 'unit'] as const) : [part];
  return known([
    ...(place ? [outermost(owner(frame), place)] : []),
    ...(items.length > 0 ? partsOf(frame, 0, named, 'both').map((found) => found.id) : []),
  ]);
}

type Resolver<At extends Ref['at']> = (frame: Frame, ref: Extract<Ref, { at: At }>) => readonly string[];

const RESOLVERS: { readonly [At in Ref['at']]: Resolver<At> } = {
  hand: handSurfaces,
  part: (frame, ref) => partsOf(frame, ref.item, ref.parts, ref.side).map((part) => part.id),
  beneath: (frame, ref) => {
    const places = partsOf(frame, ref.item, 'all', ref.side).flatMap((part) => part.places);
    return under(frame, ref.item, places);
  },
  place: placeSurfaces,
  named: namedSurfaces,
  floor: (frame, ref) => floorSurfaces(frame, ref.which),
  fixture: (frame, ref) => {
    const fixture = fixtureFor(frame, ref.kind);
    return fixture ? [fixtureSurface(fixture, ref.part)] : [];
  },
};

/** Surface ids a reference means at this moment; empty where there is nothing of the kind. */
export function resolve(frame: Frame, ref: Ref): readonly string[] {
  return (RESOLVERS[ref.at] as Resolver<Ref['at']>)(frame, ref);
}
