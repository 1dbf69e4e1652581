// The picture shows what is on, in order, and has a place for every surface that a step touches: in every procedure that
// comes with the program, so that a new item or part without a drawing is noticed here.
import { describe, expect, test } from 'vitest';
import { itemKind, ITEM_IDS } from '../../../src/domain/items.ts';
import { layoutOf, MOST_CHIPS } from '../../../src/app/model/layout.ts';
import { describePicture } from '../../../src/app/model/describe.ts';
import { pictureOf, type PictureView, touchesOf } from '../../../src/app/model/picture.ts';
import { namedBy } from '../../../src/app/model/surfaceId.ts';
import { FIGURE, spotOf } from '../../../src/drawing/geometry.ts';
import { MEASURES, shapesOf } from '../../../src/app/picture/measures.ts';
import { DRAWINGS } from '../../../src/drawing/shapes.ts';
import { ENGLISH } from '../../../src/words/en/index.ts';
import { boardFor, FILES, LARKMOOR, procedureIn } from '../checked.ts';

const larkmoor = procedureIn(LARKMOOR);
const board = boardFor(larkmoor);
const stepOf = (id: string): number => larkmoor.steps.findIndex((step) => step.id === id);

function viewAt(step: number, moment: 'before' | 'after' = 'before'): PictureView {
  const view = pictureOf(larkmoor, board, { step, moment, shapes: shapesOf });
  if (!view) throw new Error(`no step ${step}`);
  return view;
}

describe('drawings', () => {
  test.each(ITEM_IDS)('%s is drawn with parts that it has', (item) => {
    const parts = itemKind(item).parts.map((part) => part.id);
    expect(DRAWINGS[item].shapes.length).toBeGreaterThan(0);
    expect(shapesOf(item).filter((part) => !parts.includes(part))).toEqual([]);
  });

  test.each(ITEM_IDS)('%s shows every part that faces the patient', (item) => {
    const facing = itemKind(item).parts.filter((part) => part.exposure === 'faces' && part.covers.length > 0);
    expect(facing.map((part) => part.id).filter((part) => !shapesOf(item).includes(part))).toEqual([]);
  });
});

describe('left and right', () => {
  test('the wearer’s right is on the viewer’s left', () => {
    expect(spotOf('hand.right')[0]).toBeLessThan(FIGURE.width / 2);
    expect(spotOf('hand.left')[0]).toBeGreaterThan(FIGURE.width / 2);
    const right = MEASURES.partAt('outer-gloves', 'outside', 'right');
    const left = MEASURES.partAt('outer-gloves', 'outside', 'left');
    expect(right?.[0]).toBeLessThan(FIGURE.width / 2);
    expect(left?.[0]).toBe(FIGURE.width - (right?.[0] ?? 0));
    expect(MEASURES.partAt('gown', 'sleeve-left', undefined)?.[0]).toBeGreaterThan(FIGURE.width / 2);
  });
});

describe('surface ids', () => {
  test('are read back into what they name', () => {
    expect(namedBy('wearer.outer-gloves.left.outside')).toEqual({
      is: 'part',
      person: 'wearer',
      item: 'outer-gloves',
      side: 'left',
      part: 'outside',
    });
    expect(namedBy('assistant.gown.front')).toMatchObject({ is: 'part', item: 'gown', part: 'front' });
    expect(namedBy('wearer.hand.right')).toEqual({ is: 'place', person: 'wearer', place: 'hand.right' });
    expect(namedBy('room.clean-chair.seat')).toEqual({ is: 'fixture', fixture: 'clean-chair', part: 'seat' });
  });
});

describe.each(FILES)('%s', (file) => {
  const procedure = procedureIn(file);
  const own = boardFor(procedure);

  test('every contact of every step has both ends in the picture, or is counted', () => {
    for (const [step] of procedure.steps.entries()) {
      const view = pictureOf(procedure, own, { step, moment: 'before', shapes: shapesOf });
      if (!view) throw new Error(`no picture of step ${step}`);
      const { anchors, people } = layoutOf(view, MEASURES);
      const crowded = people.some((one) => one.more > 0);
      const missing = view.touches
        .filter(({ kind }) => kind === 'always')
        .flatMap(({ a, b }) => [a, b])
        .filter((surface) => !anchors.has(surface));
      if (!crowded) expect(missing, `step ${step + 1}`).toEqual([]);
      expect(people.every((one) => one.chips.length <= MOST_CHIPS)).toBe(true);
    }
  });
});

