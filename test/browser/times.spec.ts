// The unit's own times from its labels: written down with label, person and day, shown, and kept by the next exit before the
// published ones, with where they come from.
import { expect, test } from '@playwright/test';
import { begin, button, next, onward, onwardTo, PEDAL } from './guideDrill.ts';
import { complaintsOf, violationsOf } from './page.ts';
import { seed } from './versionSeed.ts';

test('a time from the unit’s label goes before the published one, and is shown with its source', async ({
  page,
}) => {
  test.setTimeout(60_000);
  const complaints = complaintsOf(page);
  await page.clock.install({ time: new Date('2026-11-25T12:00:00Z') });
  await seed(page);
  await page.goto('/guide/times');
  await page.getByLabel('Rubbed or washed').fill('20.5');
  await page.getByLabel('Which label').fill('Hand rub, bottle of 2026 (invented)');
  await page.getByLabel('Written down by').selectOption({ label: 'charge nurse (CN)' });
  await expect(page.getByRole('alert')).toHaveText('Whole seconds, at most a day.');
  await expect(button(page, 'Write down a label’s times …')).toBeDisabled();
  await page.getByLabel('Rubbed or washed').fill('20');
  expect(await violationsOf(page)).toEqual([]);
  await button(page, 'Write down a label’s times …').click();
  await expect(page.getByText(/gives: Rubbed or washed 20 s\./)).toBeVisible();
  await button(page, 'Write it').click();
  const source =
    'the unit’s label: Hand rub, bottle of 2026 (invented), written down by charge nurse (CN), 2026-11-25';
  await expect(page.getByText(`Rubbed or washed: 20 s (${source})`)).toBeVisible();

  await begin(page, 'larkmoor-suit-doffing');
  await onwardTo(page, PEDAL, 3);
  while ((await next(page).textContent()) !== 'Start the time') await onward(page, PEDAL);
  const owed = page.locator('.g-owed');
  await expect(owed).toContainText('Rub the hands: 0:20');
  await expect(owed).toContainText(source);
  expect(complaints).toEqual([]);
});
