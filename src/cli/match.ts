// Finds the surface that somebody means: its id, or a few words of it in any order ('left hand', 'wearer scalp').
import { nearest } from '../language/nearest.ts';

export interface NamedSurface {
  readonly id: string;
  readonly name: string;
  readonly ofWearer: boolean;
}

export type Match =
  | { readonly found: string }
  /** None, or too many: what may have been meant, the likeliest first. */
  | { readonly candidates: readonly string[] };

/** Articles and prepositions of every language there is. */
const FILLING: ReadonlySet<string> = new Set(
  'the of s a le la les l d de du des el los las del o os as do da dos das'.split(' '),
);

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    // Accents are left aside: 'épaule' is found by 'epaule'.
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '' && !FILLING.has(word));

const MOST = 8;

function within(wanted: readonly string[], { id, name }: NamedSurface): boolean {
  const has = new Set([...wordsIn(id), ...wordsIn(name)]);
  return wanted.length > 0 && wanted.every((word) => has.has(word) || has.has(`${word}s`));
}

/** The only one; else the only one of the wearer, whose exit it is; else the one whose name has the fewest other words. */
function single(fitting: readonly NamedSurface[]): NamedSurface | undefined {
  const wearer = fitting.filter(({ ofWearer }) => ofWearer);
  const near = wearer.length > 0 ? wearer : fitting;
  const shortest = Math.min(...near.map(({ name }) => wordsIn(name).length));
  const whole = near.filter(({ name }) => wordsIn(name).length === shortest);
  return [fitting, wearer, whole].find((some) => some.length === 1)?.[0];
}

/** Looks for a surface by id, then by its words. */
export function matchSurface(text: string, surfaces: readonly NamedSurface[]): Match {
  const exact = surfaces.find(({ id, name }) => id === text.trim().toLowerCase() || name === text.trim());
  if (exact) return { found: exact.id };
  const wanted = wordsIn(text);
  const fitting = surfaces.filter((surface) => within(wanted, surface));
  const meant = single(fitting);
  if (meant) return { found: meant.id };
  if (fitting.length > 0) return { candidates: fitting.slice(0, MOST).map(({ id }) => id) };
  const near = nearest(
    text,
    surfaces.map(({ id }) => id),
  );
  return { candidates: near === undefined ? [] : [near] };
}
