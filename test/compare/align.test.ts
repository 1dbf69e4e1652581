// Aligning: every step once, what did not change is found again under other names, one edit is one difference, and the
// longest common subsequence is as long as brute force finds it.
import { describe, expect, test } from 'vitest';
import { fc, test as property } from '@fast-check/vitest';
import { alignSteps, common, rising, type StepRow } from '../../src/compare/align.ts';
import { gapsOf, matchOf } from '../../src/compare/match.ts';
import type { Procedure } from '../../src/domain/procedure.ts';
import { files, procedureOf } from '../procedures/shelf.ts';
import { procedures } from '../support/arbitraryProcedure.ts';
import { changed, inserted, moved, person, procedure, step, without } from '../support/procedure.ts';
import { renamedProcedure } from './renamed.ts';

const align = (a: Procedure, b: Procedure): readonly StepRow[] => alignSteps(a, b, matchOf(a, b));

const isSame = (row: StepRow): boolean =>
  row.a !== null && row.b !== null && !row.moved && row.changed.length === 0;

const different = (a: Procedure, b: Procedure): readonly Partial<StepRow>[] =>
  align(a, b)
    .filter((row) => !isSame(row))
    .map(({ a: from, b: to, moved: went, changed: fields }) => ({
      a: from,
      b: to,
      moved: went,
      changed: fields,
    }));

const LARKMOOR = procedureOf('larkmoor-suit-doffing.yaml');
const place = (from: Procedure, id: string): number => from.steps.findIndex((one) => one.id === id);

describe('any two procedures', () => {
  property.prop([procedures(14), procedures(14)])('have each step in one row', (a, b) => {
    const rows = align(a, b);
    const numbers = (side: 'a' | 'b') => rows.flatMap((row) => row[side] ?? []).sort((x, y) => x - y);
    expect(numbers('a')).toEqual(a.steps.map((_, at) => at));
    expect(numbers('b')).toEqual(b.steps.map((_, at) => at));
    const stay = rows.filter((row) => row.a !== null && row.b !== null && !row.moved);
    expect(stay.every((row, at) => at === 0 || (stay[at - 1]?.a ?? -1) < (row.a ?? -1))).toBe(true);
    expect(rows.flatMap((row) => row.b ?? [])).toEqual(b.steps.map((_, at) => at));
  });

  property.prop([procedures(14)])('a procedure is itself', (any) => {
    expect(different(any, any)).toEqual([]);
  });
});

describe('one edit is one difference', () => {
  const at = place(LARKMOOR, 'shield-off');

  test('a step left out', () => {
    expect(different(LARKMOOR, without(LARKMOOR, 'shield-off'))).toEqual([
      { a: at, b: null, moved: false, changed: [] },
    ]);
  });

  test('a step put in', () => {
    const rub = step('rub-more', 'sanitise', { product: 'alcohol-hand-rub' });
    expect(different(LARKMOOR, inserted(LARKMOOR, 'shield-off', rub))).toEqual([
      { a: null, b: at, moved: false, changed: [] },
    ]);
  });

  test('a step moved, found by its id', () => {
    const later = moved(LARKMOOR, 'shoes-wiped', 'shield-off');
    expect(different(LARKMOOR, later)).toEqual([
      { a: at, b: place(later, 'shield-off'), moved: true, changed: [] },
    ]);
  });

  test('a step changed: its technique, told apart from its action', () => {
    expect(different(LARKMOOR, changed(LARKMOOR, 'shield-off', { technique: 'front-grip' }))).toEqual([
      { a: at, b: at, moved: false, changed: ['technique'] },
    ]);
    const crossing = changed(LARKMOOR, 'cross-line', { action: 'stand' });
    expect(different(LARKMOOR, crossing)[0]?.changed).toEqual(['action']);
  });

  test('a technique written out that was meant anyway is no change', () => {
    const before = changed(LARKMOOR, 'inner-gloves-off', { technique: 'peel-cuff' });
    const { technique: _, ...bare } = before.steps[place(before, 'inner-gloves-off')]!;
    const after = { ...before, steps: before.steps.with(place(before, 'inner-gloves-off'), bare) };
    expect(different(before, after)).toEqual([]);
  });
});

