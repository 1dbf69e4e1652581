// The observer's screen fits: in French, whose lines are longest, at every line of a whole drill, with a time running, stopped,
// with a slip recorded and an emergency open, on a desk, on a tablet lying and standing, and on a phone; by day and by night. And
// with all at once that a slip brings, in every language with long words.
import { expect, type Page, test } from '@playwright/test';
import type { GuideWords } from '../../src/words/guide.ts';
import { wordsFor } from '../../src/words/index.ts';
import { hasContrast } from './guideDrill.ts';
import { beginIn, cutOff, fitsAt, isHighOrSaid, onByKeys } from './guideFit.ts';

const SUIT = 'larkmoor-suit-doffing';
/** Pixels: figures and patterns are told apart. */
const LEAST_PICTURE = 120;
const SIZES = [
  [1280, 800],
  [1024, 768],
  [768, 1024],
  [390, 844],
] as const;

test.beforeEach(async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'takes each of these windows in turn');
  test.setTimeout(300_000);
  await page.clock.install();
});

test('nothing is cut at any line of a whole French drill', async ({ page }) => {
  await beginIn(page, SUIT, 'fr');
  let [times, longest, turn] = [0, 0, 0];
  do {
    const length = await page.locator('.g-line').evaluate((line) => line.textContent.length);
    const runs = (await page.locator('.g-time').count()) > 0;
    times += runs ? 1 : 0;
    // The longest line so far, and the first times, in every window; of the others every third, in each in its turn.
    const isHard = length > longest || (runs && times < 3);
    longest = Math.max(longest, length);
    turn += 1;
    if (isHard) await fitsAt(page, SIZES);
    else if (turn % 3 === 0) await fitsAt(page, [SIZES[turn % SIZES.length] ?? SIZES[0]]);
  } while (await onByKeys(page));
  expect(times).toBeGreaterThan(3);
  expect(turn).toBeGreaterThan(60);
});

test('nothing is cut while something lies over the line, by day and night', async ({ page }) => {
  await beginIn(page, SUIT, 'fr');
  for (let turn = 0; turn < 6; turn += 1) await onByKeys(page);
  const light = page.locator('.g-strip .g-acts button').first();
  const look = async (): Promise<void> => {
    await page.clock.fastForward(600);
    await fitsAt(page, SIZES);
    await light.click();
    await fitsAt(page, SIZES);
    await hasContrast(page);
    await light.click();
    await page.clock.fastForward(600);
  };
  await page.keyboard.press('w');
  await look();
  await page.locator('.g-panel .g-act.wrong').first().click();
  await expect(page.locator('.g-suspects')).toBeVisible();
  // Another way on is offered and stored too; until then nothing else is taken.
  await expect(page.locator('.g-offer')).toBeVisible();
  // With the longest notice of what may be contaminated over the line.
  await expect(page.locator('.g-saved')).toHaveAttribute('data-saving', 'no');
  await page.clock.fastForward(600);
  await page.keyboard.press('w');
  await page.getByRole('button', { name: 'Main au visage' }).click();
  await expect(page.locator('.g-after')).toContainText('touche Urgence');
  await look();
  await page.keyboard.press('s');
  await look();
  await page.keyboard.press('e');
  await look();
  await page.locator('.g-panel .g-list button').nth(3).click();
  await expect(page.locator('.g-card')).toBeVisible();
  await look();
});

/** Stored and shown, and later than a bounce. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator('.g-saved')).toHaveAttribute('data-saving', 'no');
  await page.clock.fastForward(600);
}

/** A rinse that goes on while the exit does. */
async function rinsing(page: Page, guide: GuideWords): Promise<void> {
  await page.keyboard.press('e');
  await page.getByRole('button', { name: guide.emergencies['splash-face'] }).click();
  await settled(page);
  await page.getByRole('button', { name: guide.presses['start-timer'] }).click();
  await settled(page);
  await page.keyboard.press('r');
  await settled(page);
}

/** On to a second time that runs, with a slip recorded then that another way on is offered for. */
async function offeredInTime(page: Page): Promise<void> {
  const offer = page.locator('.g-offer');
  const time = page.locator('.g-time:not(.kind-wear)');
  const sought = page.locator('.g-after, .g-offer');
  do {
    while ((await time.count()) < 2) expect(await onByKeys(page)).toBe(true);
    await page.keyboard.press('w');
    await page.locator('.g-panel .g-act.wrong').first().click();
    await settled(page);
    await expect(sought.first()).toBeVisible({ timeout: 30_000 });
    if ((await offer.count()) > 0) return;
    expect(await onByKeys(page)).toBe(true);
  } while ((await offer.count()) === 0);
}

for (const language of ['fr', 'pt', 'es'] as const)
  test(`the line, its picture and the presses stay in sight with a notice, an offer and times at once: ${language}`, async ({
    page,
  }) => {
    const { guide } = wordsFor(language);
    await beginIn(page, SUIT, language);
    await rinsing(page, guide);
    await offeredInTime(page);
    // With the longest notice of what may be contaminated.
    await page.keyboard.press('w');
    await page.getByRole('button', { name: guide.deviations['touched-face'] }).click();
    await settled(page);
    await expect(page.locator('.g-after')).toContainText(guide.presses.emergency);
    await expect(page.locator('.g-offer')).toBeVisible();
    await expect(page.locator('.g-time:not(.kind-wear)')).toHaveCount(2);
    await expect(page.locator('.g-suspects li').first()).toBeAttached();
    for (const size of SIZES) {
      await fitsAt(page, [size]);
      // A phone has no room for it.
      const isPhone = size[0] < 640;
      const shows = page.locator('.g-side .picture');
      await expect(shows).toBeVisible({ visible: !isPhone, timeout: 20_000 });
      await fitsAt(page, [size]);
      if (!isPhone) expect((await shows.boundingBox())?.height).toBeGreaterThan(LEAST_PICTURE);
      await expect.poll(async () => isHighOrSaid(page)).toBe(true);
      await page.screenshot({ path: `.cache/screens/fit-offer-${language}-${size[0]}.png` });
    }
    // Whatever is read of the panel, it alone moves.
    await page.setViewportSize({ width: 1024, height: 768 });
    const rows = page.locator('.g-line .g-row').first();
    await expect.poll(async () => cutOff(page)).toEqual([]);
    const before = await rows.boundingBox();
    await page.locator('.g-aside .g-middle').evaluate((panel) => panel.scrollTo(0, panel.scrollHeight));
    expect(await page.locator('.g-aside .g-middle').evaluate((panel) => panel.scrollTop)).toBeGreaterThan(0);
    expect(await rows.boundingBox()).toEqual(before);
  });

test('what is cut is told', async ({ page }) => {
  await beginIn(page, SUIT, 'fr');
  expect(await cutOff(page)).toEqual([]);
  await page.locator('.g-presses .stop').evaluate((stop: HTMLElement) => {
    stop.style.setProperty('margin-block-start', '4rem');
    stop.style.setProperty('position', 'relative');
    stop.style.setProperty('inset-block-start', '4rem');
  });
  expect((await cutOff(page)).join()).toContain('STOP');
});
