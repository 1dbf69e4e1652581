// Going on unsaved is offered where storing has failed or takes long, and never while an entry is merely on its way to the store.
// The store is held up as a busy device holds it up: by another transaction on the same tables that has not ended.
import { expect, type Page, test } from '@playwright/test';
import { begin, button, line, onward, PEDAL } from './guideDrill.ts';

const SUIT = 'larkmoor-suit-doffing';
const OFFERED = 'Go on unsaved';

/** Nothing is stored from now on, until it is let go. */
const hold = async (page: Page): Promise<void> =>
  page.evaluate(
    async () =>
      new Promise<void>((begun) => {
        const opening = indexedDB.open('doffline-journal');
        opening.addEventListener('success', () => {
          const table = opening.result.transaction('entries', 'readwrite').objectStore('entries');
          const on = (): void => {
            begun();
            if (sessionStorage.getItem('let-go') === null) table.count().addEventListener('success', on);
            else opening.result.close();
          };
          sessionStorage.removeItem('let-go');
          on();
        });
      }),
  );
const letGo = async (page: Page): Promise<void> =>
  page.evaluate(() => sessionStorage.setItem('let-go', 'yes'));

/** Whether the offer was ever there, however short, from now on. */
async function watch(page: Page): Promise<() => Promise<boolean>> {
  await page.evaluate((name) => {
    const look = (): void => {
      const offered = [...document.querySelectorAll('button')].some((one) => one.textContent === name);
      if (offered) document.documentElement.dataset.offered = 'yes';
    };
    new MutationObserver(look).observe(document.body, { childList: true, subtree: true });
  }, OFFERED);
  return async () => page.evaluate(() => document.documentElement.dataset.offered === 'yes');
}

/** The page's time stands from now on, but for what a test lets pass. */
async function standStill(page: Page): Promise<void> {
  const now = await page.evaluate(() => Date.now());
  await page.clock.pauseAt(now + 10_000);
}

test.beforeEach(async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  await page.clock.install();
  await begin(page, SUIT);
  await onward(page, PEDAL);
  await standStill(page);
});

for (const [what, key, says] of [
  ['a stop', 's', 'Nobody moves'],
  ['an answer', 'PageDown', ''],
] as const)
  test(`${what} on its way to the store does not offer to go on unsaved, one that takes long does`, async ({
    page,
  }) => {
    const wasOffered = await watch(page);
    const saved = page.locator('.g-saved');
    await hold(page);
    await page.keyboard.press(key);
    await expect(saved).toContainText('Saving');
    await expect(line(page)).toContainText(says);
    await page.clock.runFor(1900);
    expect(await wasOffered()).toBe(false);
    await page.clock.runFor(200);
    await expect(button(page, OFFERED)).toBeVisible();
    await letGo(page);
    await expect(saved).toContainText('Saved');
    await expect(button(page, OFFERED)).toHaveCount(0);
  });

test('what is stored as it should be never shows the offer, by any press', async ({ page }) => {
  const wasOffered = await watch(page);
  for (const key of ['PageDown', 's', 'r', 'PageDown']) {
    await page.keyboard.press(key);
    await expect(page.locator('.g-saved')).toContainText('Saved');
    await page.clock.runFor(600);
  }
  expect(await wasOffered()).toBe(false);
});
