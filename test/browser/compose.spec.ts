// Writing a procedure in the page: from nothing to a file by keyboard alone, with a mend pressed, undone and redone and a
// reload in the middle; by finger; every view of it within the accessibility rules and large enough to be pressed.
import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

async function violationsOf(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' ')}`,
  );
}

function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return complaints;
}

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

const screenOf = (info: TestInfo, name: string): string =>
  `.cache/screens/write-${name}-${info.project.name}.png`;

/** Tab until it has the focus. */
async function tabTo(page: Page, target: Locator, key = 'Tab'): Promise<void> {
  await expect(target).toBeVisible();
  for (let press = 0; press < 120; press += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
  }
  throw new Error(`${String(target)} was not reached by ${key}`);
}

async function pressByKey(page: Page, target: Locator, key?: string): Promise<void> {
  await tabTo(page, target, key);
  await page.keyboard.press('Enter');
}

/** Arrow keys to the choice, Enter takes it. */
async function takeByKey(page: Page, list: Locator, name: string): Promise<void> {
  await tabTo(page, list);
  const at = await list.evaluate(
    (element, wanted) =>
      [...(element as HTMLSelectElement).options].findIndex((option) => option.text === wanted),
    name,
  );
  expect(at).toBeGreaterThan(0);
  for (let press = 0; press < at; press += 1) await page.keyboard.press('ArrowDown');
  await expect(list.locator('option:checked')).toHaveText(name);
  await page.keyboard.press('Enter');
}

async function addByKey(page: Page, typed: string, sentence: RegExp): Promise<void> {
  await page.keyboard.type(typed);
  await expect(page.getByRole('option').first()).toHaveText(sentence);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('row').filter({ hasText: sentence }).first()).toBeVisible();
}

const rows = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' }).getByRole('row');

test('from nothing to a file by keyboard alone, with a reload in the middle', async ({ page }, info) => {
  test.setTimeout(150_000);
  const complaints = complaintsOf(page);
  await page.goto('/write');
  await pressByKey(page, page.getByRole('button', { name: 'New doffing' }));
  const worn = page.getByLabel('Put on over it', { exact: true });
  for (const item of ['gown', 'N95 respirator', 'goggles', 'gloves']) await takeByKey(page, worn, item);
  await expect(
    page.getByRole('img', { name: /wearing gown, N95 respirator, goggles, gloves/ }),
  ).toBeVisible();
  await expect(page.getByText('goggles', { exact: true }).first()).toBeVisible();

  await pressByKey(page, page.getByRole('link', { name: 'Steps', exact: true }), 'Shift+Tab');
  await tabTo(page, page.getByRole('combobox', { name: 'Add a step' }));
  await addByKey(page, 'go doffing', /Go to the doffing area/);
  await addByKey(page, 'remove gloves', /Remove the gloves/);
  await addByKey(page, 'remove gown', /Remove the gown/);
  await addByKey(page, 'take off goggles', /Remove the goggles/);
  await addByKey(page, 'remove n95', /Remove the N95 respirator/);
  await addByKey(page, 'clean hands rub', /Clean both/);
  await expect(rows(page)).toHaveCount(6);

  // The check follows, and says what stands open or is one slip away; a mend is one press.
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  await page.screenshot({ path: screenOf(info, 'steps') });
  await tabTo(page, rows(page).first());
  for (let press = 0; press < 2; press += 1) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Step 3 of 6' })).toBeVisible();
  const mend = page.getByRole('button', { name: /^Apply this mend/ }).first();
  await pressByKey(page, mend);
  const undo = page.getByRole('button', { name: /^Undo: Mend/ });
  await expect(undo).toBeVisible();
  const mended = await page.getByRole('heading', { name: /^Step \d+ of \d+$/ }).textContent();

  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^Redo: Mend/ })).toBeEnabled();
  await expect(page.getByRole('heading', { name: 'Step 3 of 6' })).toBeVisible();

  await page.reload();
  await expect(rows(page)).toHaveCount(6);
  await pressByKey(page, page.getByRole('button', { name: /^Redo: Mend/ }));
  await expect(undo).toBeVisible();
  expect(mended).not.toBeNull();

  await pressByKey(page, page.getByRole('link', { name: 'File', exact: true }));
  const download = page.waitForEvent('download');
  await pressByKey(page, page.getByRole('button', { name: /^Save as a-new-doffing.yaml/ }));
  const saved = await readFile(await (await download).path(), 'utf8');
  expect(saved).toBe(
    await page.getByRole('region', { name: 'Text of the file' }).locator('code').textContent(),
  );
  expect(saved).toContain('item: gown');
  expect(complaints).toEqual([]);
});

for (const [name, view] of [
  ['people', 'People'],
  ['room', 'Room'],
  ['file', 'File'],
] as const) {
  test(`${name} keeps to the accessibility rules and to the width of the screen`, async ({ page }, info) => {
    await page.goto('/write');
    await page.getByRole('button', { name: 'New doffing' }).press('Enter');
    await page.getByRole('link', { name: view, exact: true }).press('Enter');
    await expect(page.getByRole('link', { name: view, exact: true })).toHaveAttribute('aria-current', 'page');
    expect(await violationsOf(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: screenOf(info, name), fullPage: true });
  });
}