describe('without ids that last', () => {
  const numbered = (from: Procedure): Procedure => ({
    ...from,
    steps: from.steps.map((one, index) => ({ ...one, id: `s${index + 1}` })),
  });

  test('content finds the steps, not their numbers', () => {
    const rub = step('rub-more', 'sanitise', { product: 'disinfectant-wipe' });
    const longer = inserted(LARKMOOR, 'look-over', rub);
    expect(different(numbered(LARKMOOR), numbered(longer))).toEqual([
      { a: null, b: place(longer, 'rub-more'), moved: false, changed: [] },
    ]);
  });

  test('an item taken off elsewhere has moved', () => {
    const later = moved(LARKMOOR, 'shoes-wiped', 'shield-off');
    expect(different(numbered(LARKMOOR), numbered(later))).toEqual([
      { a: place(LARKMOOR, 'shield-off'), b: place(later, 'shield-off'), moved: true, changed: [] },
    ]);
  });

  test('another technique in the same place is a change of the same step', () => {
    const grip = changed(LARKMOOR, 'shield-off', { technique: 'front-grip' });
    const at = place(LARKMOOR, 'shield-off');
    expect(different(numbered(LARKMOOR), numbered(grip))).toEqual([
      { a: at, b: at, moved: false, changed: ['technique'] },
    ]);
  });

  test('hygiene is never said to have moved: a rub left out and a rub put in are two things', () => {
    const rub = step('new-rub', 'sanitise', { product: 'alcohol-hand-rub' });
    const other = inserted(without(LARKMOOR, 'rub-apron'), 'sit-boots', rub);
    const rows = align(LARKMOOR, other).filter((row) => !isSame(row));
    expect(rows.filter((row) => row.moved)).toEqual([]);
    expect(rows.map((row) => [row.a === null, row.b === null])).toEqual([
      [false, true],
      [true, false],
    ]);
  });
});

describe('other names', () => {
  test.each(files)('%s: people, zones and fixtures called otherwise change nothing', (file) => {
    const own = procedureOf(file);
    expect(different(own, renamedProcedure(own, false))).toEqual([]);
    expect(different(own, renamedProcedure(own, true))).toEqual([]);
    expect(gapsOf(own, renamedProcedure(own, true), matchOf(own, renamedProcedure(own, true)))).toEqual([]);
  });

  test('who and what has no counterpart is listed', () => {
    const a = procedure({ people: [person({ id: 'wearer', role: 'wearer' })], steps: [] });
    const b = procedure({
      people: [person({ id: 'nurse', role: 'wearer' }), person({ id: 'buddy', role: 'assistant' })],
      steps: [],
      fixtures: a.fixtures.filter(({ id }) => id !== 'clean-chair'),
      kind: 'donning',
    });
    const match = matchOf(a, b);
    expect(match.person.get('nurse')).toBe('wearer');
    expect(gapsOf(a, b, match)).toEqual([
      { what: 'kind', only: 'b', id: 'donning' },
      { what: 'person', only: 'b', id: 'buddy' },
      { what: 'fixture', only: 'a', id: 'clean-chair' },
    ]);
  });
});

describe('by brute force', () => {
  const letters = fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 8 });

  /** Longest common subsequence by trying every choice. */
  function longest(a: readonly string[], b: readonly string[]): number {
    const [first, ...rest] = a;
    if (first === undefined) return 0;
    const at = b.indexOf(first);
    return Math.max(longest(rest, b), at < 0 ? 0 : 1 + longest(rest, b.slice(at + 1)));
  }

  property.prop([letters, letters])('the common subsequence is a longest one', (a, b) => {
    const found = common(a, b);
    expect(found).toHaveLength(longest(a, b));
    expect(found.every(([i, j]) => a[i] === b[j])).toBe(true);
    expect(found.every(([i, j], at) => at === 0 || (i > found[at - 1]![0] && j > found[at - 1]![1]))).toBe(
      true,
    );
  });

  property.prop([fc.uniqueArray(fc.nat({ max: 20 }), { maxLength: 9 })])(
    'the fewest steps have moved',
    (places) => {
      const pairs = places.map((b, a) => ({ a, b, by: 'id' as const }));
      const most = (from: number, above: number): number =>
        from >= places.length
          ? 0
          : Math.max(most(from + 1, above), places[from]! > above ? 1 + most(from + 1, places[from]!) : 0);
      expect(rising(pairs)).toHaveLength(most(0, -1));
    },
  );

  test('ten thousand steps end in an answer', () => {
    const many = (offset: number) =>
      Array.from({ length: 10_000 }, (_, at) => `${(at * 7919 + offset) % 10_007}`);
    expect(common(many(0), many(1)).length).toBeGreaterThan(0);
  });
});
