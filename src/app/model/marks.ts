// How contaminated a surface is, in the three grades that the screens show by pattern, symbol and words. There is no
// grade for 'clean': where nothing is known, that is what it says.
import { type Board, NOTHING } from './board.ts';

export const MARKS = ['contaminated', 'slips', 'nothing'] as const;
export type Mark = (typeof MARKS)[number];

/** The grade of a least number of slips. */
export function markOf(least: number): Mark {
  if (least === NOTHING) return 'nothing';
  return least === 0 ? 'contaminated' : 'slips';
}

/** -1 nothing known, 0 contaminated though nobody slips, n at least so many slips or circumstances. `step` -1: start. */
export const leastAt = (board: Board, surface: string, step: number): number =>
  board.least[surface]?.[step + 1] ?? NOTHING;

export const markAt = (board: Board, surface: string, step: number): Mark =>
  markOf(leastAt(board, surface, step));
