// The live guide as it is used: a whole drill by touch alone and by pedal and keys alone, with a slip, another way on, a stop, an
// emergency and a reload in the middle; a page that is killed again and again; a store that fails; second displays.
// Screenshots by day and night are left in .cache/screens to be looked at.
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import {
  answeredIn,
  begin,
  button,
  entriesOf,
  fill,
  hasContrast,
  keepsToTheRules,
  line,
  next,
  onward,
  onwardTo,
  PEDAL,
  pause,
  shown,
  TOUCH,
} from './guideDrill.ts';
import { complaintsOf } from './page.ts';

const SUIT = 'larkmoor-suit-doffing';

const picture = (info: TestInfo, name: string): string =>
  `.cache/screens/guide-${name}-${info.project.name}.png`;

test.beforeEach(async ({ page }) => {
  await page.clock.install();
});

async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let press = 0; press < 80; press += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${String(target)} was not reached`);
}

/** The record at the end says what was, and nothing more. */
async function recordHolds(page: Page, exit: string): Promise<void> {
  await expect(page.locator('.g-outcome')).toContainText('Deviations recorded');
  const rows = await entriesOf(page, exit);
  expect(rows[0]?.kind).toBe('exit.started');
  expect(rows.filter(({ kind }) => kind === 'exit.ended')).toHaveLength(1);
  const lines = answeredIn(rows);
  expect(new Set(lines).size).toBe(lines.length);
  expect(rows.map(({ kind }) => kind)).toEqual(
    expect.arrayContaining([
      'exit.slip-recorded',
      'exit.continuation-offered',
      'exit.continuation-answered',
      'exit.stopped',
      'exit.resumed',
      'emergency.opened',
    ]),
  );
  await page.goto(`/guide/${exit}/record`);
  const record = page.getByRole('main');
  await expect(record).toContainText('Deviations recorded');
  await expect(record).toContainText('the apron swings against the body');
  expect(await record.textContent()).not.toMatch(/\b(is|are|was|were) (clean|safe)\b/i);
}

test('by touch alone: a whole drill of the suit', async ({ page, hasTouch }, info) => {
  test.skip(info.project.name !== 'tablet' || !hasTouch, 'once, on the tablet');
  test.setTimeout(120_000);
  const complaints = complaintsOf(page);
  const exit = await begin(page, SUIT);
  await expect(page.getByText('DRILL', { exact: true })).toBeVisible();
  await onwardTo(page, TOUCH, 6);

  // Two taps: something went wrong, and what.
  await button(page, 'Something went wrong').tap();
  await page.getByRole('button', { name: /apron swings against the body/i }).tap();
  await expect(page.getByRole('region', { name: 'What may be contaminated' })).toBeVisible();
  const offer = page.getByRole('region', { name: 'Another way on' });
  await expect(offer).toBeVisible({ timeout: 20_000 });
  await pause(page);
  await offer.getByRole('button', { name: 'Take this way' }).tap();
  await expect(offer).toBeHidden();
  await pause(page);

  await button(page, 'STOP').tap();
  await expect(line(page)).toContainText('Nobody moves');
  await pause(page);
  await button(page, 'Go on').tap();
  await expect(line(page)).toContainText('Last confirmed');
  await pause(page);
  await onwardTo(page, TOUCH, 9);

  await button(page, 'Emergency').tap();
  await button(page, 'Needle or cut').tap();
  await expect(page.getByRole('region', { name: 'Needle or cut' })).toContainText('emergency.wash-wound');
  await pause(page);
  await button(page, 'Back to the exit').tap();
  await expect(line(page)).not.toContainText('Emergency');
  await expect(page.getByRole('button', { name: 'Go on unsaved' })).toBeHidden();
  await pause(page);

  const before = await shown(page);
  await page.reload();
  await expect(line(page)).toBeVisible();
  expect(await shown(page)).toBe(before);
  while ((await page.locator('.g-outcome').count()) === 0) await onward(page, TOUCH);
  await recordHolds(page, exit);
  expect(complaints).toEqual([]);
});

test('by pedal and keys alone: a whole drill of the suit', async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  test.setTimeout(300_000);
  await page.goto(`/guide?procedure=${SUIT}`);
  for (const [name, typed] of [
    ['Wearer', 'ab'],
    ['Observer', 'cd'],
    ['Assistant', 'ef'],
    ['Room', 'Red 1'],
  ] as const) {
    await tabTo(page, page.getByRole('textbox', { name }));
    await page.keyboard.type(typed);
  }
  await page.keyboard.press('Enter');
  await expect(line(page)).toBeVisible();
  const exit = new URL(page.url()).pathname.split('/').at(-1) ?? '';
  await onwardTo(page, PEDAL, 6);

  // The line before, to read only.
  const here = await shown(page);
  await page.keyboard.press('PageUp');
  await expect(page.getByRole('region', { name: 'The line before' })).toBeVisible();
  await page.keyboard.press('PageDown');
  expect(await shown(page)).toBe(here);

  await page.keyboard.press('w');
  await tabTo(page, page.getByRole('button', { name: /apron swings against the body/i }));
  await page.keyboard.press('Enter');
  const accept = button(page, 'Take this way');
  await expect(accept).toBeVisible({ timeout: 20_000 });
  await pause(page);
  await tabTo(page, accept);
  await page.keyboard.press('Enter');
  await expect(accept).toBeHidden();
  await pause(page);

  // The pedal does not go on out of a stop.
  await page.keyboard.press('Escape');
  await expect(line(page)).toContainText('Nobody moves');
  // A stop moves the screen first and is stored then.
  await expect(page.getByRole('button', { name: 'Go on unsaved' })).toBeHidden();
  const stopped = await shown(page);
  await pause(page);
  await page.keyboard.press('PageDown');
  await pause(page);
  expect(await shown(page)).toBe(stopped);
  await page.keyboard.press('r');
  await expect(line(page)).toContainText('Last confirmed');
  await pause(page);
  await onwardTo(page, PEDAL, 8);
  await page.keyboard.press('e');
  await tabTo(page, button(page, 'Fire'));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Fire' })).toBeVisible();
  await pause(page);
  await page.keyboard.press('r');
  await expect(line(page)).toContainText('Last confirmed');
  await pause(page);
  await page.reload();
  await expect(line(page)).toContainText('Last confirmed');
  while ((await page.locator('.g-outcome').count()) === 0) await onward(page, PEDAL);
  await recordHolds(page, exit);
});

test('killed again and again within thirty confirmed steps: nothing lost, nothing twice, the same line', async ({
  page: first,
  context,
}, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  test.setTimeout(180_000);
  const exit = await begin(first, SUIT);
  let page = first;
  let presses = 0;
  let deaths = 0;
  const confirmed = async (): Promise<number> => answeredIn(await entriesOf(page, exit)).length;
  for (let count = 0; count < 30; count = await confirmed()) {
    for (let turn = 0; turn < 17; turn += 1) {
      await onward(page, PEDAL);
      presses += 1;
      if ((await page.locator('.g-outcome').count()) > 0) break;
    }
    if ((await page.locator('.g-outcome').count()) > 0) break;
    const before = await entriesOf(page, exit);
    const stood = await shown(page);
    // Every other time in the middle of a press, which then is either kept whole or not at all.
    const inPress = deaths % 2 === 1;
    if (inPress) await page.keyboard.press('PageDown');
    if (deaths % 3 === 2) {
      const crash = await context.newCDPSession(page);
      const crashed = page.waitForEvent('crash');
      crash.send('Page.crash').catch(() => undefined);
      await crashed;
    }
    await page.close();
    deaths += 1;
    page = await context.newPage();
    await page.clock.install();
    await page.goto('/');
    await page
      .getByRole('region', { name: 'Open exits' })
      .getByRole('link', { name: 'Go on where it stands' })
      .click();
    await expect(line(page)).toBeVisible();
    const after = await entriesOf(page, exit);
    expect(after.slice(0, before.length)).toEqual(before);
    if (inPress) continue;
    expect(after).toEqual(before);
    expect(await shown(page)).toBe(stood);
  }
  const lines = answeredIn(await entriesOf(page, exit));
  expect(lines.length).toBeGreaterThanOrEqual(30);
  expect(new Set(lines).size).toBe(lines.length);
  expect(deaths).toBeGreaterThan(3);
  expect(presses).toBeGreaterThan(60);
});

test('a second tap that comes too soon does nothing', async ({ page }, info) => {
  test.skip(info.project.name === 'phone', 'the same as on the tablet');
  const exit = await begin(page, SUIT);
  await onward(page, PEDAL);
  await next(page).dblclick();
  await expect.poll(async () => answeredIn(await entriesOf(page, exit))).toEqual([1]);
  await pause(page);
  const rows = await entriesOf(page, exit);
  expect(rows.filter(({ kind }) => kind === 'exit.line-shown')).toHaveLength(3);
});

test('a device that is full or may not be written to is said and the line stays; it goes on when there is room, or unsaved when somebody says so', async ({
  page,
}, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  await page.addInitScript(() => {
    const { prototype } = IDBObjectStore;
    Object.defineProperty(prototype, 'add', {
      value: new Proxy(Reflect.get(prototype, 'add') as () => IDBRequest, {
        apply: (add, store, given) => {
          const broken = sessionStorage.getItem('broken');
          if (broken !== null) throw new DOMException('no room', broken);
          return Reflect.apply(add, store, given) as IDBRequest;
        },
      }),
    });
  });
  const exit = await begin(page, SUIT);
  await onward(page, PEDAL);
  const kept = await entriesOf(page, exit);
  const stood = page.locator('.g-rows').first();
  const text = await stood.textContent();
  await page.evaluate(() => sessionStorage.setItem('broken', 'QuotaExceededError'));
  await page.keyboard.press('PageDown');
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('Not saved: the line stays.');
  await expect(alert).toContainText('There is no room left');
  expect(await stood.textContent()).toBe(text);
  await keepsToTheRules(page);
  // The pedal does nothing now, and nothing was written by half.
  await pause(page);
  await page.keyboard.press('PageDown');
  expect(await stood.textContent()).toBe(text);
  expect(await entriesOf(page, exit)).toEqual(kept);
  // Room was made: it goes on by itself.
  await page.evaluate(() => sessionStorage.removeItem('broken'));
  await page.clock.fastForward(6000);
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  await expect(alert).toHaveCount(0);
  expect(answeredIn(await entriesOf(page, exit))).toEqual([1]);
  // Then it may not be written to at all: whoever must go on does, once said, and all is saved later.
  await page.evaluate(() => sessionStorage.setItem('broken', 'ReadOnlyError'));
  await page.keyboard.press('PageDown');
  await expect(alert).toContainText('The journal may not be written to');
  await pause(page);
  await button(page, 'Go on unsaved').click();
  await expect(alert).toHaveCount(0);
  await pause(page);
  await onward(page, PEDAL);
  await expect(page.getByText(/entries not saved/)).toBeVisible();
  await page.evaluate(() => sessionStorage.removeItem('broken'));
  await button(page, 'Save again').click();
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  const lines = (await entriesOf(page, exit)).filter(({ kind }) => kind === 'exit.line-shown');
  expect(lines.map(({ body }) => body.line)).toEqual(lines.map((_, at) => at));
});

test('nothing begins on a device that cannot keep what it begins with', async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  await page.addInitScript(() => {
    Object.defineProperty(IDBObjectStore.prototype, 'put', {
      value: () => {
        throw new DOMException('no room', 'QuotaExceededError');
      },
    });
  });
  await fill(page, SUIT);
  await button(page, 'Begin the drill').click();
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(line(page)).toHaveCount(0);
});

for (const way of ['a channel', 'the store'] as const)
  test(`the wearer’s display shows the line high enough and stops the exit, over ${way}`, async ({
    page,
    context,
  }, info) => {
    test.skip(info.project.name !== 'desk', 'once, on the desk');
    if (way === 'the store')
      await context.addInitScript(() => {
        Reflect.deleteProperty(globalThis, 'BroadcastChannel');
      });
    await begin(page, SUIT);
    await onwardTo(page, PEDAL, 2);
    const display = await context.newPage();
    await display.goto(`${page.url()}/display/wearer`);
    const text = display.locator('.d-rows');
    await expect(text).toContainText('Look over all equipment');
    await expect(display.getByText('DRILL')).toBeVisible();
    await expect(display.getByRole('img')).toBeVisible({ timeout: 20_000 });
    const [size, width] = await text.evaluate((rows) => [
      Number.parseFloat(getComputedStyle(rows).fontSize),
      document.documentElement.clientWidth,
    ]);
    // Capitals are 0.7 of the type (legibility.typeface); a 531 mm wide picture read from 2 m needs 11.6 mm.
    expect((0.7 * (size ?? 0) * 531) / (width ?? 1)).toBeGreaterThanOrEqual(11.6);
    await keepsToTheRules(display);
    await display.screenshot({ path: picture(info, 'display') });
    await button(display, 'STOP').click();
    await expect(line(page)).toContainText('Nobody moves');
    await expect(text).toContainText('Nobody moves');
    await keepsToTheRules(display);
    await display.screenshot({ path: picture(info, 'display-stop') });
  });

test('hands over only to somebody who knows the last confirmed line', async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  await begin(page, SUIT);
  await onwardTo(page, PEDAL, 4);
  await button(page, 'More').click();
  await button(page, 'Hand over').click();
  await pause(page);
  // Whoever has a part in this exit already is not offered, and not taken by initials.
  await expect(button(page, 'assistant (EF)')).toHaveCount(0);
  const initials = page.getByLabel('Somebody else: initials');
  await initials.fill('ef');
  await button(page, 'Ask them').click();
  await expect(page.getByRole('alert')).toContainText('EF has a part in this exit already');
  await pause(page);
  await initials.fill('gh');
  await button(page, 'Ask them').click();
  await expect(page.getByRole('heading', { name: /\(GH\): which line/ })).toBeVisible();
  await pause(page);
  await page.getByRole('button', { name: /^2: Look over all equipment/ }).click();
  await expect(page.getByRole('alert')).toContainText('Not the line confirmed last');
  await pause(page);
});

test('two rooms go on beside one another', async ({ page, context }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  const one = await begin(page, SUIT, 'Red 1');
  const other = await context.newPage();
  await other.clock.install();
  const two = await begin(other, SUIT, 'Red 2');
  await Promise.all([onwardTo(page, PEDAL, 2), onwardTo(other, PEDAL, 3)]);
  expect(await shown(page)).toContain('Step 2');
  expect(answeredIn(await entriesOf(page, one))).toHaveLength(1);
  expect(answeredIn(await entriesOf(page, two))).toHaveLength(2);
});

test('a donning asks for a reason where nobody looked, keeps the time and logs in and out', async ({
  page,
}, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  const exit = await begin(page, 'everyday-donning');
  const bare = page.getByRole('region', { name: 'What the check says of coverage' });
  while ((await bare.count()) === 0) await onward(page, PEDAL);
  await page.keyboard.press('o');
  await page.getByLabel('Reason (no names)').fill('Everyday isolation only.');
  await pause(page);
  await button(page, 'Record it and go in').click();
  await expect(line(page)).toContainText('In the room');
  await pause(page);
  await page.keyboard.press('PageDown');
  await expect(page.locator('.g-outcome')).toBeVisible();
  const kinds = (await entriesOf(page, exit)).map(({ kind }) => kind);
  expect(kinds).toEqual(expect.arrayContaining(['exit.not-seen', 'room.entered', 'room.left', 'exit.ended']));
});

test('no exit for real without an approved version', async ({ page }, info) => {
  test.skip(info.project.name !== 'desk', 'once, on the desk');
  await fill(page, SUIT);
  await page.getByText('Exit: for real, with an approved version').click();
  await expect(page.getByRole('alert')).toContainText('No version is approved');
  await expect(button(page, 'Begin the exit')).toBeDisabled();
});

test('keeps to the rules by day and by night, on every screen of it', async ({ page }, info) => {
  test.setTimeout(120_000);
  await fill(page, SUIT);
  await keepsToTheRules(page);
  await page.screenshot({ path: picture(info, 'start'), fullPage: true });
  await begin(page, SUIT);
  await onwardTo(page, PEDAL, 3);
  const screens: readonly (readonly [string, () => Promise<void>])[] = [
    ['line', async () => Promise.resolve()],
    ['wrong', async () => page.keyboard.press('w')],
    [
      'slip',
      async () => {
        await page.locator('.g-panel .g-act.wrong').first().click();
        await expect(page.getByRole('region', { name: 'Another way on' })).toBeVisible({ timeout: 20_000 });
      },
    ],
    ['emergencies', async () => page.keyboard.press('e')],
    ['card', async () => button(page, 'Splash or touch: eye, nose or mouth').click()],
    ['time', async () => button(page, 'Start the time').click()],
    ['stop', async () => button(page, 'STOP').click()],
  ];
  for (const [name, open] of screens) {
    await pause(page);
    await open();
    await pause(page);
    await keepsToTheRules(page);
    await page.screenshot({ path: picture(info, name) });
    await button(page, 'Night').click();
    if (info.project.name === 'desk') await hasContrast(page);
    await page.screenshot({ path: picture(info, `${name}-night`) });
    await button(page, 'Night').click();
    await pause(page);
  }
});
