// What is done otherwise on another way on: by the numbers of the steps, and what repeats as one.
import { expect, test } from 'vitest';
import type { Step } from '../../../src/domain/procedure.ts';
import { changesOf } from '../../../src/app/guide/screens/way.ts';
import { wordsFor } from '../../../src/words/index.ts';
import { SMALL } from '../../guide/support.ts';
import { procedure, step } from '../../support/procedure.ts';

const rub = (id: string): Step => step(id, 'sanitise', { product: 'alcohol-hand-rub' });
const of = procedure({
  people: SMALL.people,
  steps: [rub('a'), step('gloves', 'remove', { items: ['gloves'] }), rub('b'), rub('c'), rub('d')],
});
const words = wordsFor('en');
const changes = (steps: readonly Step[]) => changesOf(of, 1, steps, words);
const [, gloves, b, c, d] = of.steps as [Step, Step, Step, Step, Step];

test('the same step left out several times is said once, with its numbers as written', () => {
  expect(changes([gloves])).toMatchObject([{ what: 'left out', numbers: [3, 4, 5] }]);
});

test('a new step has its number on the new way, and stands behind another by that one’s number', () => {
  const added = step('twice', 'wipe', { fixture: 'chair', product: 'disinfectant-wipe' });
  expect(changes([gloves, b, added, c, d])).toEqual([
    {
      what: 'new',
      label: words.stepLabel(of, added),
      numbers: [4],
      after: { number: 3, label: words.stepLabel(of, b) },
    },
  ]);
});

test('the same new step in two places stands behind neither alone', () => {
  const wipe = (id: string) => step(id, 'wipe', { fixture: 'chair', product: 'disinfectant-wipe' });
  const [only, ...others] = changes([wipe('x'), gloves, wipe('y'), b, c, d]);
  expect(others).toEqual([]);
  expect(only).toMatchObject({ what: 'new', numbers: [2, 4] });
  expect(only).not.toHaveProperty('after');
});
