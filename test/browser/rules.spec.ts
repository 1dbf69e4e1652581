// Writing by finger alone: from nothing to a file with a mend pressed, a departure accepted in writing, a reload in the middle;
// and the page of what stands around the steps within the rules.
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { violationsOf } from './page.ts';

const rows = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' }).getByRole('row');

async function wear(page: Page, item: string): Promise<void> {
  await page.getByLabel('Put on over it', { exact: true }).selectOption({ label: item });
  await page.getByRole('button', { name: 'Put on: Put on over it' }).tap();
}

/** Once the check has answered nothing moves any more: a finger waits for that too. */
async function add(page: Page, typed: string, sentence: RegExp, count: number): Promise<void> {
  const search = page.getByRole('combobox', { name: 'Add a step' });
  if (count > 1) await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 30_000 });
  await search.tap();
  await search.fill(typed);
  const first = page.getByRole('option').first();
  await expect(first).toHaveText(sentence);
  // The list moves above the field when it no longer fits below.
  let at = '';
  await expect
    .poll(async () => {
      const before = at;
      at = JSON.stringify(await first.boundingBox());
      return at === before;
    })
    .toBe(true);
  await first.tap();
  await expect(rows(page)).toHaveCount(count);
}

const STEPS: readonly (readonly [string, RegExp])[] = [
  ['go doffing', /Go to the doffing area/],
  ['remove gloves', /Remove the gloves/],
  ['remove gown', /Remove the gown/],
  ['clean hands rub', /Clean both/],
];

test('from nothing to a file by finger alone, with a reload in the middle', async ({ page, hasTouch }) => {
  test.skip(!hasTouch, 'by finger only');
  test.setTimeout(120_000);
  await page.goto('/write');
  await page.getByRole('button', { name: 'New doffing' }).tap();
  for (const item of ['gown', 'gloves']) await wear(page, item);
  await page.getByRole('link', { name: 'Steps', exact: true }).tap();
  for (const [at, [typed, sentence]] of STEPS.entries()) await add(page, typed, sentence, at + 1);
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });

  await rows(page).nth(1).getByText('Remove the gloves').tap();
  await page
    .getByRole('button', { name: /^Apply this mend/ })
    .first()
    .tap();
  await expect(page.getByRole('button', { name: /^Undo: Mend/ })).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: /^Undo: Mend/ }).tap();
  await expect(rows(page)).toHaveCount(4);
  await page.getByRole('button', { name: /^Redo: Mend/ }).tap();

  await page.getByRole('link', { name: 'Rules', exact: true }).tap();
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  await acceptFirst(page);
  await page.getByRole('link', { name: 'File', exact: true }).tap();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save as a-new-doffing.yaml/ }).tap();
  const saved = await readFile(await (await download).path(), 'utf8');
  expect(saved).toContain('item: gown');
  expect(saved).toContain('reason: No second dispenser here.');
});

/** Nothing is written before reason, role and both days are said, in their order. */
async function acceptFirst(page: Page): Promise<void> {
  const accepted = page.getByRole('region', { name: 'Accepted in writing' });
  const write = accepted.getByRole('button', { name: 'Accept it' });
  await accepted.getByLabel('Accept in writing').selectOption({ index: 1 });
  await accepted.getByLabel('Why', { exact: true }).fill('No second dispenser here.');
  await accepted.getByLabel(/^Who accepts it/).fill('infection-prevention lead');
  await accepted.getByLabel('Accepted on').fill('2026-07-31');
  await accepted.getByLabel('To be looked at again on').fill('2026-01-31');
  await expect(write).toBeDisabled();
  await expect(accepted.getByText('The review comes before the day it is accepted.')).toBeVisible();
  await accepted.getByLabel('To be looked at again on').fill('2027-01-31');
  await write.tap();
  await expect(accepted.getByRole('button', { name: /^No longer accept/ })).toHaveCount(1);
}

test('source, start and policy are written and undone, and the page keeps to the rules', async ({
  page,
}, info) => {
  await page.goto('/write');
  await page
    .getByLabel('From a copy of', { exact: true })
    .selectOption({ label: 'Everyday isolation sequence, example 1: doffing' });
  await page.getByRole('button', { name: 'Copy: From a copy of' }).press('Enter');
  await page.getByRole('link', { name: 'Rules', exact: true }).press('Enter');
  await page.getByRole('button', { name: 'It follows no document' }).press('Enter');
  await page.getByRole('button', { name: 'Name its source' }).press('Enter');
  await page.getByLabel('Title of the document').fill('Ward handbook (invented)');
  await page.getByLabel('State a surface', { exact: true }).selectOption({ index: 3 });
  await page.getByRole('button', { name: 'Add: State a surface' }).press('Enter');
  await page.getByLabel(/^How often the observer misses/).selectOption({ index: 1 });
  await expect(page.getByLabel(/^How far wearer and observer err/)).toHaveValue('low');
  expect(await violationsOf(page)).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await page.screenshot({ path: `.cache/screens/write-rules-${info.project.name}.png`, fullPage: true });
  const undo = page.getByRole('button', { name: /^Undo/ });
  while (await undo.isEnabled()) await undo.press('Enter');
  await expect(page.getByLabel('Title of the document')).not.toHaveValue('Ward handbook (invented)');
});

test('two pages on one draft show the same and lose nothing', async ({ page, context }) => {
  await page.goto('/write');
  await page.getByRole('button', { name: 'New doffing' }).press('Enter');
  const other = await context.newPage();
  await other.goto(page.url());
  await page.getByLabel('Title', { exact: true }).fill('Written here');
  await expect(other.getByLabel('Title', { exact: true })).toHaveValue('Written here');
  await other.getByLabel('Title', { exact: true }).fill('Written there');
  await expect(page.getByLabel('Title', { exact: true })).toHaveValue('Written there');
  await page.getByRole('button', { name: /^Undo/ }).press('Enter');
  await expect(other.getByLabel('Title', { exact: true })).not.toHaveValue('Written there');
});
