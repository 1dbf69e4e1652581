// An exit in another language: what the observer reads and presses and what the wearer sees is in it, on every screen of the guide,
// while the page around it is English. What stays as it is: the file's own title, titles of sources, what is marked as English.
import { expect, type Page, test } from '@playwright/test';
import type { GuideWords } from '../../src/words/guide.ts';
import { type Language, wordsFor } from '../../src/words/index.ts';
import { faultIn, type Foreign } from '../words/languages.ts';
import { keepsToTheRules } from './guideDrill.ts';
import { beginIn, onByKeys } from './guideFit.ts';

const SUIT = 'larkmoor-suit-doffing';

/** Whole texts of a table, without those that have places to fill. */
const textsOf = (table: unknown): readonly string[] =>
  typeof table === 'string' ? [table] : Object.values(table ?? {}).flatMap(textsOf);
const saidIn = (language: Language): ReadonlySet<string> =>
  new Set(textsOf(wordsFor(language).guide satisfies GuideWords));

/** Every text on the screen and every name that only a screen reader says, but for what stays as it is. */
const texts = (page: Page): Promise<readonly string[]> =>
  page.locator('.g-page').evaluate((root) => {
    const KEPT = '[lang="en"]:not(html), .g-source, h1, .g-side, .d-picture';
    const shown = [...root.querySelectorAll('*')].filter((part) => !part.closest(KEPT));
    const said = shown.flatMap((part) =>
      [...part.childNodes].flatMap((node) =>
        node.nodeType === Node.TEXT_NODE ? [node.textContent ?? ''] : [],
      ),
    );
    const named = shown.flatMap((part) => part.getAttribute('aria-label') ?? []);
    return [...said, ...named].map((text) => text.trim()).filter((text) => /\p{L}{2}/u.test(text));
  });

async function isIn(page: Page, language: Foreign): Promise<void> {
  const [english, own] = [saidIn('en'), saidIn(language)];
  const said = await texts(page);
  expect(said.length).toBeGreaterThan(3);
  expect(said.filter((text) => english.has(text) && !own.has(text))).toEqual([]);
  expect(said.filter((text) => faultIn(language, text)?.startsWith('English'))).toEqual([]);
  await keepsToTheRules(page);
}

test.beforeEach(async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  test.setTimeout(180_000);
  await page.clock.install();
});

for (const language of ['fr', 'es', 'pt'] as const)
  test(`everything around the lines of an exit is said in ${language}`, async ({ page }) => {
    await beginIn(page, SUIT, language);
    await expect(page.locator('.g-page')).toHaveAttribute('lang', language);
    const { guide } = wordsFor(language);
    const press = async (name: string): Promise<void> => {
      await page.clock.fastForward(600);
      await page.getByRole('button', { name, exact: true }).first().click();
    };
    await isIn(page, language);
    for (let turn = 0; turn < 5; turn += 1) await onByKeys(page);
    await isIn(page, language);
    await page.keyboard.press('w');
    await expect(page.getByRole('heading', { name: guide.labels.wrong.title })).toBeVisible();
    await isIn(page, language);
    await page.locator('.g-panel .g-act.wrong').first().click();
    await expect(page.locator('.g-offer')).toBeVisible({ timeout: 20_000 });
    await isIn(page, language);
    await press(guide.presses.decline);
    await isIn(page, language);
    await press(guide.labels.wrong.declines[0] ?? '');
    await press(guide.labels.line.more);
    await isIn(page, language);
    await press(guide.presses['hand-over']);
    await isIn(page, language);
    await press(guide.labels.line.backToLine);
    await page.keyboard.press('s');
    await isIn(page, language);
    await page.clock.fastForward(600);
    await page.keyboard.press('e');
    await isIn(page, language);
    await press(guide.emergencies['splash-face']);
    await expect(page.locator('.g-card')).toBeVisible();
    await isIn(page, language);
  });

test('the wearer’s second screen and the questions at the end are in French', async ({ page, context }) => {
  await beginIn(page, 'everyday-example-1-doffing', 'fr');
  const display = await context.newPage();
  await display.goto(`${page.url()}/display/wearer`);
  await expect(display.locator('.d-rows')).toBeVisible();
  await expect(display.locator('.g-page')).toHaveAttribute('lang', 'fr');
  await isIn(display, 'fr');
  const { guide } = wordsFor('fr');
  const question = page.getByRole('button', { name: guide.replies['not-sure'], exact: true });
  for (let turn = 0; turn < 120 && (await question.count()) === 0; turn += 1) await onByKeys(page);
  await isIn(page, 'fr');
  await isIn(display, 'fr');
  await page.keyboard.press('y');
  await expect(page.getByRole('list', { name: guide.labels.told })).toBeVisible();
  await isIn(page, 'fr');
  await page.clock.fastForward(600);
  while (await onByKeys(page));
  await expect(page.locator('.g-outcome')).toContainText(guide.labels.line.record);
  await isIn(page, 'fr');
});
