// The figure's measures: a body seen from the front, 200 units wide and 440 high, the wearer's right on the viewer's
// left. One side is drawn and mirrored for the other, so left and right cannot drift apart.
import { type Place, placeName, sideOf } from '../domain/places.ts';

export const FIGURE = { width: 200, height: 440, floor: 424 } as const;

export type Point = readonly [x: number, y: number];

export const mirrored = ([x, y]: Point): Point => [FIGURE.width - x, y];

/** Where a place lies, on the wearer's right where there are two. */
const SPOTS: Readonly<Record<string, Point>> = {
  scalp: [100, 17],
  ears: [74, 52],
  face: [84, 62],
  eyes: [110, 46],
  nose: [100, 56],
  mouth: [100, 72],
  neck: [100, 88],
  chest: [100, 124],
  waist: [100, 190],
  back: [126, 140],
  seat: [122, 228],
  arm: [55, 140],
  wrist: [39, 204],
  hand: [36, 232],
  thigh: [84, 268],
  shin: [86, 350],
  ankle: [87, 390],
  foot: [82, 408],
  sole: [82, 419],
};

export function spotOf(place: Place): Point {
  const spot = SPOTS[placeName(place)] ?? [100, 220];
  return sideOf(place) === 'left' ? mirrored(spot) : spot;
}
