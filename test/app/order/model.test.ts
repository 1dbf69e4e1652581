// What the page of the order search makes of its answers: rows that lose no step, pins that stay in the file, and what could
// stand for what.
import { test as property } from '@fast-check/vitest';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pinnedIn, withPins } from '../../../src/app/order/model/pins.ts';
import { changesOf, countsOf, reasonsOf, rowsOf } from '../../../src/app/order/model/rows.ts';
import { leftBare, standInsFor, thingsOf } from '../../../src/app/order/model/swaps.ts';
import type { Procedure } from '../../../src/domain/procedure.ts';
import { printProcedure, readProcedure } from '../../../src/language/index.ts';
import { retrainingFor } from '../../../src/order/changes.ts';
import { searchOrder } from '../../../src/order/index.ts';
import { substitute, whyNoSubstitute } from '../../../src/order/substitute.ts';
import { procedureOf } from '../../procedures/shelf.ts';

const SUIT = procedureOf('larkmoor-suit-doffing.yaml');
const EVERYDAY = procedureOf('everyday-example-2-doffing.yaml');
const FOUND = searchOrder(EVERYDAY, { tried: 60 });

describe('rows', () => {
  const rows = rowsOf(EVERYDAY, FOUND.procedure);

  test('hold every step of both orders once, the found ones in their order', () => {
    const now = rows.flatMap((row) => row.now ?? []);
    expect(now).toEqual(FOUND.procedure.steps.map((_, at) => at + 1));
    const was = rows.flatMap((row) => row.was ?? []).toSorted((a, b) => a - b);
    expect(was).toEqual(EVERYDAY.steps.map((_, at) => at + 1));
    for (const row of rows) {
      expect(row.now === undefined).toBe(row.what === 'gone');
      expect(row.was === undefined).toBe(row.what === 'new');
    }
  });

  test('are counted, and each that is not as it was is a change to learn', () => {
    const counts = countsOf(rows);
    expect(counts.reduce((sum, [, count]) => sum + count, 0)).toBe(rows.length);
    const same = counts.find(([what]) => what === 'same')?.[1] ?? 0;
    const changes = changesOf(rows);
    expect(changes.length).toBe(rows.length - same);
    expect(changes.some(({ what }) => what === 'new')).toBe(true);
    const [learning] = retrainingFor(FOUND.procedure, changes);
    expect(learning?.changes.length).toBeGreaterThan(0);
  });

  test('reasons stand with their step, none is lost', () => {
    const reasons = reasonsOf(FOUND.choices);
    expect([...reasons.values()].flat().length).toBe(FOUND.choices.length);
    for (const [id, choices] of reasons) expect(choices.every(({ step }) => step === id)).toBe(true);
  });

  test('a note is not something that is done; that it is gone is told', () => {
    const [first, ...rest] = EVERYDAY.steps;
    if (!first) throw new Error('no step');
    const { note: before = 'mind the cuff', ...bare } = first;
    const plain: Procedure = { ...EVERYDAY, steps: [bare, ...rest] };
    const noted: Procedure = { ...EVERYDAY, steps: [{ ...bare, note: before }, ...rest] };
    const changed = rowsOf(noted, plain);
    expect(changed.map(({ what, fields }) => [what, fields])).toEqual(changed.map(() => ['same', []]));
    expect(changed.map(({ noteLost }) => noteLost)).toEqual(changed.map((_, at) => at === 0));
    expect(changesOf(changed)).toEqual([]);
    expect(rowsOf(plain, noted).every(({ noteLost }) => !noteLost)).toBe(true);
  });

  property.prop([fc.uniqueArray(fc.nat({ max: SUIT.steps.length - 1 }))])(
    'steps that are taken away are gone, and no other is',
    (places) => {
      const out = new Set(places);
      const after: Procedure = { ...SUIT, steps: SUIT.steps.filter((_, at) => !out.has(at)) };
      const gone = rowsOf(SUIT, after).filter(({ what }) => what === 'gone');
      expect(new Set(gone.map(({ was }) => was))).toEqual(new Set(places.map((at) => at + 1)));
      expect(gone.length).toBe(places.length);
    },
  );
});

describe('pins', () => {
  property.prop([fc.uniqueArray(fc.nat({ max: SUIT.steps.length - 1 }))])(
    'are exactly those asked for, go through the file, and come off again',
    (places) => {
      const ids = new Set(places.map((at) => SUIT.steps[at]?.id ?? ''));
      const pinned = withPins(SUIT, ids);
      expect(pinnedIn(pinned)).toEqual(ids);
      const { procedure } = readProcedure(printProcedure(pinned), 'pinned.yaml');
      expect(procedure && pinnedIn(procedure)).toEqual(ids);
      expect(withPins(pinned, new Set())).toEqual(SUIT);
      expect(withPins(pinned, ids)).toBe(pinned);
    },
  );

  test('a pinned step is kept as it is written by the search', () => {
    const [first] = EVERYDAY.steps;
    if (!first) throw new Error('no step');
    const { procedure } = searchOrder(withPins(EVERYDAY, new Set([first.id])), { tried: 60 });
    expect(procedure.steps).toContainEqual({ ...first, pinned: true });
  });
});

describe('what stands for what', () => {
  test('everything worn and every product can be replaced, by what the search accepts', () => {
    const { items, products } = thingsOf(EVERYDAY);
    expect(items).toContain('gown');
    expect(products).toContain('alcohol-hand-rub');
    for (const from of [...items, ...products]) {
      const groups = standInsFor(EVERYDAY, from);
      expect(groups.length).toBeGreaterThan(0);
      for (const to of groups.flatMap(({ ids }) => ids))
        expect(whyNoSubstitute(EVERYDAY, from, to)).toBeUndefined();
    }
  });

  test('what covers as much comes first, what covers nothing of it last', () => {
    const [all, ...others] = standInsFor(EVERYDAY, 'gown');
    expect(all?.like).toBe('all');
    expect(all?.ids).toContain('coverall');
    const none = others.find(({ like }) => like === 'none');
    expect(none?.ids).toContain('surgical-hood');
    expect(standInsFor(EVERYDAY, 'gown').flatMap(({ ids }) => ids)).not.toContain('shoes');
  });

  test('places that are bare only with the new item are named', () => {
    const { procedure } = substitute(SUIT, 'face-shield', 'goggles', { agent: 'enveloped', tried: 40 });
    const bare = leftBare(SUIT, procedure);
    expect(bare).toContain('observer.mouth');
    expect(bare).not.toContain('wearer.eyes');
    expect(leftBare(SUIT, SUIT)).toEqual([]);
  });
});
