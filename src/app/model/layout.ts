// Where everything in the picture goes: each person's figure with the labels of hidden surfaces to its side, the fixtures
// below, and the point at which a contact with a surface is marked. Numbers are drawing units.
import type { ItemId, PartId } from '../../domain/items.ts';
import type { Place } from '../../domain/places.ts';
import type { FixtureView, PersonView, PictureView, SeenSurface } from './picture.ts';
import { namedBy } from './surfaceId.ts';

export type Point = readonly [x: number, y: number];

export const SIZES = {
  figure: 200,
  chip: 154,
  chipHeight: 31,
  chipGap: 4,
  top: 30,
  figureHeight: 450,
  /** Top of the ground, from the top of the figure. */
  ground: 424,
  gap: 14,
  strip: 74,
  fixture: 86,
} as const;

/** More labels than this are counted only; the ledger has them all. */
export const MOST_CHIPS = 12;

export interface Chip extends SeenSurface {
  readonly x: number;
  readonly y: number;
}

export interface PersonSpot {
  readonly person: PersonView;
  /** Left edge of the figure. */
  readonly x: number;
  /** Right edge of figure and labels. */
  readonly right: number;
  readonly chips: readonly Chip[];
  /** What one stands on, drawn under the feet. */
  readonly ground?: FixtureView;
  /** Whether the labels stand left of the figure. */
  readonly outer: boolean;
  /** Hidden surfaces for which there was no room. */
  readonly more: number;
}

export interface FixtureSpot extends FixtureView {
  readonly x: number;
  readonly y: number;
}

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly people: readonly PersonSpot[];
  readonly fixtures: readonly FixtureSpot[];
  /** Surface id to the point where a contact with it is marked. */
  readonly anchors: ReadonlyMap<string, Point>;
}

/** The drawing's own measures: where a part or a place of a figure lies. */
export interface Measures {
  readonly partAt: (item: ItemId, part: PartId, side: 'left' | 'right' | undefined) => Point | undefined;
  readonly placeAt: (place: Place) => Point;
}

/** `x`: left edge of the labels. */
function chipsOf(person: PersonView, x: number): readonly Chip[] {
  return person.hidden.slice(0, MOST_CHIPS).map((hidden, index) => ({
    ...hidden,
    x,
    y: SIZES.top + 4 + index * (SIZES.chipHeight + SIZES.chipGap),
  }));
}

function peopleSpots({ people, fixtures }: PictureView): readonly PersonSpot[] {
  let left = 0;
  return people.map((person, index) => {
    // Of several, the first has labels on the outer side, so that contacts between people do not cross them.
    const outer = index === 0 && people.length > 1;
    const room = person.hidden.length > 0 ? SIZES.chip : 0;
    const x = outer ? left + room : left;
    const chips = chipsOf(person, outer ? left : left + SIZES.figure + 4);
    left += SIZES.figure + room + SIZES.gap;
    const ground = fixtures.find((one) => one.fixture === person.standing);
    return {
      person,
      x,
      ...(ground ? { ground } : {}),
      right: left - SIZES.gap,
      outer,
      chips,
      more: person.hidden.length - chips.length,
    };
  });
}

const widthOf = (spots: readonly PersonSpot[]): number => (spots.at(-1)?.right ?? SIZES.figure) + 4;

function fixtureSpots(fixtures: readonly FixtureView[], width: number): readonly FixtureSpot[] {
  const each = Math.max(1, Math.floor(width / SIZES.fixture));
  const y = SIZES.top + SIZES.figureHeight + 8;
  return fixtures.map((fixture, index) => ({
    ...fixture,
    x: (index % each) * SIZES.fixture,
    y: y + Math.floor(index / each) * SIZES.strip,
  }));
}

function figureAnchors(
  spot: PersonSpot,
  fixtures: readonly FixtureView[],
  measures: Measures,
  anchors: Map<string, Point>,
): void {
  const place = (surface: string, at: Point | undefined): void => {
    if (at && !anchors.has(surface)) anchors.set(surface, [spot.x + at[0], SIZES.top + at[1]]);
  };
  const inset = spot.outer ? SIZES.chip - 14 : 6;
  // Whatever one stands on is drawn under the feet.
  if (spot.ground)
    anchors.set(spot.ground.surface, [spot.x + SIZES.figure / 2, SIZES.top + SIZES.ground + 3]);
  const chair = fixtures.find((one) => one.fixture === spot.person.seated);
  if (chair) anchors.set(chair.surface, [spot.x + 54, SIZES.top + 262]);
  for (const chip of spot.chips) anchors.set(chip.surface, [chip.x + inset, chip.y + SIZES.chipHeight / 2]);
  for (const { place: at, surface } of spot.person.bare) place(surface, measures.placeAt(at));
  for (const surface of spot.person.drawn) {
    const named = namedBy(surface);
    if (named.is === 'part') place(surface, measures.partAt(named.item, named.part, named.side));
  }
}

/** Lays the picture out. */
export function layoutOf(picture: PictureView, measures: Measures): Layout {
  const people = peopleSpots(picture);
  const underfoot = people.map((spot) => spot.ground?.fixture);
  const width = Math.max(widthOf(people), SIZES.figure + SIZES.chip);
  const others = picture.fixtures.filter((one) => !underfoot.includes(one.fixture));
  const fixtures = fixtureSpots(others, width);
  const anchors = new Map<string, Point>();
  for (const spot of people) figureAnchors(spot, fixtures, measures, anchors);
  for (const { surface, x, y } of fixtures) if (!anchors.has(surface)) anchors.set(surface, [x + 24, y + 22]);
  const rows =
    fixtures.length === 0 ? 0 : (fixtures.at(-1)?.y ?? 0) - SIZES.top - SIZES.figureHeight + SIZES.strip;
  return { width, height: SIZES.top + SIZES.figureHeight + Math.max(rows, 4), people, fixtures, anchors };
}
