// Another way on, as the shell's search answers: the steps in place of the rest, and what they are worth. Slips and
// circumstances that it takes at least to reach something protected, as read and this way; null where nothing does.
import type { SurfaceClass } from '../contacts/plan.ts';
import type { Step } from '../domain/procedure.ts';

interface Barriers {
  readonly before: number | null;
  readonly after: number | null;
}

/** The same of one protected surface. */
export interface Place extends Barriers {
  readonly surface: string;
  readonly class: SurfaceClass;
}

export interface Continuation {
  readonly id: string;
  readonly steps: readonly Step[];
  readonly barriers: Barriers;
  /** Every protected surface. Exits that were recorded before this was told have none. */
  readonly places?: readonly Place[];
}

/** What a search answers; null where nothing better than the rest as written was found. */
export type Found = Continuation | null | 'not-worked-out';

/** Mucosa first: where a route ends counts before how many slips it takes elsewhere. */
const BY_CLASS: readonly SurfaceClass[] = ['mucosa', 'skin', 'clothes'];

const orderOf = (one: SurfaceClass): number => {
  const at = BY_CLASS.indexOf(one);
  return at < 0 ? BY_CLASS.length : at;
};

const count = (barriers: number | null): number => barriers ?? Infinity;

/** Fewest barriers this way first, then fewest as read, then by where a route ends. */
const worse = (a: Place, b: Place): number => {
  const [after, before] = [
    [count(a.after), count(b.after)],
    [count(a.before), count(b.before)],
  ] as const;
  if (after[0] !== after[1]) return after[0] < after[1] ? -1 : 1;
  if (before[0] !== before[1]) return before[0] < before[1] ? -1 : 1;
  return orderOf(a.class) - orderOf(b.class);
};

/** What the other way changes, and what it leaves as it is, each with the worst first. */
export function changesIn(places: readonly Place[]): {
  readonly changed: readonly Place[];
  readonly unchanged: readonly Place[];
} {
  const sorted = places.toSorted(worse);
  return {
    changed: sorted.filter(({ before, after }) => before !== after),
    unchanged: sorted.filter(({ before, after }) => before === after),
  };
}
