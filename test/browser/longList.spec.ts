// A draft of a hundred steps: only the rows in sight are in the page, and still every row is reached, moved, chosen and undone by
// keys, and by finger after scrolling.
import { expect, type Locator, type Page, test } from '@playwright/test';
import { hundred } from '../../bench/hundred.ts';
import { printProcedure } from '../../src/language/index.ts';
import { complaintsOf, sideways, violationsOf } from './page.ts';

const list = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' });
const row = (page: Page, number: number): Locator =>
  list(page).getByRole('row', { name: new RegExp(`^${number} `) });

async function openHundred(page: Page): Promise<void> {
  await page.goto('/write');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'From a file …' }).click();
  const buffer = Buffer.from(printProcedure(hundred()));
  await (await chooser).setFiles({ name: 'hundred.yaml', mimeType: 'text/yaml', buffer });
  await expect(row(page, 1)).toBeVisible();
}

test('a hundred steps: the last is reached, moved, chosen and put back by keys', async ({ page }) => {
  test.setTimeout(90_000);
  const complaints = complaintsOf(page);
  await openHundred(page);
  expect(await list(page).getByRole('row').count()).toBeLessThan(50);
  await expect(list(page)).toHaveAttribute('aria-rowcount', '100');
  const last = hundred().steps.at(-1)?.id ?? '';
  const moved = list(page).locator(`[data-key="${last}"]`);
  await row(page, 1).focus();
  await page.keyboard.press('End');
  await expect(row(page, 100)).toBeFocused();
  await expect(row(page, 100)).toBeInViewport();
  for (const number of [99, 98, 97]) {
    await page.keyboard.press('Alt+ArrowUp');
    await expect(row(page, number)).toBeFocused();
    await expect(moved).toHaveAttribute('aria-rowindex', String(number));
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Step 97 of 100' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('heading', { name: 'Step 98 of 100' })).toBeVisible();
  await page.keyboard.press('Home');
  await expect(row(page, 1)).toBeInViewport();
  expect(await violationsOf(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

test('a hundred steps by finger: scrolled to, ticked and moved', async ({ page }, info) => {
  test.skip(info.project.name === 'desk', 'there is no finger');
  await openHundred(page);
  const scrollTo = async (share: number): Promise<void> =>
    page.evaluate((at) => window.scrollTo(0, at * document.documentElement.scrollHeight), share);
  await scrollTo(0.6);
  await expect(row(page, 1)).toHaveCount(0);
  const rows = list(page).getByRole('row');
  const middle = rows.nth(Math.floor((await rows.count()) / 2));
  const [key, number] = [
    await middle.getAttribute('data-key'),
    Number(await middle.getAttribute('aria-rowindex')),
  ];
  await list(page).locator(`[data-key="${key}"] .pill`).tap();
  await expect(page.getByText('For a step.')).toBeVisible();
  // While the page still scrolls a tap stops that, as anywhere; whoever sees nothing happen taps again.
  await expect(async () => {
    await page.getByRole('button', { name: '↑ Earlier' }).tap();
    await expect(page.locator('.last-done')).toHaveText('Move a step', { timeout: 3000 });
  }).toPass();
  await scrollTo(0.6);
  await expect(list(page).locator(`[data-key="${key}"]`)).toHaveAttribute(
    'aria-rowindex',
    String(number - 1),
  );
  expect(await sideways(page)).toBe(0);
});
