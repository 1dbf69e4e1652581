// What every browser test asks of a page: what it complains of, what the accessibility rules find, whether it is wider than the
// screen; and how a keyboard gets to a thing.
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';

/** Console warnings and errors and uncaught errors, from now on. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return complaints;
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * What the accessibility rules find: all of them, or only those named. Colours are the same on every screen: they are looked at
 * on the desk, which takes longest, and of small screens all the rest.
 */
export async function violationsOf(page: Page, rules?: string[]): Promise<readonly string[]> {
  const isSmall = (page.viewportSize()?.width ?? 0) < 1280;
  // What passes is not asked for: to describe it takes most of the time on a large page.
  const builder = new AxeBuilder({ page }).options({
    resultTypes: ['violations'],
    ...(isSmall && !rules ? { rules: { 'color-contrast': { enabled: false } } } : {}),
  });
  const { violations } = await (rules ? builder.withRules(rules) : builder.withTags(TAGS)).analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' ')}`,
  );
}

/** By how many pixels the page is wider than the screen. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Whatever is pressed and is lower or narrower than a finger; a link within a sentence may be as low as the sentence. */
export const tooSmall = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'body :is(button, select, summary, .pill, input, textarea, .button, nav a)',
      ),
    ]
      .filter((target) => target.matches('.pill') || !target.closest('.pill'))
      .map((target) => ({ box: target.getBoundingClientRect(), text: target.textContent?.slice(0, 40) }))
      .filter(({ box }) => box.height > 1 && Math.min(box.height, box.width) < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.width)} by ${Math.round(box.height)}`),
  );

/**
 * What it says of the element, asked again and again while keys are pressed: a look for a role in a large page is slow, so
 * the element is looked for anew only when it is no longer there.
 */
export function askedOf<T>(target: Locator, about: (element: Element) => T): () => Promise<T> {
  let handle = target.elementHandle();
  return async () => {
    if (!(await (await handle)?.evaluate((element) => element.isConnected))) handle = target.elementHandle();
    const found = await handle;
    if (!found) throw new Error(`${String(target)} is not there`);
    return (await found.evaluate(about)) as T;
  };
}

/** Tab until it has the focus. */
export async function tabTo(page: Page, target: Locator, key = 'Tab'): Promise<void> {
  await expect(target).toBeVisible();
  const hasFocus = askedOf(target, (element) => element === document.activeElement);
  for (let press = 0; press < 120; press += 1) {
    if (await hasFocus()) return;
    await page.keyboard.press(key);
  }
  throw new Error(`${String(target)} was not reached by ${key}`);
}

export async function pressByKey(page: Page, target: Locator, key?: string): Promise<void> {
  await tabTo(page, target, key);
  await page.keyboard.press('Enter');
}
