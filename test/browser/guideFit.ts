// What of the observer's screen is cut, covered or out of the window, for fit.spec.ts; and a drill in any language, by the keys alone.
import { expect, type Page } from '@playwright/test';
import { fill } from './guideDrill.ts';

/** Longer than the longest time of a step. */
const LONG = 16 * 60_000;
/** Longer than a bounce. */
const PAUSE = 600;

/**
 * Every control, notice, time, picture and row of the line that cannot be seen whole, and every control lower or narrower than a
 * gloved finger. What lies in a part that scrolls may be further down, never wider, and then the word below it says that there
 * is more. Rows of the line and the answers to another way on are always in sight.
 */
export const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const SPARE = 1;
    const FINGER = 64;
    const WATCHED =
      'button, a, summary, h1, [role=alert], .g-drill, .g-step, .g-saved, .g-people, .g-missing, .g-after, .g-notices li, .g-time, .g-who, .g-answer, .g-row, .g-below, .g-outcome, .g-side .picture-scroll, .g-key li';
    const window_ = new DOMRect(0, 0, innerWidth, innerHeight);
    const within = (box: DOMRect, room: DOMRect): boolean =>
      box.left >= room.left - SPARE &&
      box.right <= room.right + SPARE &&
      box.top >= room.top - SPARE &&
      box.bottom <= room.bottom + SPARE;
    const faults: string[] = [];
    const tell = (what: string, part: Element): void => {
      faults.push(`${what} at ${innerWidth}: ${part.className} ${part.textContent.slice(0, 50)}`);
    };
    const judge = (part: HTMLElement): void => {
      const box = part.getBoundingClientRect();
      if (part.scrollWidth > part.clientWidth + SPARE && getComputedStyle(part).display !== 'inline')
        tell('wider than its place', part);
      if (part.matches('button, a, summary') && Math.min(box.width, box.height) < FINGER - SPARE)
        tell('too small for a finger', part);
      const room = part.closest('.g-middle') ?? undefined;
      const hint = room?.parentElement?.querySelector('.g-below:not([hidden])');
      const frame = room?.getBoundingClientRect() ?? window_;
      if (within(box, frame)) {
        const on = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (part.matches('button, .g-row, .g-time') && !(on && (part.contains(on) || on.contains(part))))
          tell('covered', part);
        return;
      }
      const isBelow =
        room !== undefined && box.left >= frame.left - SPARE && box.right <= frame.right + SPARE;
      if (!isBelow) tell('out of sight', part);
      else if (part.matches('.g-row')) tell('below the edge of its part', part);
      else if (!hint) tell('below the edge, and nothing says so', part);
    };
    const parts = document.querySelectorAll<HTMLElement>(`.g-page :is(${WATCHED})`);
    for (const part of parts) if (part.checkVisibility({ visibilityProperty: true })) judge(part);
    if (document.documentElement.scrollHeight > innerHeight + SPARE) faults.push('the page itself scrolls');
    return faults;
  });

/**
 * Where capitals are lower than 11.6 mm (legibility.capital-angle, at 2 m; 0.7 of the type, legibility.typeface; 96 pixels an inch,
 * legibility.unmeasured-screen), it must be said; where they are not, nothing is.
 */
export const isHighOrSaid = (page: Page): Promise<boolean> =>
  page.locator('.g-line').evaluate((line) => {
    const row = line.querySelector('.g-row') ?? line;
    const high = (Number.parseFloat(getComputedStyle(row).fontSize) * 0.7 * 25.4) / 96;
    // The page works with more figures than the rounded 11.6.
    return high > 11.5 !== (line.querySelector('.g-short') !== null);
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
