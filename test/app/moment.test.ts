// Days and times read the same on every page, whatever the browser's country.
import { expect, test } from 'vitest';
import { instantText, momentText, secondText } from '../../src/app/parts/moment.ts';

test('a day as the trade’s papers have it, and the device’s own time of day', () => {
  const at = new Date(2026, 10, 5, 7, 4, 9).toISOString();
  expect([momentText(at), instantText(at), secondText(at)]).toEqual([
    '2026-11-05 07:04',
    '2026-11-05 07:04:09',
    '07:04:09',
  ]);
});
