// What the page of health records says where it cannot go on, and that what it showed is gone then.
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { keys } from './hands.ts';
import {
  alertsOf,
  button,
  DOCTOR,
  doctorIn,
  MARK,
  read,
  signIn,
  unitForEach,
  writeOne,
} from './healthActs.ts';
import { violationsOf } from './page.ts';
import { DIST } from './servers.ts';

// A server is started and a person signs in each time.
test.describe.configure({ timeout: 120_000 });

test.describe('with a key', () => {
  const unit = unitForEach();

  test('says how long to wait after too many wrong passwords', async ({ page }) => {
    const wrong = { method: 'POST', headers: { 'Content-Type': 'application/json' } };
    for (let at = 0; at < 10; at += 1)
      await fetch(`${unit.server().address}/api/session`, {
        ...wrong,
        body: JSON.stringify({ name: DOCTOR, password: 'a guess' }),
      });
    await unit.open(page);
    await signIn(page, keys(page), DOCTOR, 'a guess');
    await expect(alertsOf(page)).toHaveText('Too many tries. Wait 15 minutes, then try again.');
  });

  test('says that the session has ended, and shows nothing any more', async ({ page }) => {
    const hand = keys(page);
    await unit.open(page);
    await doctorIn(page, hand, unit);
    await writeOne(page, hand);
    await read(page, hand);
    await expect(page.getByText(MARK)).toBeVisible();
    await page.context().clearCookies();
    await hand.press(button(page, 'Tell the journal and read'));
    await expect(alertsOf(page)).toHaveText(/^The session has ended\. Sign in again\./);
    await expect(page.getByText(MARK)).toHaveCount(0);
  });

  test('in another tab, signing out takes what is shown from this one', async ({ page, context }) => {
    const hand = keys(page);
    await unit.open(page);
    await doctorIn(page, hand, unit);
    await writeOne(page, hand);
    await read(page, hand);
    await expect(page.getByText(MARK)).toBeVisible();
    const other = await context.newPage();
    await other.goto(`${unit.server().address}/health-records`);
    await other.getByRole('button', { name: 'Sign out' }).click();
    await expect(other.getByRole('button', { name: 'Sign in' })).toBeVisible();
    // The browser under test shows all tabs as seen: the page is told as if it were looked at again.
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await expect(alertsOf(page)).toHaveText(/^The session has ended/);
    await expect(page.getByText(MARK)).toHaveCount(0);
  });

  test('says at an address without https that others can read along', async ({ page }) => {
    await page.route('http://anteroom.invalid/**', async (route) => {
      const { pathname } = new URL(route.request().url());
      await route.fulfill({ path: join(DIST, 'app', pathname.includes('.') ? pathname : 'index.html') });
    });
    await page.goto('http://anteroom.invalid/health-records');
    await expect(page.getByText(/^This address is not https: others on the network can read/)).toBeVisible();
    await expect(alertsOf(page)).toHaveText(/^The server does not answer/);
    expect(await violationsOf(page)).toEqual([]);
  });

  test('needs the server, and says so where it is gone', async ({ page }) => {
    const hand = keys(page);
    await page.goto(`${unit.server().address}/device`);
    await expect(page.getByText('The whole page is kept on this device.')).toBeVisible();
    await hand.press(page.getByRole('contentinfo').getByRole('link', { name: 'Health records' }));
    await doctorIn(page, hand, unit);
    await unit.server().kill();
    await read(page, hand);
    await expect(alertsOf(page)).toHaveText(/^The server does not answer\. This page needs it/);
    await writeOne(page, hand);
    await expect(
      page.getByText(/^The server did not answer\. Whether it kept the record is not known/),
    ).toBeVisible();
    await hand.press(button(page, 'Sign out'));
    await expect(alertsOf(page)).toHaveText(/the session may still be open there/);
    await page.reload();
    await expect(alertsOf(page)).toHaveText(/^The server does not answer\. This page needs it/);
    await unit.server().start();
    await hand.press(button(page, 'Ask again'));
    await expect(page.getByText(`Signed in as ${DOCTOR}`)).toBeVisible();
  });

  test('signs out where nobody uses it, and warns before', async ({ page }) => {
    const hand = keys(page);
    await page.clock.install();
    await unit.open(page);
    await doctorIn(page, hand, unit);
    await writeOne(page, hand);
    await read(page, hand);
    await expect(page.getByText(MARK)).toBeVisible();
    await page.clock.fastForward('09:10');
    await expect(alertsOf(page)).toHaveText(/^Nobody has used this page for a while/);
    await expect(page.getByText(MARK)).toBeVisible();
    await page.keyboard.press('Shift');
    await expect(alertsOf(page)).toHaveCount(0);
    await page.clock.fastForward('10:10');
    await expect(alertsOf(page)).toHaveText(/^Nobody used this page for ten minutes/);
    await expect(page.getByText(MARK)).toHaveCount(0);
    await page.reload();
    await expect(button(page, 'Sign in')).toBeVisible();
  });
});

test.describe('without a key', () => {
  const unit = unitForEach({ KEYLESS: 'yes' });

  test('says that the server has no key, where it has none', async ({ page }) => {
    const hand = keys(page);
    await unit.open(page);
    await doctorIn(page, hand, unit);
    await read(page, hand);
    await expect(alertsOf(page)).toHaveText(/^The server has no key for health records/);
  });
});
