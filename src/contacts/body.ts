// What is worn where and over what, on one body. Layers are in the order of putting on; each lies over those before
// it at the places both cover. All questions of the kind 'what does this hand touch with' are answered here.
import { type ItemId, type ItemKind, itemKind, type Part, type PartId } from '../domain/items.ts';
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

const sidesOf = (item: ItemId): readonly (Side | undefined)[] => (itemKind(item).pair ? SIDES : [undefined]);

function layersOf(item: ItemId): readonly Layer[] {
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

type Worn = Pick<Layer, 'item' | 'side'>;

/** Where an item's parts lie on a body, worked out once per item and side: this is asked for at every contact. */
interface Geometry {
  readonly at: ReadonlyMap<Place, Part>;
  readonly covers: ReadonlyMap<Part, readonly Place[]>;
  readonly runs: ReadonlyMap<Part, readonly Place[]>;
  /** What a part covers, and what it runs over. */
  readonly spans: ReadonlyMap<Part, readonly Place[]>;
  readonly lies: readonly Place[];
  /** What follows the person in the surface id. */
  readonly names: ReadonlyMap<Part, string>;
}

const GEOMETRIES: Readonly<Record<Side | 'none', Map<ItemId, Geometry>>> = {
  left: new Map(),
  right: new Map(),
  none: new Map(),
};

/** An item of a pair covers its own side, a sided part its own, anything else both. */
function placesFor(names: readonly PlaceName[], side: Side | undefined): readonly Place[] {
  return names.flatMap((name) => (side && isPaired(name) ? [placeOn(name, side)] : placesOf(name)));
}

function geometry(layer: Worn): Geometry {
  const ofSide = GEOMETRIES[layer.side ?? 'none'];
  const known = ofSide.get(layer.item);
  if (known) return known;
  const made = geometryOf(layer);
  ofSide.set(layer.item, made);
  return made;
}

function geometryOf(layer: Worn): Geometry {
  const { parts } = itemKind(layer.item);
  const spread = (names: (part: Part) => readonly PlaceName[]) =>
    new Map(parts.map((part) => [part, placesFor(names(part), layer.side ?? part.side)] as const));
  const covers = spread((part) => part.covers);
  const runs = spread((part) => part.runs ?? []);
  const spans = new Map(parts.map((part) => [part, [...covers.get(part)!, ...runs.get(part)!]] as const));
  // The first part listed wins where two cover the same place.
  const at = new Map(
    [...covers].reverse().flatMap(([part, places]) => places.map((place) => [place, part] as const)),
  );
  const side = layer.side ? `${layer.side}.` : '';
  const names = new Map(parts.map((part) => [part, `${layer.item}.${side}${part.id}`] as const));
  return { at, covers, runs, spans, lies: [...spans.values()].flat(), names };
}

export const coveredBy = (layer: Worn, part: Part): readonly Place[] =>
  geometry(layer).covers.get(part) ?? [];

const runsOver = (layer: Worn, part: Part): readonly Place[] => geometry(layer).runs.get(part) ?? [];

/** All places a part lies on: those it covers, then those it runs over. */
export const spannedBy = (layer: Worn, part: Part): readonly Place[] => geometry(layer).spans.get(part) ?? [];

const partAt = (layer: Layer, place: Place): Part | undefined => geometry(layer).at.get(place);

export const covers = (layer: Layer, place: Place): boolean => partAt(layer, place) !== undefined;

const SURFACE_IDS = new Map<string, Map<string, string>>();

/** `person.rest`, the same text each time: it is looked up at every contact, and new text would be hashed anew. */
function surfaceId(person: string, rest: string): string {
  const known = SURFACE_IDS.get(person)?.get(rest);
  if (known !== undefined) return known;
  const ofPerson = SURFACE_IDS.get(person) ?? new Map<string, string>();
  const made = `${person}.${rest}`;
  SURFACE_IDS.set(person, ofPerson.set(rest, made));
  return made;
}

/** Surface id of a part of somebody's item. */
export const partSurface = (person: string, layer: Worn, part: Part): string =>
  surfaceId(person, geometry(layer).names.get(part) ?? part.id);

function outermostBelow(body: Body, place: Place, below: number): string | undefined {
  for (let index = below - 1; index >= 0; index -= 1) {
    const layer = body.layers[index];
    const part = layer && partAt(layer, place);
    if (layer && part) return partSurface(body.id, layer, part);
  }
  return TISSUE[placeName(place)] ? surfaceId(body.id, place) : undefined;
}

/** What is outermost at a place, by the layers: they are never changed, and nobody else's. */
const OUTERMOST = new WeakMap<readonly Layer[], Map<Place, string | undefined>>();

/** The outermost surface at a place among the first `below` layers; undefined where only clothes would be. */
export function outermost(body: Body, place: Place, below = body.layers.length): string | undefined {
  if (below < body.layers.length) return outermostBelow(body, place, below);
  const known = OUTERMOST.get(body.layers) ?? new Map<Place, string | undefined>();
  if (known.size === 0) OUTERMOST.set(body.layers, known);
  const found = known.get(place);
  if (found !== undefined || known.has(place)) return found;
  const made = outermostBelow(body, place, below);
  known.set(place, made);
  return made;
}

/** All places of the part that lies outermost at a place among the first `below` layers; none where it is bare. */
export function reach(body: Body, place: Place, below: number): readonly Place[] {
  for (let index = below - 1; index >= 0; index -= 1) {
    const layer = body.layers[index];
    const part = layer && partAt(layer, place);
    if (layer && part) return coveredBy(layer, part);
  }
  return [];
}

export const indexOf = (body: Body, item: ItemId, side?: Side): number =>
  body.layers.findIndex((layer) => layer.item === item && layer.side === side);

export function wears(body: Body, item: ItemId, side?: Side): boolean {
  return body.layers.some((layer) => layer.item === item && (side === undefined || layer.side === side));
}

/** Gloves slide out from under a cuff, so a sleeve over a glove's wrist does not hold it. */
const slidesOut = (kind: ItemKind, place: Place): boolean =>
  kind.group === 'glove' && placeName(place) === 'wrist';

/** Whether `over` holds `under` in place: it covers, without hanging free, a place where `under` lies. */
function holds(over: Layer, under: Layer): boolean {
  const kind = itemKind(under.item);
  const { lies, at } = geometry(under);
  return itemKind(over.item).parts.some(
    (part: Part) =>
      !part.loose &&
      (coveredBy(over, part).some((place) => lies.includes(place) && !slidesOut(kind, place)) ||
        runsOver(over, part).some((place) => at.has(place))),
  );
}

/** Whether two layers lie on a common place, so that it matters which is over which. */
export function overlap(one: Layer, other: Layer): boolean {
  const mine = geometry(one).lies;
  return geometry(other).lies.some((place) => mine.includes(place));
}

/** The item that must come off first, if any; `together` are taken off in the same movement. */
export function blockedBy(body: Body, index: number, together: readonly ItemId[]): ItemId | undefined {
  const under = body.layers[index];
  if (!under) return undefined;
  return body.layers
    .slice(index + 1)
    .find((over) => over.item !== under.item && !together.includes(over.item) && holds(over, under))?.item;
}

/**
 * What must come off before an item can be opened or closed, if anything: it lies over the fastening, of which `part` is the
 * piece that is worked alone.
 */
export function fasteningUnder(body: Body, index: number, part?: PartId): ItemId | undefined {
  const layer = body.layers[index];
  if (!layer) return undefined;
  const worked = itemKind(layer.item).parts.filter(
    (own: Part) => own.closes && (part === undefined || own.id === part),
  );
  const places = worked.flatMap((own) => spannedBy(layer, own));
  const lies = (over: Layer): boolean =>
    itemKind(over.item).parts.some(
      (own: Part) => !own.loose && spannedBy(over, own).some((place) => places.includes(place)),
    );
  return body.layers.slice(index + 1).find((over) => over.item !== layer.item && lies(over))?.item;
}

function holdsClose(layer: Layer, place: Place): boolean {
  const part = partAt(layer, place);
  return part !== undefined && !part.loose;
}

/** Whether everything a part lies on is kept from the patient by enclosing items put on later; what hangs free does not. */
export function enclosed(body: Body, index: number, part: Part): boolean {
  const layer = body.layers[index];
  if (!layer) return false;
  const lies = spannedBy(layer, part);
  const over = body.layers.slice(index + 1).filter((candidate) => itemKind(candidate.item).encloses);
  return lies.length > 0 && lies.every((place) => over.some((candidate) => holdsClose(candidate, place)));
}

/** What an item lies wholly under, if anything: nobody gets at it to clean it. */
export function buriedUnder(body: Body, index: number): ItemId | undefined {
  const layer = body.layers[index];
  if (!layer) return undefined;
  const places = [...geometry(layer).at.keys()];
  const over = body.layers.slice(index + 1).filter(({ item }) => itemKind(item).encloses);
  if (places.length === 0 || !places.every((place) => over.some((one) => holdsClose(one, place))))
    return undefined;
  const all = (one: Layer): boolean => places.every((place) => holdsClose(one, place));
  return (over.find(all) ?? over.find((one) => places.some((place) => holdsClose(one, place))))?.item;
}

/** What is breathed through: air goes round a shield, so only what encloses them covers them. */
const AIRWAYS: readonly Place[] = ['nose', 'mouth'];

/** Places of skin, mucosa or clothes that no equipment covers. */
export function barePlaces(body: Body, places: readonly Place[]): readonly Place[] {
  const equipment = body.layers.filter((layer) => !itemKind(layer.item).underneath);
  const covered = (layer: Layer, place: Place): boolean =>
    partAt(layer, place) !== undefined && (itemKind(layer.item).encloses || !AIRWAYS.includes(place));
  return places.filter((place) => !equipment.some((layer) => covered(layer, place)));
}

export function withLayers(body: Body, layers: readonly Layer[]): Body {
  return { ...body, layers };
}
