// The page in use: choose a procedure, walk a route by keyboard alone, walk the ledger, open a file from disk; every view
// passes the accessibility rules and complains of nothing. Screenshots are left in .cache/screens to be looked at.
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import { complaintsOf, sideways, violationsOf } from './page.ts';

const DEMO = '/procedure/larkmoor-suit-doffing';

/** Kept after the run, unlike what Playwright itself writes for a test that passed. */
const screenOf = (info: TestInfo, name: string): string => `.cache/screens/${name}-${info.project.name}.png`;

/** Long pages are checked by a short one of their kind: the rules are the same, the waiting is not. */
const VIEWS = [
  { name: 'home', path: '/', shows: 'What the check finds in it' },
  { name: 'steps', path: `${DEMO}/steps?step=15`, shows: 'Steps' },
  { name: 'ledger', path: '/procedure/everyday-example-1-doffing/ledger', shows: 'Ledger' },
  { name: 'surfaces', path: `${DEMO}/surfaces`, shows: 'Protected surfaces' },
  { name: 'evidence', path: '/evidence?find=slip.', shows: 'Evidence' },
] as const;

test('every view holds the rules in light and dark', async ({ page }, info) => {
  test.setTimeout(240_000);
  const complaints = complaintsOf(page);
  for (const { name, path, shows } of VIEWS) {
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    await page.goto(path);
    await expect(page.getByRole('heading', { name: shows, exact: true })).toBeVisible();
    await expect(page.getByRole('contentinfo')).toContainText('does not mean that a procedure is safe');
    expect.soft(await violationsOf(page), name).toEqual([]);
    expect.soft(await sideways(page), name).toBeLessThanOrEqual(0);
    await page.screenshot({ path: screenOf(info, `${name}-light`) });
    await page.emulateMedia({ colorScheme: 'dark' });
    if (info.project.name === 'desk')
      expect.soft(await violationsOf(page, ['color-contrast']), name).toEqual([]);
    await page.screenshot({ path: screenOf(info, `${name}-dark`) });
  }
  expect(complaints).toEqual([]);
});

test('the invented procedure is first and shows its faults', async ({ page }) => {
  await page.goto('/');
  const demo = page.getByRole('region', { name: /Larkmoor General Hospital \(invented\)/ });
  await expect(demo.getByText('Invented, for demonstration')).toBeVisible();
  await expect(demo.getByRole('listitem').filter({ hasText: 'Open route' }).first()).toContainText(/[1-9]/);
});

test('a finding’s route is walked by keyboard alone', async ({ page }) => {
  await page.goto('/');
  const start = page.getByRole('link', { name: 'Walk its worst route' });
  await expect(start).toBeVisible();
  for (let press = 0; press < 40; press += 1) {
    if (await start.evaluate((link) => link === document.activeElement)) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Its route' })).toBeVisible();
  const now = page.locator('.route-now');
  await expect(now).toContainText('Link 1 of');
  const first = await now.textContent();
  await page.keyboard.press('ArrowRight');
  await expect(now).toContainText('Link 2 of');
  expect(await now.textContent()).not.toBe(first);
  await expect(page.getByRole('img', { name: /wears, outermost first/ })).toBeVisible();
  await page.keyboard.press('ArrowLeft');
  await expect(now).toHaveText(first ?? '');
  await expect(page.getByText('Replay id:')).toBeVisible();
});

test('a route shows its mends, each with what it changes', async ({ page }, info) => {
  test.setTimeout(90_000);
  await page.goto('/');
  await page.getByRole('link', { name: 'Walk its worst route' }).click();
  const mends = page.getByRole('region', { name: 'Mends that were tried' }).getByRole('listitem');
  await expect(mends.first()).toContainText('→', { timeout: 60_000 });
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  await page.screenshot({ path: screenOf(info, 'finding'), fullPage: true });
});

/** With a finger where there is a touch screen. */
const press = (target: Locator, hasTouch: boolean | undefined): Promise<void> =>
  hasTouch ? target.tap() : target.click();

test('choosing a step shows its picture, in words too', async ({ page, hasTouch }) => {
  await page.goto(`${DEMO}/steps`);
  await press(page.getByRole('button', { name: /^9 Remove the outer gloves/ }), hasTouch);
  const picture = page.getByRole('region', { name: 'Picture of step 9' });
  await expect(picture.getByRole('img', { name: /outer gloves/ })).toBeVisible();
  await picture.getByText('The picture in words').click();
  await expect(picture.getByRole('listitem').filter({ hasText: 'The wearer wears' })).toBeVisible();
  await press(picture.getByText('As it ends'), hasTouch);
  await expect(picture.getByRole('img', { name: /As step 9 ends/ })).toBeVisible();
  await press(picture.getByRole('button', { name: /Next step/ }), hasTouch);
  await expect(page.getByRole('region', { name: 'Picture of step 10' })).toBeVisible();
});

test('the ledger is walked with arrow keys and leads to the step', async ({ page }) => {
  await page.goto(`${DEMO}/ledger`);
  const grid = page.getByRole('grid', { name: 'Ledger' });
  await grid.locator('td').first().focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key);
  const focused = page.locator('td:focus');
  await expect(focused).toHaveAttribute('aria-label', /after step 3/);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/step=3&surface=/);
  await expect(page.getByText(/^Ringed:/)).toBeVisible();
});

