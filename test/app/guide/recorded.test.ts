// The picture of an exit: the plan's until something is recorded, then what was recorded, before and after the step that is shown.
import { expect, test } from 'vitest';
import { analyse } from '../../../src/check/analysis.ts';
import { momentOf, recordedOn, withRecorded } from '../../../src/app/guide/screens/recorded.ts';
import { boardOf, NOTHING } from '../../../src/app/model/board.ts';
import { leastAt, markAt } from '../../../src/app/model/marks.ts';
import type { Core } from '../../../src/guide/index.ts';
import { beginWith, press, readTo, scriptFor, SMALL } from '../../guide/support.ts';

const STEP = SMALL.steps.findIndex(({ id }) => id === 'gloves-off');
const { compiled, conditions } = analyse(SMALL, 'enveloped');
const planned = boardOf(compiled, conditions);
const looking = readTo(beginWith(scriptFor(SMALL)), 'gloves-off/look');
const hand = 'wearer.hand.left';

/** As a second display has it: what was sent as text, put into a board of its own. */
const asRecorded = (board: typeof planned, core: Core, step: number): typeof planned =>
  withRecorded(
    board,
    JSON.parse(JSON.stringify(recordedOn(board, core, step))) as ReturnType<typeof recordedOn>,
  );

test('shows the plan, as the step begins, before anything is recorded', () => {
  expect(asRecorded(planned, looking.state.core, STEP)).toBe(planned);
  expect(momentOf(looking.state.core, STEP)).toBe('before');
});

test('shows what a slip reached, as the step ends; elsewhere no less than the plan', () => {
  const { core } = press(looking, {
    is: 'deviation',
    category: 'touched-clean-thing',
    surfaces: [hand],
  }).state;
  const board = asRecorded(planned, core, STEP);
  expect(momentOf(core, STEP)).toBe('after');
  expect(markAt(planned, hand, STEP)).not.toBe('contaminated');
  expect(markAt(board, hand, STEP)).toBe('contaminated');
  const rank = { contaminated: 0, slips: 1, nothing: 2 } as const;
  for (const { id } of planned.surfaces)
    expect(rank[markAt(board, id, STEP)]).toBeLessThanOrEqual(rank[markAt(planned, id, STEP)]);
  expect(leastAt(planned, hand, STEP)).not.toBe(0);
});

test('shows no less, at the end of the step that something was recorded of, than the plan had at its beginning', () => {
  const at = (board: typeof planned, id: string, step: number): number => {
    const least = leastAt(board, id, step);
    return least < 0 ? Infinity : least;
  };
  const cleans = (step: number): boolean =>
    planned.surfaces.some(({ id }) => at(planned, id, step) > at(planned, id, step - 1));
  const step = SMALL.steps.findIndex((_, index) => index > 0 && cleans(index));
  expect(step).toBeGreaterThan(0);
  const here = readTo(beginWith(scriptFor(SMALL)), `${SMALL.steps[step]?.id}/look`);
  const { core } = press(here, { is: 'deviation', category: 'touched-clean-thing', surfaces: [hand] }).state;
  const board = asRecorded(planned, core, step);
  for (const { id } of planned.surfaces)
    expect(at(board, id, step)).toBeLessThanOrEqual(
      Math.min(at(planned, id, step - 1), at(planned, id, step)),
    );
});

test('a record without a place leaves the picture as the plan has it at the beginning', () => {
  const { core } = press(looking, { is: 'deviation', category: 'touched-face' }).state;
  expect(asRecorded(planned, core, STEP)).toBe(planned);
  expect(momentOf(core, STEP)).toBe('before');
});

test('a display is told only where the exit is worse than the plan, and makes nothing less of it whatever it is told', () => {
  expect(recordedOn(planned, looking.state.core, STEP).worse).toBeNull();
  const { core } = press(looking, {
    is: 'deviation',
    category: 'touched-clean-thing',
    surfaces: [hand],
  }).state;
  const told = recordedOn(planned, core, STEP);
  const names = told.worse?.map(([surface]) => surface) ?? [];
  expect(names).toContain(hand);
  const differs = planned.surfaces.filter(({ id }) =>
    [STEP - 1, STEP].some((at) => leastAt(withRecorded(planned, told), id, at) !== leastAt(planned, id, at)),
  );
  expect(names.toSorted()).toEqual(differs.map(({ id }) => id).toSorted());
  const less = { ...told, worse: planned.surfaces.map(({ id }) => [id, NOTHING, NOTHING] as const) };
  for (const { id } of planned.surfaces)
    for (const at of [STEP - 1, STEP])
      expect(leastAt(withRecorded(planned, less), id, at)).toBe(leastAt(planned, id, at));
});
