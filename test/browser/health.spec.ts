// The page of health records against the unit's real server: who gets in, that nothing is shown before a reason was given, and
// that nothing of it stays in the browser.
import { expect, type Page, test } from '@playwright/test';
import { finger, keys } from './hands.ts';
import {
  alertsOf,
  button,
  DOCTOR,
  doctorIn,
  MARK,
  part,
  read,
  SECRETS,
  signIn,
  unitForEach,
  writeOne,
} from './healthActs.ts';
import { sideways, tooSmall, violationsOf } from './page.ts';

// A server is started and a person signs in each time.
test.describe.configure({ timeout: 180_000 });

const unit = unitForEach();

/** Everything that a page may leave in a browser, as one text. */
const leftIn = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.addEventListener('success', () => resolve(request.result));
        request.addEventListener('error', () => reject(new Error('not read')));
      });
    const left: string[] = [JSON.stringify(localStorage), JSON.stringify(sessionStorage), document.cookie];
    for (const { name = '' } of await indexedDB.databases()) {
      const database = await done(indexedDB.open(name));
      for (const store of database.objectStoreNames)
        left.push(JSON.stringify(await done(database.transaction(store).objectStore(store).getAll())));
      database.close();
    }
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const { url } of await cache.keys()) {
        left.push(url);
        if (url.includes('/api/')) left.push((await (await cache.match(url))?.text()) ?? '');
      }
    }
    return left.join('\n');
  });

async function leavesNothing(page: Page): Promise<void> {
  const left = await leftIn(page);
  expect(left).toContain('/index.html');
  expect(left).not.toContain('/api/');
  for (const secret of SECRETS) expect(left, 'what is left in the browser').not.toContain(secret);
}

async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
  await expect(page).toHaveTitle('Health records of staff – Doffline');
  expect(page.url()).toBe(`${unit.server().address}/health-records`);
}

test('is written and read with a reason, and forgotten, within the rules on every screen', async ({
  page,
  hasTouch,
}) => {
  const hand = hasTouch ? finger(page) : keys(page);
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(`ERROR ${error.message}`));
  await page.goto(`${unit.server().address}/device`);
  await expect(page.getByText('The whole page is kept on this device.')).toBeVisible();
  await hand.press(page.getByRole('main').getByRole('link', { name: 'Health records of staff' }));
  await expect(button(page, 'Sign in')).toBeVisible();
  await keepsToTheRules(page);
  await hand.press(button(page, 'Sign in'));
  await expect(alertsOf(page)).toHaveText('Type your name and your password.');
  await signIn(page, hand, DOCTOR, 'no such password');
  await expect(alertsOf(page)).toHaveText('The name or the password is wrong.');
  await expect(page.getByLabel('Password', { exact: true })).toHaveValue('');
  await doctorIn(page, hand, unit);
  await keepsToTheRules(page);

  await writeOne(page, hand);
  await expect(page.getByText('Record 1 is kept, sealed. To see it, read it with a reason.')).toBeVisible();
  await expect(page.getByText(MARK)).toHaveCount(0);
  await expect(part(page, 'Write').getByLabel('What is to be kept')).toHaveValue('');
  await hand.press(button(page, 'Tell the journal and read'));
  await expect(alertsOf(page)).toHaveText('Choose a reason: the journal keeps it.');
  await hand.press(button(page, 'Show who read'));
  await expect(page.getByText('Nobody has read any.')).toBeVisible();
  await read(page, hand);
  await expect(page.getByText(MARK)).toBeVisible();
  await expect(page.getByText('1 record is shown. The journal says that you read it.')).toBeVisible();
  await hand.press(button(page, 'Ask again who read'));
  const row = part(page, 'Who read what').getByRole('row').nth(1);
  await expect(row).toContainText(/p-\w+ account [\w-]+.*p-3k7m.*1.*Follow-up of somebody exposed/s);
  await keepsToTheRules(page);
  await leavesNothing(page);

  await hand.press(button(page, 'Put away what is shown'));
  await expect(page.getByText(MARK)).toHaveCount(0);
  await hand.pick(part(page, 'Read').getByRole('radiogroup'), 'One record');
  await hand.type(page.getByLabel('Number of the record'), '1');
  await hand.press(button(page, 'Tell the journal and read'));
  await expect(page.getByText(MARK)).toBeVisible();
  await page.reload();
  await expect(page.getByText(`Signed in as ${DOCTOR}`)).toBeVisible();
  await expect(page.getByText(MARK)).toHaveCount(0);
  await read(page, hand, /^An exposure/);
  await expect(page.getByText(MARK)).toBeVisible();
  await page.goto(`${unit.server().address}/evidence`);
  await page.goBack();
  await expect(page.getByText(`Signed in as ${DOCTOR}`)).toBeVisible();
  await expect(page.getByText(MARK)).toHaveCount(0);
  await hand.press(button(page, 'Sign out'));
  await expect(page.getByLabel('Password', { exact: true })).toHaveValue('');
  await page.reload();
  await expect(button(page, 'Sign in')).toBeVisible();
  await expect(page.getByText(DOCTOR)).toHaveCount(0);
  await leavesNothing(page);
  // The browser itself says that a request was refused; nobody says anything else.
  expect(said.filter((line) => !line.startsWith('Failed to load resource: the server responded'))).toEqual(
    [],
  );
  for (const secret of SECRETS) expect(said.join('\n')).not.toContain(secret);
});

test('tells every other role that it is for occupational health, and shows them nothing', async ({
  page,
}) => {
  const hand = keys(page);
  await unit.open(page);
  for (const role of ['observer', 'stores', 'reader']) {
    await signIn(page, hand, `Some ${role}`, await unit.account(`Some ${role}`, role));
    await expect(
      page.getByText(`This page is for occupational health. You are signed in with the role ${role},`),
    ).toBeVisible();
    await expect(page.getByRole('main').getByRole('region')).toHaveCount(0);
    await hand.press(button(page, 'Sign out'));
  }
  await signIn(page, hand, 'Ada Invented', 'correct horse battery');
  await expect(page.getByText('with the role lead,')).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
});
