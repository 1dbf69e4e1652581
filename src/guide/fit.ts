// How large the text must be to be read from where the reader stands, and what then fits the unit's screen. Height of
// capitals follows from the angle at which they are seen (evidence legibility.*): 11.6 mm at 2 m, 17.5 mm at 3 m.
import type { FitFault } from '../domain/guiding.ts';
import { evidenceField, evidenceNumber } from '../evidence/index.ts';

/** The screen that the wearer reads, as the unit measured it. */
export interface Display {
  readonly widthMillimetres: number;
  readonly heightMillimetres: number;
  /** From the screen to the eyes of whoever reads it from furthest away. */
  readonly distanceMetres: number;
}

export interface Fit {
  /** Height of a capital letter, millimetres. */
  readonly capital: number;
  /** Size of the type (its em), millimetres: what a style sheet is given. */
  readonly size: number;
  /** Characters in a row; the text is broken to this. */
  readonly characters: number;
  /** Rows that the large part of the screen has room for. */
  readonly rows: number;
  readonly fault?: FitFault;
}

/** Rows shown at once, at most. */
export const ROWS = evidenceField('legibility.screen', 'rows');

const MILLIMETRES = 1000;
const MINUTES_OF_HALF_A_TURN = 180 * 60;
const INCH = 25.4;

/** Half of the angle at which a capital is seen well, radians. */
const halfAngle = (): number =>
  (evidenceField('legibility.capital-angle', 'good') * Math.PI) / MINUTES_OF_HALF_A_TURN / 2;

/** Height in millimetres of a capital seen at the good angle from so many metres. */
export const capitalHeight = (metres: number): number => 2 * metres * MILLIMETRES * Math.tan(halfAngle());

/** Metres from which a capital of so many millimetres is seen at the good angle. */
const readableFrom = (capital: number): number => capital / (2 * MILLIMETRES * Math.tan(halfAngle()));

/** The observer's own screen. */
export interface OwnScreen {
  /** Width of its picture as somebody measured it; where nobody did, a pixel is taken as the usual one. */
  readonly widthMillimetres?: number;
  /** From where it is to be read. */
  readonly distanceMetres: number;
}

export interface OwnFit {
  /** Type size in pixels that the distance asks for. */
  readonly needed: number;
  /** What type of so many pixels is worth: height of its capitals in millimetres, and from how many metres it is read. */
  readonly worth: (size: number) => { readonly capital: number; readonly metres: number };
}

/** What the observer's own screen needs; `pixels`: width of the whole screen. */
export function ownFitOf({ widthMillimetres, distanceMetres }: OwnScreen, pixels: number): OwnFit {
  const pixel =
    widthMillimetres === undefined
      ? INCH / evidenceNumber('legibility.unmeasured-screen')
      : widthMillimetres / pixels;
  const share = evidenceField('legibility.typeface', 'capital');
  return {
    needed: capitalHeight(distanceMetres) / share / pixel,
    worth: (size) => {
      const capital = size * share * pixel;
      return { capital, metres: readableFrom(capital) };
    },
  };
}

/** What fits. `fault` where two rows do not; words that are too wide are found when a script is broken to it. */
export function fitOf({ widthMillimetres, heightMillimetres, distanceMetres }: Display): Fit {
  const capital = capitalHeight(distanceMetres);
  const size = capital / evidenceField('legibility.typeface', 'capital');
  const width = widthMillimetres * evidenceField('legibility.screen', 'width');
  const height = heightMillimetres * evidenceField('legibility.screen', 'height');
  const characters = Math.max(
    1,
    Math.floor(width / (size * evidenceField('legibility.typeface', 'character'))),
  );
  const rows = Math.floor(height / (size * evidenceField('legibility.typeface', 'spacing')));
  return { capital, size, characters, rows, ...(rows < ROWS ? { fault: 'too-low' as const } : {}) };
}
