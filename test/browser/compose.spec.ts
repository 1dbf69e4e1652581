// Writing a procedure in the page: from nothing to a file by keyboard alone, with a mend pressed, undone and redone and a
// reload in the middle; by finger; every view of it within the accessibility rules and large enough to be pressed.
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import { complaintsOf, pressByKey, sideways, tabTo, violationsOf } from './page.ts';

const screenOf = (info: TestInfo, name: string): string =>
  `.cache/screens/write-${name}-${info.project.name}.png`;

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
  await addByKey(page, 'take off goggles', /Remove the goggles: by the strap/);
  await addByKey(page, 'remove n95', /Remove the N95 respirator/);
  await addByKey(page, 'clean hands rub', /Clean both/);
  await expect(rows(page)).toHaveCount(6);

  // The check follows, and says what stands open or is one slip away; a mend is one press.
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  await page.screenshot({ path: screenOf(info, 'steps') });
  await tabTo(page, rows(page).first());
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Step 2 of 6' })).toBeVisible();
  const mend = page.getByRole('button', { name: /^Apply this mend/ }).first();
  await pressByKey(page, mend);
  const undo = page.getByRole('button', { name: /^Undo: Mend/ });
  await expect(undo).toBeVisible();
  const mended = await page.getByRole('heading', { name: /^Step \d+ of \d+$/ }).textContent();

  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^Redo: Mend/ })).toBeEnabled();
  await expect(page.getByRole('heading', { name: 'Step 2 of 6' })).toBeVisible();

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

/** A draft to look at: a copy of the invented hospital's doffing. */
async function copied(page: Page): Promise<void> {
  await page.goto('/write');
  await page.getByLabel('From a copy of', { exact: true }).selectOption({ label: COPIED });
  await page.getByRole('button', { name: 'Copy: From a copy of' }).press('Enter');
  await expect(rows(page).first()).toBeVisible();
}

const COPIED = 'Everyday isolation sequence, example 1: doffing';

const VIEWS = ['People', 'Room', 'Steps', 'Ledger', 'Surfaces', 'Supplies', 'File'] as const;

test('every view of it keeps to the rules, the screen and the size of a finger', async ({ page }, info) => {
  test.setTimeout(180_000);
  const complaints = complaintsOf(page);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await copied(page);
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  for (const view of VIEWS) {
    await page.getByRole('link', { name: view, exact: true }).press('Enter');
    if (view === 'Steps') await rows(page).nth(2).getByText('Remove').click();
    await expect(page.getByRole('link', { name: view, exact: true })).toHaveAttribute('aria-current', 'page');
    if (view === 'Supplies') await expect(page.getByRole('row', { name: /^gown 1 / })).toBeVisible();
    expect.soft(await violationsOf(page), view).toEqual([]);
    expect.soft(await sideways(page), view).toBeLessThanOrEqual(0);
    expect.soft(await tooSmall(page), view).toEqual([]);
    await page.screenshot({ path: screenOf(info, view.toLowerCase()), fullPage: view !== 'Ledger' });
  }
  expect(complaints).toEqual([]);
});

/** Whatever is pressed and is lower than a finger. */
function tooSmall(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.write :is(button, select, summary, .pill, input[type=text], nav a)')]
      .map((target) => ({ box: target.getBoundingClientRect(), text: target.textContent?.slice(0, 40) }))
      .filter(({ box }) => box.height > 1 && box.height < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.height)}`),
  );
}

const press = (target: Locator, hasTouch: boolean | undefined): Promise<void> =>
  hasTouch ? target.tap() : target.click();

test('steps are chosen together, moved, copied, deleted and brought back by finger or mouse', async ({
  page,
  hasTouch,
}) => {
  await copied(page);
  const before = await rows(page).allTextContents();
  const tool = (name: string): Locator =>
    page.getByRole('toolbar', { name: 'Chosen steps' }).getByRole('button', { name });
  for (const at of [1, 2]) await press(rows(page).nth(at).locator('.pill'), hasTouch);
  await expect(page.getByText('For 2 steps.')).toBeVisible();
  await press(tool('↑ Earlier'), hasTouch);
  await expect(rows(page).nth(0)).toContainText('Remove the goggles');
  await expect(rows(page).nth(2)).toContainText('Remove the gloves');
  await press(tool('Duplicate'), hasTouch);
  await expect(rows(page)).toHaveCount(before.length + 2);
  await press(tool('Delete'), hasTouch);
  await expect(rows(page)).toHaveCount(before.length);
  const undo = page.getByRole('button', { name: /^Undo/ });
  for (let times = 0; times < 3; times += 1) await press(undo, hasTouch);
  await expect(undo).toBeDisabled();
  expect((await rows(page).allTextContents()).map((text) => text.slice(0, 20))).toEqual(
    before.map((text) => text.slice(0, 20)),
  );
});

test('a step is dragged by keyboard, and moved by Alt and arrows', async ({ page }) => {
  await copied(page);
  await rows(page).first().focus();
  await page.keyboard.press('Alt+ArrowDown');
  await expect(rows(page).nth(1)).toContainText('Remove the gloves');
  const grip = page.getByRole('button', { name: 'Move step 1', exact: true });
  await grip.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Undo: Move a step/ })).toBeVisible();
  await expect(rows(page).first()).toContainText('Remove the gloves');
});

test('a file is opened, its lost comments are told of, a wrong one is refused with the reason', async ({
  page,
}) => {
  await page.goto('/write');
  const open = async (name: string, text: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'From a file …' }).press('Enter');
    await (await chooser).setFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) });
  };
  await open('wrong.yaml', 'doffline: 1\nkind: dofing\n');
  await expect(page.getByRole('alert')).toContainText('Did you mean "doffing"');
  const text = await readFile('procedures/everyday-example-1-doffing.yaml', 'utf8');
  await open('own.yaml', `# why in this order\n${text}`);
  await expect(page.getByRole('status').filter({ hasText: 'has comments' })).toBeVisible();
  await expect(rows(page)).toHaveCount(6);
  // Drafts of one title are told apart, and one that is not here says where drafts are.
  await page.goto('/write');
  await expect(page.getByText(/^Begun .+\. Last: Opened own\.yaml\.$/)).toBeVisible();
  const copies = page.getByLabel('From a copy of', { exact: true }).locator('option');
  const names = await copies.allTextContents();
  expect(names.filter((name) => / suit and respirator, version [12]$/.test(name))).toHaveLength(2);
  expect(new Set(names).size).toBe(names.length);
  await page.goto('/write/none/file');
  await expect(page.getByRole('heading', { name: 'No such draft' })).toBeVisible();
  await expect(page.getByText(/kept only in the browser in which it was written/)).toBeVisible();
  // Without steps no check is waited for; a title of one endless word is no wider than the screen.
  await page.goto('/write');
  await page.getByRole('button', { name: 'New doffing' }).press('Enter');
  await page.getByLabel('Title', { exact: true }).fill('W'.repeat(3000));
  await page.getByRole('link', { name: 'Review', exact: true }).press('Enter');
  await expect(page.getByText(/^The draft is not finished/)).toBeVisible();
  await page.getByRole('link', { name: 'Better order …' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'Better order' })).toBeVisible();
  expect(await sideways(page)).toBeLessThanOrEqual(0);
});
