// What is accepted in writing past its day of review: a draft with it is not sent, a version under review not approved, each with which,
// since when and how to mend it; accepted anew it goes on. An exit from a version that was approved before is warned of it and begins
// only knowingly, on record. And a title that is too long is told as it is typed, and nothing of it is cut off.
import { expect, type Locator, type Page, test } from '@playwright/test';
import { fillPeople, line } from './guideDrill.ts';
import { complaintsOf, sideways, violationsOf } from './page.ts';
import { PROCEDURE, seed, seedLines } from './versionSeed.ts';

/** The seeded version 1 accepts until 2027-03-02, version 2 until 2027-09-07. */
const BEFORE = new Date('2027-03-02T12:00:00Z');
const AFTER = new Date('2027-03-03T12:00:00Z');
const LONG_AFTER = new Date('2027-09-08T12:00:00Z');
const COPIED =
  'Larkmoor General Hospital (invented), isolation unit: doffing of suit and respirator, version 2';

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });

test.beforeEach(async ({ page }) => {
  await page.clock.setFixedTime(BEFORE);
});

test('a draft is not sent with it before it is accepted anew, by a role and with a day to come', async ({
  page,
}) => {
  const complaints = complaintsOf(page);
  await page.clock.setFixedTime(LONG_AFTER);
  await page.goto('/write');
  await page.getByLabel('From a copy of', { exact: true }).selectOption({ label: COPIED });
  await button(page, 'Copy: From a copy of').press('Enter');
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('link', { name: 'Review', exact: true }).press('Enter');
  const hinders = page.getByRole('list').filter({ hasText: 'so they count as not accepted' });
  await expect(hinders).toContainText(
    'accepted by Infection prevention committee (invented) on 2026-09-07, to be looked at again on 2027-09-07, overdue by 1 day.',
  );
  await expect(button(page, 'Send for review …')).toBeDisabled();
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBe(0);

  await page.getByRole('link', { name: 'Accept anew' }).press('Enter');
  const accepted = page.getByRole('region', { name: 'Accepted in writing' });
  await expect(accepted.getByText('▲ overdue since 2027-09-07')).toBeVisible();
  const row = accepted.getByRole('listitem').first();
  await row.getByText('Look at it again, and accept it anew').press('Enter');
  const anew = row.getByRole('button', { name: /^Accept it anew/ });
  await row.getByLabel(/^Who accepts it/).fill('infection-prevention lead');
  await row.getByLabel('Accepted on').fill('2027-08-01');
  await row.getByLabel('To be looked at again on').fill('2027-09-07');
  await expect(row.getByText('The day of review has passed already.')).toBeVisible();
  await expect(anew).toBeDisabled();
  await row.getByLabel('To be looked at again on').fill('2028-09-07');
  expect(await violationsOf(page)).toEqual([]);
  await anew.press('Enter');
  await expect(accepted.getByText(/overdue/)).toHaveCount(0);
  await expect(accepted.getByText('infection-prevention lead, 2027-08-01')).toBeVisible();
  await page.getByRole('link', { name: 'Review', exact: true }).press('Enter');
  await expect(page.getByText('What the check found in exactly this draft')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('heading', { name: 'It cannot be sent yet' })).toHaveCount(0);
  expect(complaints).toEqual([]);
});

test('a version under review is not approved with it, and says how it is mended', async ({ page }) => {
  await page.clock.setFixedTime(LONG_AFTER);
  await seed(page);
  await page.goto(`/versions/${PROCEDURE}/2/read`);
  const why = page.getByRole('listitem').filter({ hasText: 'so they count as not accepted' });
  await expect(why).toContainText('to be looked at again on 2027-09-07, overdue by 1 day.');
  await expect(why).toContainText('Send it back, so that this can be done in the draft.');
  await page.getByRole('checkbox', { name: /\(CN\)/ }).press('Space');
  await expect(page.getByText('It can be approved once the check has run')).toHaveCount(0, {
    timeout: 60_000,
  });
  await expect(button(page, 'Approve version 2 …')).toBeDisabled();
  expect(await violationsOf(page)).toEqual([]);
});

test('an exit is warned of it, begins only knowingly, and has it on record', async ({ page }) => {
  const complaints = complaintsOf(page);
  // Approved for longer than what it accepts.
  const lines = seedLines().map((line) =>
    line[0] === 'procedure.approved' ? ([line[0], { ...line[1], reviewOn: '2028-03-02' }] as const) : line,
  );
  await seed(page, lines);
  const says = page.getByText(
    /^Accepted in writing, to be looked at again by 2027-03-02, and that day has passed/,
  );
  await page.goto(`/guide?procedure=approved-${PROCEDURE}`);
  await page.getByText('Exit: for real, with an approved version').click();
  await expect(button(page, 'Begin the exit')).toBeEnabled();
  await expect(says).toHaveCount(0);

  await page.clock.setFixedTime(AFTER);
  await page.reload();
  await page.getByText('Exit: for real, with an approved version').click();
  await expect(says).toBeVisible();
  await fillPeople(page);
  await button(page, 'Begin the exit').press('Enter');
  await expect(page.getByText(/^Mend what stands under “Before it begins”/)).toBeVisible();
  await page.getByText('Begin all the same. It is recorded.').click();
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBe(0);
  await button(page, 'Begin the exit').press('Enter');
  await expect(line(page)).toBeVisible();
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();
  const [, exit = ''] = /\/guide\/(x-[^/?]+)/.exec(page.url()) ?? [];
  await page.goto(`/guide/${exit}/record`);
  await expect(page.getByText(/Note: Begun knowingly with a departure accepted in writing/)).toBeVisible();
  expect(complaints).toEqual([]);
});

test('a title that is too long is told as it is typed; nothing is cut off, and nothing is checked', async ({
  page,
}) => {
  await page.goto('/write');
  await page.getByLabel('From a copy of', { exact: true }).selectOption({ label: COPIED });
  await button(page, 'Copy: From a copy of').press('Enter');
  const title = page.getByLabel('Title', { exact: true });
  await title.fill('T'.repeat(5000));
  await expect(title).toHaveValue('T'.repeat(5000));
  await expect(title).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByText('4800 too many: at most 200 characters are taken here.')).toBeVisible();
  await expect(
    page.getByText('"title" is 5000 characters long, and at most 200 are taken here. Shorten it by 4800.'),
  ).toBeVisible();
  expect(await sideways(page)).toBe(0);
  expect(await violationsOf(page)).toEqual([]);
  await title.fill('T'.repeat(200));
  await expect(page.getByText(/too many: at most/)).toHaveCount(0);
  await expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });
  expect(await sideways(page)).toBe(0);
});
