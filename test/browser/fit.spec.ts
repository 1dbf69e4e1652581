// The observer's screen fits: in French, whose lines are longest, at every line of a whole drill, with a time running, stopped,
// with a slip recorded and an emergency open, on a desk, on a tablet lying and standing, and on a phone; by day and by night.
import { expect, test } from '@playwright/test';
import { hasContrast } from './guideDrill.ts';
import { beginIn, cutOff, fitsAt, onByKeys } from './guideFit.ts';

const SUIT = 'larkmoor-suit-doffing';
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
  await beginIn(page, SUIT, 'fr');
});

test('nothing is cut at any line of a whole French drill', async ({ page }) => {
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

test('what is cut is told', async ({ page }) => {
  expect(await cutOff(page)).toEqual([]);
  await page.locator('.g-presses .stop').evaluate((stop: HTMLElement) => {
    stop.style.setProperty('margin-block-start', '4rem');
    stop.style.setProperty('position', 'relative');
    stop.style.setProperty('inset-block-start', '4rem');
  });
  expect((await cutOff(page)).join()).toContain('STOP');
});
