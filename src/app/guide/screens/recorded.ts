// The board as an exit stands: what was recorded put in before and after the step that is shown, so that the picture shows what
// happened and not what was planned; on the observer's screen, and on a second display that is told only where the two differ.
import { type Core, reachedAfter } from '../../../guide/index.ts';
import { type Board, NOTHING, worse } from '../../model/board.ts';
import type { Moment } from '../../model/picture.ts';
import type { Recorded, Worse } from '../shell/view.ts';

/**
 * The step's own end once something was recorded of it that changes the picture; else its beginning: a record without a place must not
 * show what the plan has cleaned by then.
 */
export const momentOf = (core: Core, step: number): Moment =>
  core.deviations.some((one) => one.step === step) && reachedAfter(core, step) !== undefined
    ? 'after'
    : 'before';

function worseOf({ least }: Board, core: Core, step: number): readonly Worse[] | null {
  const [before, after] = [step, step + 1].map((done) => reachedAfter(core, done));
  if (before === undefined || after === undefined) return null;
  const [first, last] = [before, after].map(
    (reached) => new Map(reached.map(({ surface, needs }) => [surface, needs])),
  );
  return Object.entries(least).flatMap(([surface, planned]): readonly Worse[] => {
    const [from, to] = [planned[step] ?? NOTHING, planned[step + 1] ?? NOTHING];
    const begins = worse(from, first?.get(surface) ?? NOTHING);
    const ends = worse(begins, worse(to, last?.get(surface) ?? NOTHING));
    return begins === from && ends === to ? [] : [[surface, begins, ends]];
  });
}

/**
 * Of the step that something was recorded of, its end is no less than its beginning: that it cleans was not seen yet.
 * `board`: the plan's own.
 */
export const recordedOn = (board: Board, core: Core, step: number): Recorded => ({
  step,
  moment: momentOf(core, step),
  worse: worseOf(board, core, step),
});

/** Nothing is shown as less than the plan has it, whatever is told. */
export function withRecorded(board: Board, { step, worse: told }: Recorded): Board {
  if (told === null) return board;
  const rows = told.flatMap(([surface, begins, ends]) => {
    const planned = board.least[surface];
    if (!planned) return [];
    const row = Int32Array.from(planned);
    row[step] = worse(planned[step] ?? NOTHING, begins);
    row[step + 1] = worse(planned[step + 1] ?? NOTHING, ends);
    return [[surface, row] as const];
  });
  return { ...board, least: { ...board.least, ...Object.fromEntries(rows) } };
}
