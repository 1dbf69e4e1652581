// The pictures on the second displays: the plan's until something is recorded, then what was recorded, exactly as on the observer's
// screen and with the same key; one that is opened late shows it too.
import { type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test';
import { wordsFor } from '../../src/words/index.ts';
import { begin, line, onwardTo, PEDAL } from './guideDrill.ts';

const { key } = wordsFor('en').guide.labels;
const pictureIn = (page: Page): Locator => page.locator(':is(.g-side, .d-picture) .picture');

/** What the picture shows, in words, once it says which of the two states it is of. */
async function shownAs(page: Page, says: string): Promise<string> {
  await expect(page.getByRole('list', { name: key.title })).toContainText(says, { timeout: 20_000 });
  await expect(pictureIn(page)).toBeVisible({ timeout: 20_000 });
  return (await pictureIn(page).getAttribute('aria-label')) ?? '';
}

async function displayOf(page: Page, context: BrowserContext, role: string): Promise<Page> {
  const display = await context.newPage();
  await display.goto(`${new URL(page.url()).pathname}/display/${role}`);
  return display;
}

test('both displays show the picture of what was recorded, as the observer’s screen does', async ({
  page,
  context,
}, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  test.setTimeout(120_000);
  await page.clock.install();
  await begin(page, 'larkmoor-suit-doffing');
  await onwardTo(page, PEDAL, 6);
  const wearer = await displayOf(page, context, 'wearer');
  const planned = await shownAs(page, key.planned);
  expect(await shownAs(wearer, key.planned)).toBe(planned);

  await page.keyboard.press('w');
  await page.getByRole('button', { name: /apron swings against the body/i }).click();
  const recorded = await shownAs(page, key.recorded);
  expect(recorded).not.toBe(planned);
  expect(await shownAs(wearer, key.recorded)).toBe(recorded);
  const assistant = await displayOf(page, context, 'assistant');
  expect(await shownAs(assistant, key.recorded)).toBe(recorded);
  for (const display of [wearer, assistant]) {
    const frame = await pictureIn(display).boundingBox();
    expect(frame?.height).toBeGreaterThan(150);
    expect((frame?.y ?? 0) + (frame?.height ?? 0)).toBeLessThanOrEqual(display.viewportSize()?.height ?? 0);
  }
  await wearer.screenshot({ path: '.cache/screens/display-recorded.png' });

  // No picture of a step stands beside a stop.
  await page.clock.fastForward(600);
  await page.keyboard.press('s');
  await expect(line(page)).toContainText('Nobody moves');
  await expect(wearer.locator('.d-rows')).toContainText('Nobody moves');
  await expect(pictureIn(page)).toHaveCount(0);
  await expect(pictureIn(wearer)).toHaveCount(0);
});