describe('what is on', () => {
  test('before the gloves come off they are there, after it they are not', () => {
    const step = stepOf('outer-gloves-off');
    const items = (view: PictureView) => view.people[0]?.layers.map((layer) => layer.item) ?? [];
    expect(items(viewAt(step, 'before'))).toContain('outer-gloves');
    expect(items(viewAt(step, 'after'))).not.toContain('outer-gloves');
    expect(items(viewAt(step, 'after'))).toContain('inner-gloves');
  });

  test('who helps is in the picture, who does not is not', () => {
    const ids = viewAt(stepOf('apron-off')).people.map((person) => person.id);
    expect(ids).toEqual(['wearer', 'assistant']);
    expect(viewAt(stepOf('outer-gloves-off')).people.map((person) => person.id)).toEqual(['wearer']);
  });

  test('a ringed surface is shown even if nothing touches it', () => {
    const view = pictureOf(larkmoor, board, {
      step: 0,
      moment: 'before',
      shapes: shapesOf,
      also: ['wearer.scrubs.back'],
    });
    expect(view && layoutOf(view, MEASURES).anchors.has('wearer.scrubs.back')).toBe(true);
  });

  test('there is no picture of a step that is not there', () => {
    expect(pictureOf(larkmoor, board, { step: 999, moment: 'before', shapes: shapesOf })).toBeUndefined();
  });
});

describe('contacts', () => {
  test('a pair is shown once, and one that always happens hides the same by a slip', () => {
    const touches = touchesOf([
      { a: 'wearer.hand.left', b: 'wearer.gown.front', events: [3] },
      { a: 'wearer.gown.front', b: 'wearer.hand.left', events: [] },
      { a: 'wearer.hand.left', b: 'wearer.gown.front', events: [4] },
    ]);
    expect(touches).toHaveLength(1);
    expect(touches[0]).toMatchObject({ kind: 'always', events: [] });
  });

  test('a lining on what it covers and a sole on the floor rest there', () => {
    const kinds = touchesOf([
      { a: 'wearer.gown.inside', b: 'wearer.scrubs.front', events: [] },
      { a: 'wearer.shoes.left.sole', b: 'room.doffing-area-floor.surface', events: [] },
      { a: 'wearer.inner-gloves.left.outside', b: 'wearer.gown.inside', events: [] },
    ]).map(({ kind }) => kind);
    expect(kinds).toEqual(['resting', 'resting', 'always']);
  });
});

describe('in words', () => {
  const text = describePicture(larkmoor, viewAt(stepOf('outer-gloves-off')), ENGLISH).join(' ');

  test('names who wears what, outermost first', () => {
    expect(text.indexOf('outer gloves')).toBeGreaterThan(-1);
    expect(text.indexOf('outer gloves')).toBeLessThan(text.indexOf('scrubs'));
  });

  test('says what is contaminated and what touches, and never that anything is clean or safe', () => {
    expect(text).toContain('Contaminated though nobody slips');
    expect(text).toMatch(/touches/);
    expect(text).not.toMatch(/\b(is|are) (safe|clean)\b/);
  });
});

describe('cleaning', () => {
  // Alcohol rub does not kill a non-enveloped agent (Casanova 2016): the picture must say that it does not count.
  test('is shown on the gloves that are rubbed, and said not to count where it does not', () => {
    const step = stepOf('rub-arrival');
    const glove = viewAt(step)
      .people[0]?.layers.filter((layer) => layer.item === 'outer-gloves')
      .flatMap((layer) => layer.parts)
      .filter((part) => part.cleaned);
    expect(glove?.map((part) => part.part)).toEqual(['outside', 'outside']);
    const other = pictureOf(larkmoor, boardFor(larkmoor, 'non-enveloped'), {
      step,
      moment: 'before',
      shapes: shapesOf,
    });
    expect(describePicture(larkmoor, viewAt(step), ENGLISH).join(' ')).toContain('unless it goes wrong');
    expect(other && describePicture(larkmoor, other, ENGLISH).join(' ')).toContain('does not count');
  });
});
