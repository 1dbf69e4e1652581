// The places of a body: where equipment lies, where a person touches with, and what is protected.
// A place with a `site` is bare skin or mucosa when nothing is worn there; the others are only
// reached through the clothes worn underneath, which are items of their own (see items.ts).
// Left and right are apart because gloves, sleeves and feet are cleaned and uncovered one by one.

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];

export type Tissue = 'mucosa' | 'skin';

const MIDDLE = [
  'scalp',
  'ears',
  'face',
  'eyes',
  'nose',
  'mouth',
  'neck',
  'chest',
  'waist',
  'back',
  'seat',
] as const;

const PAIRED = ['arm', 'wrist', 'hand', 'thigh', 'shin', 'ankle', 'foot', 'sole'] as const;

export type MiddlePlace = (typeof MIDDLE)[number];
export type PairedPlace = (typeof PAIRED)[number];
/** A place as tables name it: paired ones without a side. */
export type PlaceName = MiddlePlace | PairedPlace;
/** A place on one body: paired ones with their side. */
export type Place = MiddlePlace | `${PairedPlace}.${Side}`;

/** What is bare there when nothing is worn; places not listed are only reached through clothes. */
export const TISSUE: Readonly<Partial<Record<PlaceName, Tissue>>> = {
  scalp: 'skin',
  ears: 'skin',
  face: 'skin',
  eyes: 'mucosa',
  nose: 'mucosa',
  mouth: 'mucosa',
  neck: 'skin',
  arm: 'skin',
  wrist: 'skin',
  hand: 'skin',
  ankle: 'skin',
};

export const PLACE_NAMES: readonly PlaceName[] = [...MIDDLE, ...PAIRED];

export const PLACES: readonly Place[] = [
  ...MIDDLE,
  ...PAIRED.flatMap((name) => SIDES.map((side): Place => `${name}.${side}`)),
];

const PAIRED_NAMES: ReadonlySet<string> = new Set(PAIRED);

export function isPaired(name: PlaceName): name is PairedPlace {
  return PAIRED_NAMES.has(name);
}

/** The place a table's name means on a given side; `side` is ignored where there is only one. */
export function placeOn(name: PlaceName, side: Side): Place {
  return isPaired(name) ? `${name}.${side}` : name;
}

/** All places a table's name means: one, or left and right. */
export function placesOf(name: PlaceName): readonly Place[] {
  return isPaired(name) ? SIDES.map((side): Place => `${name}.${side}`) : [name];
}

const NAMES: ReadonlyMap<string, PlaceName> = new Map(
  PLACES.map((place) => [place, place.split('.')[0] as PlaceName]),
);

export function placeName(place: Place): PlaceName {
  return NAMES.get(place) ?? ((place.split('.')[0] ?? place) as PlaceName);
}

export function sideOf(place: Place): Side | undefined {
  return place.split('.')[1] as Side | undefined;
}

export function otherSide(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}
