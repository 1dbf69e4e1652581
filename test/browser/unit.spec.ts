// The unit's page against its real server: from the address in the terminal to a tablet that is paired, listed and taken out;
// and the invented unit by one press.
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { finger, keys } from './hands.ts';
import { alertsOf, button, part, signIn } from './healthActs.ts';
import { sideways, tooSmall, violationsOf } from './page.ts';
import { type UnitServer, unitProgram, unitServerOf } from './servers.ts';

test.describe.configure({ timeout: 180_000 });

const LEAD = { name: 'Ada Invented', password: 'correct horse battery' };
const OWN = 'violet kettle seventeen';

let program: string;
let server: UnitServer;
test.beforeAll(async () => {
  program = await unitProgram();
});
test.afterAll(() => rmSync(dirname(program), { recursive: true, force: true }));
test.beforeEach(async () => {
  server = await unitServerOf(program);
});
test.afterEach(() => server.remove());

/** On the desk, and as narrow as a phone. */
async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  const size = page.viewportSize() ?? { width: 1280, height: 800 };
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await sideways(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
  await page.setViewportSize(size);
}

test('from the address in the terminal to a tablet that is paired and taken out', async ({
  page,
  browser,
}) => {
  const hand = keys(page);
  await page.goto(`${server.address}/unit#setup=TEST-CODE`);
  await expect(page.getByLabel('Code that the server showed')).toHaveValue('TEST-CODE');
  expect(page.url()).toBe(`${server.address}/unit`);
  await button(page, 'Create the unit').click();
  await expect(page.getByLabel('Name of the unit')).toBeFocused();
  await expect(page.getByText('Type the unit’s name.')).toBeVisible();
  await keepsToTheRules(page);
  await page.getByLabel('Name of the unit').fill('Larkmoor (invented)');
  await expect(page.getByLabel('Short name')).toHaveValue('larkmoor-invented');
  await page.getByLabel('Your name').fill(LEAD.name);
  await page.getByLabel('Your password', { exact: true }).fill(LEAD.password);
  await page.getByLabel('Your password once more').fill(LEAD.password);
  await button(page, 'Create the unit').click();
  await expect(page.getByText(`Signed in as ${LEAD.name}, lead, at Larkmoor (invented).`)).toBeVisible();

  const accounts = part(page, 'Accounts');
  await accounts.locator('summary').filter({ hasText: LEAD.name }).click();
  await expect(accounts.getByText(/^You are the unit’s only lead/)).toBeVisible();
  await accounts.getByLabel('Name', { exact: true }).fill('Bo Invented');
  await accounts.getByLabel('Role').last().selectOption({ label: 'stores' });
  await button(page, 'Create the account').click();
  const first = (await accounts.locator('.once-password').textContent()) ?? '';
  expect(first).toMatch(/^(\w{4}-){3}\w{4}$/);

  // By finger, on a tablet of its own.
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 1024, height: 768 } });
  const tablet = await context.newPage();
  const touch = finger(tablet);
  await tablet.goto(`${server.address}/unit`);
  await signIn(tablet, touch, 'Bo Invented', first);
  await expect(tablet.getByRole('heading', { name: 'What your role may do' })).toHaveCount(0);
  await touch.type(tablet.getByLabel('Password that you were given'), first);
  await touch.type(tablet.getByLabel('Your own password', { exact: true }), OWN);
  await touch.press(button(tablet, 'Change the password'));
  await expect(part(tablet, 'What your role may do').getByRole('listitem')).toHaveText([
    'read the unit’s entries',
    'have papers set',
  ]);
  await expect(button(tablet, 'Show a code')).toHaveCount(0);
  expect(await violationsOf(tablet)).toEqual([]);

  const pair = part(page, 'Pair a tablet');
  await hand.type(pair.getByLabel('What it is called'), 'Tablet in the anteroom');
  await hand.press(button(page, 'Show a code'));
  await expect(pair.getByRole('img')).toBeVisible();
  await expect(pair.getByRole('timer')).toHaveText(/^Good for another (10:00|9:5\d) minutes/);
  await keepsToTheRules(page);
  const address = new URL((await pair.locator('code').textContent()) ?? '');
  // The picture names the server's own address; the page before it has another here.
  await tablet.goto(`${server.address}${address.pathname}${address.hash}`);
  await touch.press(button(tablet, 'Join'));
  await expect(tablet.getByText('All sent.')).toBeVisible();
  await expect(pair.getByText('Tablet in the anteroom has joined the unit.')).toBeVisible();
  const devices = part(page, 'Devices');
  await hand.press(devices.getByRole('button', { name: 'Take out Tablet in the anteroom …' }));
  const dialog = page.getByRole('alertdialog');
  await hand.press(dialog.getByRole('button', { name: 'Take it out' }));
  await expect(dialog.getByRole('alert')).toHaveText(/^Not taken out: type a reason/);
  await hand.type(dialog.getByLabel('Reason'), 'Screen broken.');
  await hand.press(dialog.getByRole('button', { name: 'Take it out' }));
  await expect(devices.getByText('Taken out (1)')).toBeVisible();
  await tablet.reload();
  await expect(tablet.getByText(/^The lead has taken this device out of the unit/).first()).toBeVisible();
  await context.close();

  await server.kill();
  await accounts.getByLabel('Name', { exact: true }).fill('Cleo Invented');
  await button(page, 'Create the account').click();
  await expect(alertsOf(page)).toHaveText(/^The server did not answer, so it is not known/);
  await expect(accounts.getByLabel('Name', { exact: true })).toHaveValue('Cleo Invented');
});

test('the invented unit is made by one press, and a code that nobody used ends', async ({ page }) => {
  await page.clock.install();
  await page.goto(`${server.address}/unit#setup=WRONG`);
  await button(page, 'Make the invented unit').click();
  await expect(page.getByText(/^The code is not the one that the server showed/)).toBeVisible();
  await page.getByLabel('Code that the server showed').fill('test code');
  await button(page, 'Make the invented unit').click();
  await expect(page.getByRole('row')).toHaveCount(6);
  await keepsToTheRules(page);
  await button(page, 'Go on as the lead').click();
  await expect(page.getByText('at Larkmoor General Hospital (invented).')).toBeVisible();
  await page.getByLabel('What it is called').fill('Tablet in the anteroom');
  await button(page, 'Show a code').click();
  await expect(page.getByRole('timer')).toBeVisible();
  await page.clock.fastForward('05:00');
  await page.keyboard.press('Shift');
  await page.clock.fastForward('05:10');
  await expect(page.getByText('This code has ended and is worth nothing any more.')).toBeVisible();
  await expect(page.getByRole('img')).toHaveCount(0);
  await button(page, 'Make another code').click();
  await expect(page.getByRole('timer')).toBeVisible();
  await server.kill();
  await page.reload();
  await expect(alertsOf(page)).toHaveText(/^The unit’s server does not answer\./);
});
