// The board as an exit stands: what was recorded put in before and after the step that is shown, so that the picture shows what
// happened and not what was planned.
import { type Core, reachedAfter } from '../../../guide/index.ts';
import { type Board, NOTHING, worse } from '../../model/board.ts';
import type { Moment } from '../../model/picture.ts';

/**
 * The step's own end once something was recorded of it that changes the picture; else its beginning: a record without a place must not
 * show what the plan has cleaned by then.
 */
export const momentOf = (core: Core, step: number): Moment =>
  core.deviations.some((one) => one.step === step) && reachedAfter(core, step) !== undefined
    ? 'after'
    : 'before';

/**
 * Before anything is recorded, and where it cannot be worked out, the plan's own board. Nothing is shown as less than the plan has
 * it, and of the step that something was recorded of, its end no less than its beginning: that it cleans was not seen yet.
 */
export function asRecorded(board: Board, core: Core, step: number): Board {
  const [before, after] = [step, step + 1].map((done) => reachedAfter(core, done));
  if (before === undefined || after === undefined) return board;
  const [first, last] = [before, after].map(
    (reached) => new Map(reached.map(({ surface, needs }) => [surface, needs])),
  );
  const least = Object.entries(board.least).map(([surface, planned]) => {
    const row = Int32Array.from(planned);
    const begins = worse(planned[step] ?? NOTHING, first?.get(surface) ?? NOTHING);
    const ends = worse(planned[step + 1] ?? NOTHING, last?.get(surface) ?? NOTHING);
    row[step] = begins;
    row[step + 1] = worse(begins, ends);
    return [surface, row] as const;
  });
  return { ...board, least: Object.fromEntries(least) };
}
