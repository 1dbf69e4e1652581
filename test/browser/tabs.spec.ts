// One exit opened in two tabs of one browser: the second says that the first runs it, offers to take over, and then the first
// records nothing more; with the browser's locks, and without them as at an address without https.
import { expect, type Page, test } from '@playwright/test';
import { answeredIn, begin, button, entriesOf, line, onward, onwardTo, PEDAL } from './guideDrill.ts';

const HERE = 'Another tab or window of this browser runs this exit.';
const alert = (page: Page) => page.getByRole('alert').filter({ hasText: HERE });

for (const way of ['locks', 'messages'] as const)
  test(`the same exit in two tabs is run by one of them, told by ${way}`, async ({ page, context }) => {
    if (way === 'messages')
      await context.addInitScript(() => {
        Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
      });
    await page.clock.install();
    const exit = await begin(page, 'larkmoor-suit-doffing');
    await onwardTo(page, PEDAL, 2);
    const other = await context.newPage();
    await other.clock.install();
    await other.goto(`/guide/${exit}`);
    await expect(alert(other)).toBeVisible();
    await expect(line(other)).toHaveCount(0);
    // The one that runs it goes on as before.
    await onward(page, PEDAL);
    const before = await entriesOf(page, exit);
    await button(other, 'Take over here').click();
    await expect(line(other)).toBeVisible();
    await expect(alert(page)).toBeVisible();
    await page.keyboard.press('PageDown');
    await onward(other, PEDAL);
    await onward(other, PEDAL);
    const rows = await entriesOf(other, exit);
    expect(rows.slice(0, before.length)).toEqual(before);
    expect(rows.length).toBeGreaterThan(before.length);
    expect(new Set(answeredIn(rows)).size).toBe(answeredIn(rows).length);
    const shownLines = rows.filter(({ kind }) => kind === 'exit.line-shown').map(({ body }) => body.line);
    expect(shownLines).toEqual(shownLines.map((_, index) => index));
    // A tab that closes lets it go.
    if (way === 'messages') return;
    await other.close();
    await page.clock.fastForward(4000);
    await expect(line(page)).toBeVisible();
  });