test('the agent is chosen, and the check answers for it', async ({ page }) => {
  await page.goto(`${DEMO}/surfaces`);
  await expect(page.getByText(/, enveloped agent/).first()).toBeVisible();
  await page.getByText('non-enveloped agent (not named by it)').click();
  await expect(page.getByText(/, non-enveloped agent/).first()).toBeVisible();
  await expect(page).toHaveURL(/agent=non-enveloped/);
});

test('findings are filtered, and what is left out is counted', async ({ page }) => {
  await page.goto(`${DEMO}/steps`);
  await page.getByText('Filter findings').click();
  await page.getByRole('group', { name: 'Kinds' }).getByText('Open route').click();
  await expect(page.getByText(/[1-9]\d* not shown/)).toBeVisible();
});

async function openText(page: Page, text: string): Promise<void> {
  await page.goto('/');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Open a file/ }).click();
  await (await chooser).setFiles({ name: 'own.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
}

test('a file with errors says where, what and how to mend it', async ({ page }, info) => {
  await openText(page, 'doffline: 1\ntitle: Broken\nkind: dofing\n');
  await expect(page.getByRole('heading', { name: /cannot be checked yet/ })).toBeVisible();
  await expect(page.getByText(/Line 3, column 7/)).toBeVisible();
  await expect(page.getByText(/Did you mean "doffing"/)).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'errors') });
});

const HOSTILE = (steps: string): string => `doffline: 1
title: "<img src=x onerror=document.body.remove()> (invented)"
kind: doffing
version: "1"
invented: true
people: {wearer: {wears: [gown, gloves]}}
room: {zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}}
products: [alcohol-hand-rub]
steps:
${steps}`;

test('what a file says is shown as text and never run', async ({ page }) => {
  const complaints = complaintsOf(page);
  await openText(page, HOSTILE('  - {do: say, note: "<script>document.body.remove()</script>"}\n'));
  await expect(page.getByRole('heading', { level: 1, name: /<img src=x/ })).toBeVisible();
  await expect(page.getByText('<script>document.body.remove()</script>')).toBeVisible();
  expect(complaints).toEqual([]);
});

test('a procedure beyond every size says what was left undone', async ({ page }, info) => {
  const complaints = complaintsOf(page);
  await openText(page, HOSTILE('  - {do: sanitise, with: alcohol-hand-rub}\n'.repeat(2000)));
  await expect(page.getByRole('list', { name: 'What the check left undone' })).toBeVisible();
  await expect(page.getByText('not looked at').first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Findings' })).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'undone') });
});

test('everything that is pressed is large enough for a finger', async ({ page }) => {
  await page.goto(`${DEMO}/steps?step=9`);
  await expect(page.getByRole('heading', { name: 'Steps', exact: true })).toBeVisible();
  const small = await page.evaluate(() => {
    const targets = document.querySelectorAll(
      'main button, main summary, main .pill, nav a, main a.row-link, a.button',
    );
    return [...targets]
      .map((target) => ({ box: target.getBoundingClientRect(), text: target.textContent?.slice(0, 40) }))
      .filter(({ box }) => box.height > 0 && box.height < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.height)}`);
  });
  expect(small).toEqual([]);
});
