// The observer's own screen as it is read from two metres: capitals high enough or a plain word from how far they are read;
// the picture of the step beside the line where the screen lies wide.
import { expect, type Page, test, type TestInfo } from '@playwright/test';
import { begin, line, onward, onwardTo, PEDAL } from './guideDrill.ts';

/** 11.6 mm at 2 m (legibility.capital-angle); capitals are 0.7 of the type (legibility.typeface). */
const NEEDED = 11.6;
const CAPITAL = 0.7;

const picture = (info: TestInfo, name: string): string =>
  `.cache/screens/reading-${name}-${info.project.name}.png`;

/** Height of the capitals in millimetres, where a pixel is so many; nothing of the line is cut off. */
async function capitals(page: Page, pixel: number): Promise<number> {
  const [size, over] = await page.locator('.g-line').evaluate((section) => {
    const rows = [...section.querySelectorAll('.g-row')];
    return [
      Number.parseFloat(getComputedStyle(rows[0] ?? section).fontSize),
      Math.max(...rows.map((row) => row.scrollWidth - row.clientWidth)),
    ] as const;
  });
  expect(over).toBeLessThanOrEqual(0);
  return size * CAPITAL * pixel;
}

/** Whether capitals are high enough for two metres; where they are not, the page says how high they are. */
async function saysWhatItIs(page: Page, pixel: number): Promise<boolean> {
  const said = page.locator('.g-short');
  let isHigh = false;
  // What is said takes room itself, and is measured again.
  await expect(async () => {
    const high = await capitals(page, pixel);
    // The page works with more figures than the rounded 11.6.
    isHigh = high > NEEDED - 0.1;
    expect(await said.count()).toBe(isHigh ? 0 : 1);
    if (!isHigh) expect(await said.textContent()).toContain(`${high.toFixed(1)} mm high`);
  }).toPass({ timeout: 5000 });
  return isHigh;
}

test('on every screen the line is high enough for two metres, or says from how far it is read', async ({
  page,
}, info) => {
  test.setTimeout(60_000);
  await page.clock.install();
  await begin(page, 'larkmoor-suit-doffing');
  const usual = 25.4 / 96;
  let high = 0;
  for (let turn = 0; turn < 6; turn += 1) {
    high += Number(await saysWhatItIs(page, usual));
    await onward(page, PEDAL);
  }
  if (info.project.name !== 'phone') expect(high).toBe(6);
  await onwardTo(page, PEDAL, 6);
  await saysWhatItIs(page, usual);
  const side = page.locator('.g-side');
  if (info.project.name === 'phone') await expect(side).toBeHidden();
  else {
    await expect(side.getByRole('img')).toBeVisible({ timeout: 20_000 });
    const [text, beside] = [await page.locator('.g-middle').boundingBox(), await side.boundingBox()];
    expect(beside?.x).toBeGreaterThanOrEqual((text?.x ?? 0) + (text?.width ?? 0) - 1);
    expect(beside?.y).toBe(text?.y);
    const drawn = await side.locator('.picture').boundingBox();
    expect(drawn?.width).toBeLessThanOrEqual(beside?.width ?? 0);
  }
  await page.screenshot({ path: picture(info, 'line') });
  // A small tablet that was measured: what stands there is told as it is.
  await page.evaluate(() =>
    localStorage.setItem(
      'doffline-guide-screen',
      JSON.stringify({ widthMillimetres: 100, distanceMetres: 2 }),
    ),
  );
  await page.reload();
  await expect(line(page)).toBeVisible();
  const small = 100 / (await page.evaluate(() => window.screen.width));
  expect(await saysWhatItIs(page, small)).toBe(false);
  await expect(page.locator('.g-short')).toContainText(/read from [01]\.\d m, not from 2 m/);
  await page.screenshot({ path: picture(info, 'short') });
});
