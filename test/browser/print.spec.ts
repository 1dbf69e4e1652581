// Printing from the page: the typeset paper from the server behind it, read back; how far a version is approved; and what is
// said and still works where no server answers.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, type Page, test, type TestInfo } from '@playwright/test';
import { complaintsOf, sideways, violationsOf } from './page.ts';
import { PROCEDURE, seed } from './versionSeed.ts';

const LARKMOOR = '/procedure/larkmoor-suit-doffing/steps';
/** A short one, checked at once. */
const SHORT = '/procedure/everyday-example-1-doffing/steps';
const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;

const read = (tool: string, file: string, ...more: readonly string[]): string =>
  spawnSync(tool, [file, ...more], { encoding: 'utf8' }).stdout;

const button = (page: Page, name: string) => page.getByRole('button', { name });
const open = (page: Page) => page.locator('.print-panel > summary').click();
const choose = (page: Page, group: string, name: string) =>
  page.getByRole('radiogroup', { name: group }).getByText(name, { exact: true }).click();

/** Presses, saves, and gives the file's path. */
async function typeset(page: Page): Promise<string> {
  await expect(button(page, 'Typeset paper (PDF)')).toBeEnabled();
  const download = page.waitForEvent('download');
  await button(page, 'Typeset paper (PDF)').click();
  const saved = await download;
  await expect(page.getByText(`Saved as ${saved.suggestedFilename()}.`)).toBeVisible();
  return saved.path();
}

test('the panel keeps to the rules on every screen', async ({ page }, info: TestInfo) => {
  const complaints = complaintsOf(page);
  await page.goto(SHORT);
  await open(page);
  await expect(button(page, 'Typeset paper (PDF)')).toBeEnabled();
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBe(0);
  await page.locator('.print-panel').screenshot({ path: `test-results/print-${info.project.name}.png` });
  expect(complaints).toEqual([]);
});

test('a pressed paper is saved: tagged, fonts within, the unit’s own sentences in it', async ({ page }) => {
  await page.addInitScript(() =>
    localStorage.setItem(
      'doffline-wording',
      'fr:\n  sentences:\n    caution.real-breach: "Incident : appelez le poste 7."\n',
    ),
  );
  await page.goto(LARKMOOR);
  await open(page);
  await choose(page, 'Which paper', 'Pocket card');
  await choose(page, 'Size of the sheets', 'Letter');
  await page.getByLabel('Language of the paper').selectOption('fr');
  const file = await typeset(page);
  expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
  if (!hasPoppler) return;
  const text = read('pdftotext', file, '-');
  for (const one of [
    'Retirer le tablier',
    'APPROBATION NON ENREGISTRÉE',
    'Formulation produite par machine',
    'appelez le poste 7',
  ])
    expect(text).toContain(one);
  const about = read('pdfinfo', file);
  expect(about).toMatch(/Tagged:\s+yes/);
  expect(about).toMatch(/Page size:\s+612 x 792/);
  expect(read('pdffonts', file)).not.toMatch(/ no +(yes|no) +(yes|no) +\d/);
});

test('an approved version says when, its next draft that nobody approved it', async ({ page }) => {
  await seed(page);
  await page.goto(`/versions/${PROCEDURE}/1/read`);
  await open(page);
  await choose(page, 'Which paper', 'Sign-off sheet');
  const approved = await typeset(page);
  await button(page, 'New draft from it').click();
  await open(page);
  await choose(page, 'Which paper', 'Sign-off sheet');
  const draft = await typeset(page);
  if (!hasPoppler) return;
  expect(read('pdftotext', approved, '-')).toContain('approved on 2026-03-02');
  expect(read('pdftotext', approved, '-')).not.toContain('NOT APPROVED');
  const pages = read('pdftotext', draft, '-')
    .split('\f')
    .filter((one) => one.trim() !== '');
  expect(pages.length).toBeGreaterThan(1);
  for (const one of pages) expect(one).toContain('DRAFT, NOT APPROVED');
});

test('what has to be mended first stands with its line', async ({ page }) => {
  await page.goto('/write');
  await button(page, 'New doffing').click();
  await open(page);
  await button(page, 'Typeset paper (PDF)').click();
  await expect(page.getByRole('list', { name: 'What has to be mended first' })).toContainText('line ');
});

test('without a server it says so, and the page still prints itself', async ({ page }) => {
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes');
  });
  let gone = false;
  await page.route('**/api/papers', (route) => (gone ? route.abort() : route.continue()));
  await page.goto(SHORT);
  await open(page);
  await expect(button(page, 'Typeset paper (PDF)')).toBeEnabled();
  gone = true;
  await button(page, 'Typeset paper (PDF)').click();
  await expect(page.getByText(/^The server did not answer/)).toBeVisible();
  await expect(page.getByText(/^No server answers, so there is no typeset paper now/)).toBeVisible();
  await expect(button(page, 'Typeset paper (PDF)')).toBeDisabled();
  await button(page, 'Print this page as it stands').click();
  await expect(page.locator('body')).toHaveAttribute('data-printed', 'yes');
  gone = false;
  await button(page, 'Ask the server again').click();
  await expect(button(page, 'Typeset paper (PDF)')).toBeEnabled();
});
