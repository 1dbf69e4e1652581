// Long pages: found by typing, folded in groups, all of it in the address, and one entry by its own address; by keys, by
// finger, on a narrow screen; and the header that leaves a narrow screen to what one came for.
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import { keys } from './hands.ts';
import { complaintsOf, sideways, tooSmall, violationsOf } from './page.ts';

const SURFACES = '/procedure/larkmoor-suit-doffing/surfaces';
const RULE = 'practice.final-hand-hygiene';

const picture = (info: TestInfo, name: string): string => `.cache/screens/${name}-${info.project.name}.png`;

/** A group by the beginning of what its line says. */
const group = (page: Page, name: string): Locator =>
  page
    .locator('details.fold')
    .filter({ has: page.locator('summary', { hasText: new RegExp(`^${name}\\b`, 'i') }) });

async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await tooSmall(page)).toEqual([]);
}

test('by keys: records are found by typing, groups fold, and a reload shows the same', async ({
  page,
}, info) => {
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  const hand = keys(page);
  await page.goto('/evidence');
  const state = page.locator('.finder output');
  await expect(state).toHaveText(/^\d+ records$/);
  await expect(page.locator('.record:visible')).toHaveCount(0);
  await page.screenshot({ path: picture(info, 'evidence-folded') });

  await hand.press(group(page, 'handwash').locator('summary'));
  await expect(page.locator('.record:visible')).toHaveCount(1);
  await expect(page).toHaveURL(/[?&]open=handwash$/);

  await hand.type(page.getByRole('searchbox', { name: 'Search in all records' }), 'wrong grip');
  await expect(state).toHaveText(/^\d of \d+ records$/);
  await expect(page.locator('.record:visible').first()).toBeVisible();
  await expect(page).toHaveURL(/\?find=wrong\+grip$/);
  await hand.press(group(page, 'slip').locator('summary'));
  await expect(page.locator('.record:visible')).toHaveCount(0);
  await expect(state).toHaveText(/^\d of \d+ records$/);
  await page.reload();
  await expect(group(page, 'slip')).not.toHaveAttribute('open');
  await expect(state).toHaveText(/^\d of \d+ records$/);

  await hand.type(page.getByRole('searchbox'), 'xylophone');
  await expect(state).toHaveText(/^0 of \d+ records: none has every word of it/);
  expect(complaints).toEqual([]);
});

test('by keys: all groups at once, and the escape key empties the field', async ({ page }) => {
  const hand = keys(page);
  await page.goto('/evidence?find=practice');
  await hand.press(page.getByRole('button', { name: 'Fold all groups' }));
  await expect(page.locator('details.fold[open]')).toHaveCount(0);
  await hand.press(page.getByRole('button', { name: 'Open all groups' }));
  const groups = await page.locator('details.fold').count();
  await expect(page.locator('details.fold[open]')).toHaveCount(groups);
  await hand.type(page.getByRole('searchbox'), 'glove');
  await page.keyboard.press('Escape');
  await expect(page).toHaveURL(/\/evidence$/);
});

test('an address with an id shows that record, whatever it searches or folds', async ({ page }, info) => {
  for (const address of [`/evidence#${RULE}`, `/evidence?find=xylophone&open=#${RULE}`]) {
    await page.goto('about:blank');
    await page.goto(address);
    const record = page.locator(`[id="${RULE}"]`);
    await expect(record).toBeInViewport();
    await expect(record).toBeFocused();
    await expect(page.getByRole('searchbox')).toHaveValue('');
  }
  await page.screenshot({ path: picture(info, 'evidence-pointed') });
  // Folded again it stays so: the address no longer insists.
  await keys(page).press(group(page, 'practice').locator('summary'));
  await expect(page.locator(`[id="${RULE}"]`)).toBeHidden();
  await expect(page).toHaveURL(/\/evidence\?open=$/);
});

test('an address with an id shows that surface with its combinations', async ({ page }, info) => {
  await page.goto(`${SURFACES}?agent=enveloped&find=xylophone#wearer.mouth`);
  const mouth = page.locator('[id="wearer.mouth:enveloped"]');
  await expect(mouth).toBeFocused();
  await expect(mouth).toBeInViewport();
  await expect(mouth.getByRole('heading', { name: /Minimal combinations by size/ })).toBeVisible();
  await page.screenshot({ path: picture(info, 'surfaces-pointed') });
});

test('by finger: surfaces are found and folded, and keep to the size of a finger', async ({ page }, info) => {
  test.skip(info.project.name === 'desk', 'a finger needs a touch screen');
  await page.goto(SURFACES);
  await expect(page.locator('.verdict:visible').first()).toBeVisible({ timeout: 60_000 });
  const open = await page.locator('.verdict:visible').count();
  const field = page.getByRole('searchbox', { name: 'Search in the surfaces' });
  await field.tap();
  await field.fill('hand left');
  await expect(page.locator('.finder output')).toHaveText(/^\d+ of \d+ surfaces$/);
  await expect(page).toHaveURL(/find=hand\+left/);
  const first = page.locator('details.fold').first();
  await first.locator('summary').first().tap();
  await expect(first).not.toHaveAttribute('open');
  await field.fill('');
  await expect(page.locator('.verdict:visible')).toHaveCount(open);
  await keepsToTheRules(page);
  await page.screenshot({ path: picture(info, 'surfaces-folded') });
});

test('the header leaves the screen to the page, with every place in sight', async ({ page }, info) => {
  await page.goto('/evidence');
  const header = page.getByRole('banner');
  const links = header.getByRole('link').filter({ visible: true });
  await expect(links).toHaveCount(10);
  for (const one of (await links.all()).slice(1)) await expect(one).toBeInViewport();
  const size = page.viewportSize();
  const box = await header.boundingBox();
  expect((box?.height ?? Infinity) / (size?.height ?? 1)).toBeLessThan(0.18);
  await expect(page.getByRole('searchbox')).toBeInViewport();
  await keepsToTheRules(page);
  await page.screenshot({ path: picture(info, 'header') });
});
