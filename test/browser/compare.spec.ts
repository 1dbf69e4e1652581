// Comparing and costing in use: choose by keyboard or finger, the picture and what it says in words, figures with their
// intervals; every view passes the accessibility rules. Screenshots are left in .cache/screens to be looked at.
import { expect, type Page, test, type TestInfo } from '@playwright/test';
import { complaintsOf, sideways, violationsOf } from './page.ts';

const screenOf = (info: TestInfo, name: string): string => `.cache/screens/${name}-${info.project.name}.png`;

const small = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('main button, main select, main summary, main .pill, main input, nav a')]
      .filter(
        (target) =>
          !target.closest('.visually-hidden') &&
          !['checkbox', 'radio'].includes(target.getAttribute('type') ?? ''),
      )
      .map((target) => ({
        box: target.getBoundingClientRect(),
        text: target.textContent?.slice(0, 40) ?? '',
      }))
      .filter(({ box }) => box.height > 2 && box.height < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.height)}`),
  );

const picture = (page: Page) => page.getByRole('img', { name: /Steps of the first on the left/ });

test('the two versions of the invented unit, picture first, in light and dark', async ({ page }, info) => {
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  await page.goto('/compare');
  await expect(page.getByRole('img', { name: /4 new, 1 left out, 1 changed, 31 unchanged/ })).toBeVisible();
  await page.screenshot({ path: screenOf(info, 'compare-light') });
  await expect(page.getByText('Trying moved steps')).toHaveCount(0, { timeout: 60_000 });
  await expect(page.getByText('The second has no error that the first has not.')).toBeVisible();
  await expect(page.getByText(/No longer in the second \(\d+\)/)).toBeVisible();
  const chances = page.getByRole('region', { name: 'Chances of both' });
  await expect(chances.getByText(/lower: −.*90 % interval .* judgement/).first()).toBeVisible();
  await expect(page.getByRole('region', { name: 'Barriers of both' })).toContainText('0 (open)');
  await expect(page.getByRole('region', { name: 'Supplies of both' })).toContainText('alcohol hand rub');
  await expect(page.getByRole('region', { name: /in words/ }).getByRole('listitem')).toHaveCount(6);
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await small(page)).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'compare-whole'), fullPage: true });
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violationsOf(page, ['color-contrast'])).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'compare-dark') });
  expect(complaints).toEqual([]);
});

test('two different procedures: moved steps are joined, what cannot be compared is said', async ({
  page,
}, info) => {
  test.setTimeout(90_000);
  await page.goto('/compare?a=national-n95-coverall-doffing&b=national-papr-gown-doffing');
  await expect(picture(page)).toBeVisible({ timeout: 30_000 });
  await expect(
    picture(page).locator('.aligned-line.is-moved-and-changed, .aligned-line.is-moved'),
  ).not.toHaveCount(0);
  await page.screenshot({ path: screenOf(info, 'compare-other') });
  await page.goto('/compare?a=everyday-example-1-doffing&b=larkmoor-suit-doffing');
  await expect(page.getByRole('heading', { name: 'What cannot be compared' })).toBeVisible({
    timeout: 30_000,
  });
  await expect(page.getByText(/Only the second has the assistant/)).toBeVisible();
  await expect(page.getByText(/New errors in the second \([1-9]/)).toBeVisible();
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await violationsOf(page)).toEqual([]);
});

test('chosen by keyboard alone, and kept in the address', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'Compare', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Compare two procedures' })).toBeVisible();
  const second = page.getByLabel('Second', { exact: true });
  for (let press = 0; press < 30; press += 1) {
    if (await second.evaluate((select) => select === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Home');
  await expect(page).toHaveURL(/b=larkmoor-suit-doffing(&|$)/);
  await expect(page.getByText('Every step is as it was.')).toBeVisible({ timeout: 30_000 });
  await page.keyboard.press('ArrowDown');
  await expect(page).toHaveURL(/b=larkmoor-suit-doffing-v2/);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/a=larkmoor-suit-doffing-v2/);
  await expect(page.getByText(/New errors in the second/)).toBeVisible({ timeout: 30_000 });
});

test('every step is shown on request; long stretches fold until then', async ({ page, hasTouch }) => {
  await page.goto('/compare');
  await expect(picture(page)).toBeVisible({ timeout: 30_000 });
  const boxes = picture(page).locator('.aligned-step');
  const folded = await boxes.count();
  await expect(
    picture(page)
      .getByText(/\d+ unchanged steps/)
      .first(),
  ).toBeVisible();
  const every = page.getByText('Every step', { exact: true });
  await (hasTouch ? every.tap() : every.click());
  // 33 steps on the left, 36 on the right.
  await expect(boxes).toHaveCount(69);
  expect(folded).toBeLessThan(69);
});

test('a file with errors says so, and where to see them', async ({ page }) => {
  await page.goto('/');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Open a file/ }).click();
  const text = 'doffline: 1\ntitle: Broken\nkind: dofing\n';
  await (await chooser).setFiles({ name: 'own.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
  await expect(page.getByRole('heading', { name: /cannot be checked yet/ })).toBeVisible();
  await page.getByRole('link', { name: 'Compare', exact: true }).click();
  await page.getByLabel('First', { exact: true }).selectOption('opened');
  await expect(page.getByText('own.yaml has errors and cannot be compared.')).toBeVisible();
  // One that is not here is shown as none, so that the first of the list can be chosen.
  await page.goto('/compare?a=gone&b=larkmoor-suit-doffing-v2');
  const first = page.getByLabel('First', { exact: true });
  await expect(first.locator('option:checked')).toHaveText('(choose)');
  await expect(page.getByText('Version 2: larkmoor-suit-doffing-v2.yaml')).toBeVisible();
});

test('supplies: counted, multiplied by runs, priced by the user’s own list', async ({ page }, info) => {
  test.setTimeout(90_000);
  const complaints = complaintsOf(page);
  await page.goto('/procedure/larkmoor-suit-doffing/supplies');
  const equipment = page.getByRole('region', { name: 'Equipment', exact: true });
  const gloves = equipment.getByRole('row', { name: /outer gloves/ });
  await expect(gloves).toContainText('3 pairs');
  await expect(page.getByText(/alcohol hand rub: 11 uses, 33 mL/)).toBeVisible();
  await expect(page.getByText(/none is published per item or run/)).toBeVisible();
  const runs = page.getByLabel('Runs a day');
  await runs.fill('4');
  await runs.press('Enter');
  await expect(gloves).toContainText('12 pairs');
  await expect(page).toHaveURL(/runs=4/);
  await page.getByText('Your own prices').click();
  await page.getByLabel('Currency').fill('EUR');
  await page.getByLabel(/^outer gloves/).fill('0,5');
  // Three pairs, four runs.
  await expect(page.getByText('Sum: 12.00 EUR')).toBeVisible();
  await page.getByLabel(/^apron/).fill('free');
  await expect(page.getByText('This is no price: write a number from 0.')).toBeVisible();
  await page.reload();
  await page.getByText('Your own prices').click();
  await expect(page.getByText('Sum: 12.00 EUR')).toBeVisible();
  await page.getByText('What these numbers rest on').click();
  await expect(page.getByRole('link', { name: 'handrub.volume' })).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  await page.screenshot({ path: screenOf(info, 'supplies'), fullPage: true });
  expect(complaints).toEqual([]);
});
