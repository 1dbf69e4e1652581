// The board says the same as the conditions it is made from, and several agents at once are the worst of each.
import { describe, expect, test } from 'vitest';
import { conditionAt } from '../../../src/engine/propagate.ts';
import { FALSE, TRUE } from '../../../src/engine/diagram.ts';
import { boardOf, contactsOf, NOTHING, worse, worstOf } from '../../../src/app/model/board.ts';
import { leastAt, markAt, markOf } from '../../../src/app/model/marks.ts';
import { analysisOf, boardFor, boardsFor, LARKMOOR, procedureIn } from '../checked.ts';

const procedure = procedureIn(LARKMOOR);

describe('the board', () => {
  const { compiled, conditions } = analysisOf(procedure, 'enveloped');
  const board = boardOf(compiled, conditions);

  test('has one entry per surface and moment, with 0 for true and -1 for false', () => {
    for (const [at, { id }] of board.surfaces.entries()) {
      expect(board.least[id]).toHaveLength(procedure.steps.length + 1);
      for (let step = -1; step < procedure.steps.length; step += 1) {
        const condition = conditionAt(conditions, step, at);
        const least = leastAt(board, id, step);
        expect(least === 0).toBe(condition === TRUE);
        expect(least === NOTHING).toBe(condition === FALSE);
      }
    }
  });

  test('is plain data that crosses to another thread', () => {
    expect(structuredClone(board).surfaces).toEqual(board.surfaces);
  });

  test('lists the contacts of each step by surface id', () => {
    const ids = new Set(board.surfaces.map(({ id }) => id));
    const ends = board.steps.flatMap((_, step) => contactsOf(board, step).flatMap(({ a, b }) => [a, b]));
    expect(ends.length).toBeGreaterThan(100);
    expect(ends.filter((id) => !ids.has(id))).toEqual([]);
  });

  test('tells them as the plan has them, with their events', () => {
    const { surfaces } = compiled.plan;
    const wanted = compiled.performed.map(({ operations }) =>
      operations.flatMap((one) =>
        one.op === 'contact'
          ? [{ a: surfaces[one.a]!.id, b: surfaces[one.b]!.id, events: [...one.when] }]
          : [],
      ),
    );
    expect(board.steps.map((_, step) => contactsOf(board, step))).toEqual(wanted);
  });
});

describe('grades', () => {
  test('nothing known, contaminated, so many slips', () => {
    expect([NOTHING, 0, 1, 4].map(markOf)).toEqual(['nothing', 'contaminated', 'slips', 'slips']);
  });

  test('worse of two is nearer to contaminated', () => {
    expect(worse(NOTHING, 3)).toBe(3);
    expect(worse(2, NOTHING)).toBe(2);
    expect(worse(1, 0)).toBe(0);
    expect(worse(NOTHING, NOTHING)).toBe(NOTHING);
  });
});

describe('several agents', () => {
  const boards = boardsFor(procedure);
  const worst = worstOf(boards);

  test('one board stays itself, none is none', () => {
    expect(worstOf(boards.slice(0, 1))).toBe(boards[0]);
    expect(worstOf([])).toBeUndefined();
  });

  test('every cell is as bad as its worst agent', () => {
    for (const { id } of worst?.surfaces ?? []) {
      const rows = boards.map((board) => [...(board.least[id] ?? [])]);
      const expected = rows[0]?.map((_, at) => rows.map((row) => row[at] ?? NOTHING).reduce(worse));
      expect([...(worst?.least[id] ?? [])]).toEqual(expected);
    }
  });

  // Alcohol rub does not kill a non-enveloped agent (Casanova 2016): what rubbing lessens for one stays for the other.
  test('hands stay contaminated after alcohol rub for a non-enveloped agent', () => {
    const rub = procedure.steps.findIndex((step) => step.id === 'rub-arrival');
    const glove = 'wearer.outer-gloves.right.outside';
    const [enveloped, other] = boards;
    expect(enveloped && markAt(enveloped, glove, rub)).toBe('slips');
    expect(other && markAt(other, glove, rub)).toBe('contaminated');
    expect(worst && markAt(worst, glove, rub)).toBe('contaminated');
  });

  test('its turns are those of the engine where there is one agent', () => {
    const one = boardFor(procedure);
    const twice = worstOf([one, one]);
    const key = (turn: { step: number; surface: string; turn: string }) =>
      `${turn.step} ${turn.surface} ${turn.turn}`;
    expect(twice?.turns.map(key).toSorted()).toEqual(one.turns.map(key).toSorted());
  });
});
