// What is worn where and over what, on one body. Layers are in the order of putting on; each lies over those before
// it at the places both cover. All questions of the kind 'what does this hand touch with' are answered here.
import { type ItemId, type ItemKind, itemKind, type Part } from '../domain/items.ts';
import {
  isPaired,
  type Place,
  type PlaceName,
  placeName,
  placeOn,
  placesOf,
  type Side,
  SIDES,
  TISSUE,
} from '../domain/places.ts';
import type { Person, Role } from '../domain/procedure.ts';
import type { Guard } from './plan.ts';

/** One item as worn; one of a pair has a layer of its own for each side. */
export interface Layer {
  readonly item: ItemId;
  readonly side?: Side;
  readonly fastened: boolean;
  /** Events under which it leaks from outside to what lies beneath: a hole, and an inspection that missed it. */
  readonly hole?: Guard;
}

export interface Body {
  readonly id: string;
  readonly role: Role;
  readonly hand: Side;
  readonly layers: readonly Layer[];
  readonly zone: string;
  /** Fixture under the feet. */
  readonly standing: string;
  readonly seated?: string;
  readonly wet: boolean;
}

export const sidesOf = (item: ItemId): readonly (Side | undefined)[] =>
  itemKind(item).pair ? SIDES : [undefined];

export function layersOf(item: ItemId): readonly Layer[] {
  const fastened = itemKind(item).closure !== 'none';
  return sidesOf(item).map((side) => (side ? { item, side, fastened } : { item, fastened }));
}

/** A body as it stands at the start of the procedure. */
export function bodyOf(person: Person): Body {
  return {
    id: person.id,
    role: person.role,
    hand: person.hand,
    layers: [...person.underneath, ...person.wears].flatMap(layersOf),
    zone: person.starts,
    standing: `${person.starts}-floor`,
    wet: false,
  };
}

/** Places a part covers on this layer: an item of a pair covers its own side, a sided part its own. */
function placesFor(names: readonly PlaceName[], side: Side | undefined): readonly Place[] {
  return names.flatMap((name) => (side && isPaired(name) ? [placeOn(name, side)] : placesOf(name)));
}

export function coveredBy(layer: { item: ItemId; side?: Side }, part: Part): readonly Place[] {
  return placesFor(part.covers, layer.side ?? part.side);
}

export function runsOver(layer: { item: ItemId; side?: Side }, part: Part): readonly Place[] {
  return placesFor(part.runs ?? [], layer.side ?? part.side);
}

const partAt = (layer: Layer, place: Place): Part | undefined =>
  itemKind(layer.item).parts.find((part: Part) => coveredBy(layer, part).includes(place));

/** Surface id of a part of somebody's item. */
export function partSurface(person: string, layer: { item: ItemId; side?: Side }, part: Part): string {
  return `${person}.${layer.item}.${layer.side ? `${layer.side}.` : ''}${part.id}`;
}

/** The outermost surface at a place among the first `below` layers; undefined where only clothes would be. */
export function outermost(body: Body, place: Place, below = body.layers.length): string | undefined {
  for (let index = below - 1; index >= 0; index -= 1) {
    const layer = body.layers[index];
    const part = layer && partAt(layer, place);
    if (layer && part) return partSurface(body.id, layer, part);
  }
  return TISSUE[placeName(place)] ? `${body.id}.${place}` : undefined;
}

export const indexOf = (body: Body, item: ItemId, side?: Side): number =>
  body.layers.findIndex((layer) => layer.item === item && layer.side === side);

export function wears(body: Body, item: ItemId, side?: Side): boolean {
  return body.layers.some((layer) => layer.item === item && (side === undefined || layer.side === side));
}

/** Whether a hand is bare. */
export const isBare = (body: Body, side: Side): boolean =>
  outermost(body, `hand.${side}`) === `${body.id}.hand.${side}`;

/** Gloves slide out from under a cuff, so a sleeve over a glove's wrist does not hold it. */
const slidesOut = (kind: ItemKind, place: Place): boolean =>
  kind.group === 'glove' && placeName(place) === 'wrist';

/** Whether `over` holds `under` in place: it covers, without hanging free, a place where `under` lies. */
function holds(over: Layer, under: Layer): boolean {
  const kind = itemKind(under.item);
  const lies = kind.parts.flatMap((part: Part) => [...coveredBy(under, part), ...runsOver(under, part)]);
  const covers = kind.parts.flatMap((part: Part) => coveredBy(under, part));
  return itemKind(over.item).parts.some(
    (part: Part) =>
      !part.loose &&
      (coveredBy(over, part).some((place) => lies.includes(place) && !slidesOut(kind, place)) ||
        runsOver(over, part).some((place) => covers.includes(place))),
  );
}

const places = (layer: Layer): readonly Place[] =>
  itemKind(layer.item).parts.flatMap((part: Part) => [...coveredBy(layer, part), ...runsOver(layer, part)]);

/** Whether two layers lie on a common place, so that it matters which is over which. */
export function overlap(one: Layer, other: Layer): boolean {
  const mine = places(one);
  return places(other).some((place) => mine.includes(place));
}

/** The item that must come off first, if any; `together` are taken off in the same movement. */
export function blockedBy(body: Body, index: number, together: readonly ItemId[]): ItemId | undefined {
  const under = body.layers[index];
  if (!under) return undefined;
  return body.layers
    .slice(index + 1)
    .find((over) => over.item !== under.item && !together.includes(over.item) && holds(over, under))?.item;
}

/** Whether everything a part lies on is kept from the patient by enclosing items put on later. */
export function enclosed(body: Body, index: number, part: Part): boolean {
  const layer = body.layers[index];
  if (!layer) return false;
  const lies = [...coveredBy(layer, part), ...runsOver(layer, part)];
  const over = body.layers.slice(index + 1).filter((candidate) => itemKind(candidate.item).encloses);
  return lies.length > 0 && lies.every((place) => over.some((candidate) => partAt(candidate, place)));
}

/** Places of skin, mucosa or clothes that no equipment covers. */
export function barePlaces(body: Body, places: readonly Place[]): readonly Place[] {
  const equipment = body.layers.filter((layer) => !itemKind(layer.item).underneath);
  return places.filter((place) => !equipment.some((layer) => partAt(layer, place)));
}

export function withLayers(body: Body, layers: readonly Layer[]): Body {
  return { ...body, layers };
}
