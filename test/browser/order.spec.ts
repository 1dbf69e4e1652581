// A better order and one thing in place of another, as a user does it: by keyboard from a procedure into a draft and back by
// undo, called off on the way; by finger from a draft. Every view keeps to the accessibility rules, the screen and the
// size of a finger. Screenshots are left in .cache/screens to be looked at.
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import { complaintsOf, pressByKey, sideways, tabTo, violationsOf } from './page.ts';

const small = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.order :is(button, select, summary, .pill, nav a, .order-of)')]
      .map((target) => ({ box: target.getBoundingClientRect(), text: target.textContent?.slice(0, 40) }))
      .filter(({ box }) => box.height > 1 && box.height < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.height)}`),
  );

/** Nothing that a colleague should not be shown. */
async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await small(page)).toEqual([]);
}

const screenOf = (info: TestInfo, name: string): string =>
  `.cache/screens/order-${name}-${info.project.name}.png`;

const press = (target: Locator, hasTouch: boolean | undefined): Promise<void> =>
  hasTouch ? target.tap() : target.click();

const SMALL = 'national-stable-patient-doffing';
const rows = (page: Page): Locator => page.locator('.found-step');
const draftRows = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' }).getByRole('row');

test('by keyboard: from a procedure to a better order, called off, found, into a draft, undone', async ({
  page,
}, info) => {
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto('/procedure/larkmoor-suit-doffing/steps');
  await pressByKey(page, page.getByRole('link', { name: 'Better order', exact: true }));
  await expect(page.getByRole('heading', { level: 1, name: 'Better order' })).toBeVisible();

  // The longest time is chosen by arrow keys; the search shows at once that it works, and is called off.
  await tabTo(page, page.getByRole('radio', { name: '30 seconds' }));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('radio', { name: '2 minutes' })).toBeChecked();
  await pressByKey(page, page.getByRole('button', { name: 'Search for a better order' }));
  const cancel = page.getByRole('button', { name: 'Cancel' });
  await expect(cancel).toBeFocused();
  await expect(page.getByRole('timer')).toBeVisible();
  await expect(page.getByText('Searching …')).toBeVisible();
  await page.screenshot({ path: screenOf(info, 'running') });
  await page.keyboard.press('Enter');
  await expect(
    page.getByText(/Called off after (\d+ s|less than a second)\. Nothing was changed\./),
  ).toBeVisible();
  await expect(page.getByRole('button', { name: 'Search again' })).toBeFocused();
  await expect(rows(page)).toHaveCount(0);

  await page.goto(`/order/procedure/${SMALL}/search`);
  await pressByKey(page, page.getByRole('button', { name: 'Search for a better order' }));
  const heading = page.getByRole('heading', { name: 'The order found' });
  await expect(heading).toBeVisible({ timeout: 60_000 });
  await expect(heading).toBeFocused();
  await expect(page.getByText(/^✓ Proved: no order|^◐ Not proved: orders/)).toBeVisible();
  const figures = page.getByRole('table', { name: /Against the enveloped agent/ });
  await expect(figures.getByRole('row', { name: /Chance of reaching mucosa judgement/ })).toContainText(
    /\d %.*▼ lower/,
  );
  await expect(page.getByText(/^[+⤨≠−] (new|moved|changed|left out)/).first()).toBeVisible();
  await keepsToTheRules(page);

  // Reasons are folded; one opens by keyboard.
  const why = page.locator('.why summary').first();
  await tabTo(page, why);
  await page.keyboard.press('Enter');
  await expect(page.locator('.why[open] li').first()).toContainText(/because|no figure changes/);
  await page.screenshot({ path: screenOf(info, 'found') });
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOf(page, ['color-contrast'])).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'found-dark') });
  await page.emulateMedia({ colorScheme: 'light' });

  const count = await page.locator('.found-step:not(.happened-gone)').count();
  await pressByKey(page, page.getByRole('button', { name: 'Take this order into a draft' }), 'Shift+Tab');
  await expect(draftRows(page)).toHaveCount(count);
  const undo = page.getByRole('button', { name: 'Undo: Better order' });
  await pressByKey(page, undo);
  await expect(draftRows(page)).toHaveCount(16);
  await expect(page.getByRole('button', { name: 'Redo: Better order' })).toBeEnabled();
  expect(complaints).toEqual([]);
});

test('from a draft, by finger or mouse: a step is kept, the order taken is one edit', async ({
  page,
  hasTouch,
}, info) => {
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  await page.goto('/write');
  await page
    .getByLabel('From a copy of', { exact: true })
    .selectOption({ label: 'Everyday isolation sequence, example 2: doffing' });
  await press(page.getByRole('button', { name: 'Copy: From a copy of' }), hasTouch);
  await expect(draftRows(page)).toHaveCount(5);
  await press(page.getByRole('link', { name: 'Better order …' }), hasTouch);
  await press(page.getByText('Steps to keep as they are: 0 of 5'), hasTouch);
  await press(page.locator('.pins .pill').first(), hasTouch);
  await expect(page.getByText('Steps to keep as they are: 1 of 5')).toBeVisible();
  await keepsToTheRules(page);
  await page.screenshot({ path: screenOf(info, 'pins') });
  await press(page.getByRole('button', { name: 'Search for a better order' }), hasTouch);
  await expect(page.getByRole('heading', { name: 'The order found' })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('kept in place')).toBeVisible();
  await page.screenshot({ path: screenOf(info, 'kept'), fullPage: true });

  // What was searched is no longer what there is: it cannot be taken.
  const take = page.getByRole('button', { name: 'Take this order into a draft' });
  await expect(take).toBeEnabled();
  await press(page.locator('.pins .pill').nth(1), hasTouch);
  await expect(take).toBeDisabled();
  await expect(page.getByText(/have changed since\. Search again/)).toBeVisible();
  await press(page.locator('.pins .pill').nth(1), hasTouch);
  await press(page.getByRole('button', { name: 'Search again' }), hasTouch);
  await expect(take).toBeEnabled({ timeout: 60_000 });
  await press(take, hasTouch);
  await expect(page).toHaveURL(/\/write\/[^/]+\/steps$/);
  await press(page.getByRole('button', { name: 'Undo: Better order' }), hasTouch);
  await expect(draftRows(page)).toHaveCount(5);
  await expect(page.getByRole('button', { name: 'Undo: Keep steps in place: 1' })).toBeVisible();
  expect(complaints).toEqual([]);
});

test('another item: what is lost, what changes step by step, who learns it, into a draft', async ({
  page,
  hasTouch,
}, info) => {
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  await page.goto(`/order/procedure/${SMALL}/search`);
  await press(page.getByRole('link', { name: 'Another item or product' }), hasTouch);
  const start = page.getByRole('button', { name: 'See what changes' });
  await expect(start).toBeDisabled();
  await page.getByLabel('In place of').selectOption({ label: 'Face shield' });
  await page.getByLabel('What comes instead').selectOption({ label: 'Goggles' });
  await press(page.getByText('10 seconds'), hasTouch);
  await press(start, hasTouch);
  await expect(page.getByRole('heading', { name: 'Goggles in place of face shield' })).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByText(/The same steps will do|A few steps move|It takes a new order/)).toBeVisible();
  await expect(page.getByText(/Covered before and bare now.*the wearer's face/)).toBeVisible();
  await press(page.getByText(/The wearer learns \d+ changed steps?\./), hasTouch);
  await expect(page.getByText(/^(Changed: |New: |At another place: )/).first()).toBeVisible();
  const changed = await rows(page).count();
  await press(page.getByText('Every step', { exact: true }), hasTouch);
  expect(await rows(page).count()).toBeGreaterThan(changed);
  await keepsToTheRules(page);
  await page.screenshot({ path: screenOf(info, 'swap'), fullPage: true });

  // The answer stays while the other view is looked at.
  await press(page.getByRole('link', { name: 'Better order', exact: true }), hasTouch);
  await press(page.getByRole('link', { name: 'Another item or product' }), hasTouch);
  await press(page.getByRole('button', { name: 'Take this into a draft' }), hasTouch);
  await expect(page.getByRole('button', { name: 'Undo: Goggles in place of face shield' })).toBeVisible();
  await expect(draftRows(page).filter({ hasText: 'Remove the goggles' })).toHaveCount(1);
  expect(complaints).toEqual([]);
});

test('what has no order to search says why', async ({ page }) => {
  await page.goto('/order/procedure/larkmoor-suit-donning/search');
  await expect(page.getByRole('alert')).toHaveText(
    'Only a doffing has an order to search; this is a donning.',
  );
  await page.goto('/order/procedure/nothing/search');
  await expect(page.getByRole('heading', { name: 'Not here' })).toBeVisible();
});
