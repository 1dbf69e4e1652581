// The figures of a measure by name, in the order of their weight: where two measures first differ is what a reason, a gap
// and a loss are told by.
import type { Measure } from '../check/finding.ts';

export const FIGURES = [
  'impossible',
  'open.mucosa',
  'open.skin',
  'open.clothes-shoes',
  'open.clean-side',
  'chance.mucosa',
  'chance.skin',
  'chance.clothes-shoes',
  'chance.clean-side',
  'departures',
  'seconds',
] as const;
export type FigureName = (typeof FIGURES)[number];

const valuesOf = ({ impossible, open, chance, departures, seconds }: Measure): readonly number[] => [
  impossible,
  ...open,
  ...chance,
  departures,
  seconds,
];

/** One figure in which two measures differ. */
export interface Difference {
  readonly figure: FigureName;
  readonly from: number;
  readonly to: number;
}

/** Chances closer than this are the same, as where measures are compared. */
const SAME = 1e-9;

/** Every figure in which the second differs, weightiest first. */
export function differences(from: Measure, to: Measure): readonly Difference[] {
  const [before, after] = [valuesOf(from), valuesOf(to)];
  return FIGURES.flatMap((figure, at) => {
    const difference = { figure, from: before[at] ?? 0, to: after[at] ?? 0 };
    const same = figure.startsWith('chance') ? SAME : 0;
    return Math.abs(difference.to - difference.from) > same ? [difference] : [];
  });
}

export const firstDifference = (from: Measure, to: Measure): Difference | undefined =>
  differences(from, to)[0];
