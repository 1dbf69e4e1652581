// What a refused file says is shown as it is written: nothing in it turns or hides the rest.
import { expect, test } from 'vitest';
import { headOf } from '../../../src/app/model/head.ts';
import { shownText } from '../../../src/app/model/shown.ts';

test('marks that turn or hide text stand as signs, all else as it is', () => {
  expect(shownText('a\u202Eb\u0000c\u2066d\te–é')).toBe('a\uFFFDb\uFFFDc\uFFFDd\te–é');
});

test('the head of a file shows no mark that turns it', () => {
  expect(headOf('title: "safe\u202Eelif"\nkind: doffing\n').title).toBe('safe\uFFFDelif');
});
