// What of the observer's screen is cut, covered or out of the window, for fit.spec.ts; and a drill in any language, by the keys alone.
import { expect, type Page } from '@playwright/test';
import { fill } from './guideDrill.ts';

/** Longer than the longest time of a step. */
const LONG = 16 * 60_000;
/** Longer than a bounce. */
const PAUSE = 600;

/**
 * Every control, notice, time and row of the line that cannot be seen whole. What lies in the part that scrolls may be further
 * down, never wider, and then the word below it says that there is more. Rows of the line are always in sight, but where another
 * way on, which must be answered first, stands over them.
 */
export const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const SPARE = 1;
    const WATCHED =
      'button, a, h1, [role=alert], .g-drill, .g-step, .g-saved, .g-people, .g-missing, .g-notices li, .g-time, .g-who, .g-answer, .g-row, .g-below, .g-outcome';
    const window_ = new DOMRect(0, 0, innerWidth, innerHeight);
    const within = (box: DOMRect, room: DOMRect): boolean =>
      box.left >= room.left - SPARE &&
      box.right <= room.right + SPARE &&
      box.top >= room.top - SPARE &&
      box.bottom <= room.bottom + SPARE;
    const middle = document.querySelector('.g-middle');
    const hint = document.querySelector('.g-below:not([hidden])');
    const faults: string[] = [];
    const tell = (what: string, part: Element): void => {
      faults.push(`${what} at ${innerWidth}: ${part.className} ${part.textContent.slice(0, 50)}`);
    };
    const judge = (part: HTMLElement): void => {
      const box = part.getBoundingClientRect();
      if (part.scrollWidth > part.clientWidth + SPARE && getComputedStyle(part).display !== 'inline')
        tell('wider than its place', part);
      const room = middle?.contains(part) ? middle : undefined;
      const frame = room?.getBoundingClientRect() ?? window_;
      if (within(box, frame)) {
        const on = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (part.matches('button, .g-row') && !(on && (part.contains(on) || on.contains(part))))
          tell('covered', part);
        return;
      }
      const isBelow =
        room !== undefined && box.left >= frame.left - SPARE && box.right <= frame.right + SPARE;
      if (!isBelow) tell('out of sight', part);
      else if (part.matches('.g-row') && !part.matches('.g-offer ~ * *'))
        tell('a row of the line below the edge', part);
      else if (!hint) tell('below the edge, and nothing says so', part);
    };
    const parts = document.querySelectorAll<HTMLElement>(`.g-page :is(${WATCHED})`);
    for (const part of parts) if (part.checkVisibility({ visibilityProperty: true })) judge(part);
    if (document.documentElement.scrollHeight > innerHeight + SPARE) faults.push('the page itself scrolls');
    return faults;
  });

/** At each of these sizes nothing is cut. */
export async function fitsAt(page: Page, sizes: readonly (readonly [number, number])[]): Promise<void> {
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    await expect.poll(async () => cutOff(page), { intervals: [20, 50, 100, 200] }).toEqual([]);
  }
}

/** Begins a drill in which everybody is read to in one language. */
export async function beginIn(page: Page, procedure: string, language: string): Promise<void> {
  await fill(page, procedure);
  const chosen = page.getByRole('main').getByLabel(/^Language of/);
  for (const one of await chosen.all()) await one.selectOption(language);
  await page.getByRole('button', { name: 'Begin the drill' }).click();
  await expect(page.locator('.g-line')).toBeVisible();
}

/** One line on by the keys, whatever the language; a time that runs is let pass. False at the end. */
export async function onByKeys(page: Page): Promise<boolean> {
  const look = async (): Promise<{ said: string; ended: boolean; next: boolean; running: boolean }> =>
    page.locator('.g-observer').evaluate((screen) => {
      const has = (part: string): boolean => screen.querySelector(part) !== null;
      return {
        said: screen.textContent,
        ended: has('.g-outcome'),
        next: has('.g-presses-next button'),
        running: has('.g-time:not(.kind-wear)'),
      };
    });
  const { said, ended, next, running } = await look();
  if (ended) return false;
  if (!next && running) await page.clock.fastForward(LONG);
  else await page.keyboard.press(next ? 'PageDown' : 'n');
  await expect.poll(async () => (await look()).said, { intervals: [20, 50, 100] }).not.toBe(said);
  await expect(page.locator('.g-saved')).not.toHaveAttribute('data-saving', 'yes');
  await page.clock.fastForward(PAUSE);
  return true;
}
