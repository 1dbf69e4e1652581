// Being let in to health records, on the pages of all three who have a part in it: whoever waits reads what for and who can do it,
// a colleague lets in, the lead reads beside the account how it stands and what a press would end.
import { type Browser, expect, type Page, test } from '@playwright/test';
import { keys } from './hands.ts';
import {
  alertsOf,
  button,
  DOCTOR,
  doctorIn,
  MARK,
  part,
  read,
  signIn,
  unitForEach,
  writeOne,
} from './healthActs.ts';
import { complaintsOf, sideways, tooSmall, violationsOf } from './page.ts';

// A server is started and three people sign in each time.
test.describe.configure({ timeout: 180_000 });

const unit = unitForEach();
const NEXT = 'Piet Invented';
const OWN = 'amber kettle seventeen';

/** On the desk, and as narrow as a phone. */
async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  const size = page.viewportSize() ?? { width: 1280, height: 800 };
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await sideways(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
  await page.setViewportSize(size);
}

/** Somebody in a browser of their own, on the page of health records. */
async function another(browser: Browser): Promise<Page> {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await unit.open(page);
  return page;
}

async function choosesOwn(page: Page, first: string): Promise<void> {
  const hand = keys(page);
  await hand.type(page.getByLabel('Password that you were given'), first);
  await hand.type(page.getByLabel('Your own password', { exact: true }), OWN);
  await hand.press(button(page, 'Change the password'));
}

test('who waits reads for what, a colleague lets in, and the lead’s new password ends it', async ({
  page,
  browser,
}) => {
  const complaints = complaintsOf(page);
  const hand = keys(page);
  await unit.open(page);
  await doctorIn(page, hand, unit);
  await writeOne(page, hand);
  const first = await unit.account(NEXT, 'occupational-health');

  const next = await another(browser);
  await signIn(next, keys(next), NEXT, first);
  const list = part(page, 'Who is let in');
  await hand.press(list.getByRole('button', { name: 'Load again' }));
  await expect(list.getByRole('listitem').filter({ hasText: DOCTOR })).toContainText(/let in since .*you/);
  const barred = list.getByRole('button', { name: `Let ${NEXT} in …` });
  await expect(barred).toBeDisabled();
  await expect(barred).toHaveAccessibleDescription(
    /^Its owner must first sign in and choose an own password/,
  );

  await choosesOwn(next, first);
  await expect(next.getByText(`Signed in as ${NEXT}, occupational health, not let in yet.`)).toBeVisible();
  const waits = part(next, 'Not let in yet');
  await expect(waits).toContainText('somebody of occupational health who is let in, on this page');
  await expect(waits.locator('code')).toHaveText(`./doffline account let-in "${NEXT}"`);
  await expect(next.getByRole('main').getByRole('region')).toHaveCount(1);
  await keepsToTheRules(next);
  await keys(next).press(button(next, 'Ask again whether I am let in'));
  await expect(waits).toBeVisible();

  await hand.press(list.getByRole('button', { name: 'Load again' }));
  await expect(barred).toBeEnabled();
  await hand.press(barred);
  const asked = page.getByRole('alertdialog');
  await expect(asked).toContainText(`${NEXT} will read and write health records of staff`);
  await hand.press(asked.getByRole('button', { name: 'Let in' }));
  await expect(page.getByText(`${NEXT} is let in.`)).toBeVisible();
  const log = list.getByRole('row');
  await expect(log.nth(1)).toContainText(new RegExp(`${NEXT} account [\\w-]+.*by ${DOCTOR} account`));
  await expect(log.nth(2)).toContainText(
    /Olive Invented.*by itself, as the unit’s first, when the lead made it/,
  );
  await keepsToTheRules(page);

  await keys(next).press(button(next, 'Ask again whether I am let in'));
  await read(next, keys(next));
  await expect(next.getByText(MARK)).toBeVisible();

  const desk = await another(browser);
  await desk.goto(`${unit.server().address}/unit`);
  await signIn(desk, keys(desk), 'Ada Invented', 'correct horse battery');
  const card = part(desk, 'Accounts').getByRole('listitem').filter({ hasText: NEXT });
  await expect(card.locator('summary')).toContainText('let in to health records');
  await card.locator('summary').click();
  await card.getByRole('button', { name: 'New first password …' }).click();
  const dialog = desk.getByRole('alertdialog');
  await expect(dialog).toContainText(`${NEXT} then neither reads nor writes health records until somebody`);
  await dialog.getByRole('button', { name: 'Do it' }).click();
  const again = (await card.locator('.once-password').textContent()) ?? '';
  await expect(card.locator('summary')).toContainText('not let in to health records yet');
  await expect(card).toContainText('You cannot do it: whoever makes accounts must not read');
  await keepsToTheRules(desk);

  await keys(next).press(button(next, 'Tell the journal and read'));
  await expect(alertsOf(next)).toHaveText(/^The session has ended/);
  await expect(next.getByText(MARK)).toHaveCount(0);
  await signIn(next, keys(next), NEXT, again);
  await choosesOwn(next, again);
  await expect(part(next, 'Not let in yet')).toBeVisible();
  for (const one of [next, desk]) await one.context().close();
  expect(complaints.filter((line) => !line.startsWith('Failed to load resource'))).toEqual([]);
});

test('an account that the lead changed since the list was loaded is not let in by it', async ({
  page,
  browser,
}) => {
  const hand = keys(page);
  await unit.open(page);
  await doctorIn(page, hand, unit);
  const first = await unit.account(NEXT, 'occupational-health');
  const next = await another(browser);
  await signIn(next, keys(next), NEXT, first);
  await choosesOwn(next, first);
  await expect(part(next, 'Not let in yet')).toBeVisible();
  const list = part(page, 'Who is let in');
  await hand.press(list.getByRole('button', { name: 'Load again' }));
  const press = list.getByRole('button', { name: `Let ${NEXT} in …` });
  await expect(press).toBeEnabled();

  const desk = await another(browser);
  await desk.goto(`${unit.server().address}/unit`);
  await signIn(desk, keys(desk), 'Ada Invented', 'correct horse battery');
  const card = part(desk, 'Accounts').getByRole('listitem').filter({ hasText: NEXT });
  await card.locator('summary').click();
  await card.getByRole('button', { name: 'New first password …' }).click();
  await desk.getByRole('alertdialog').getByRole('button', { name: 'Do it' }).click();
  await expect(card.locator('.once-password')).toBeVisible();

  await hand.press(press);
  const dialog = page.getByRole('alertdialog');
  await expect(dialog).toContainText('did they themselves choose the password that this account has now?');
  await hand.press(dialog.getByRole('button', { name: 'Let in' }));
  await expect(dialog.getByRole('alert')).toHaveText(/^Not let in: This account does not wait any more/);
  await hand.press(dialog.getByRole('button', { name: 'Go back' }));
  await expect(list.getByRole('listitem').filter({ hasText: NEXT })).toContainText('waits since');
  for (const one of [next, desk]) await one.context().close();
});
