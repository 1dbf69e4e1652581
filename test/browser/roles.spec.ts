// A tablet paired as an observer's: it writes no version, and says whose device does; where an older page wrote what the server
// does not take from it, the way out that it names works, through being taken out to the rest being sent.
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import type { JournalParts } from './journalPage.ts';
import { complaintsOf, violationsOf } from './page.ts';
import { type Ask, bundled, leadAt, unitProgram, type UnitServer, unitServerOf } from './servers.ts';

declare const journal: JournalParts;

const BAR = 'This device is paired as an observer’s. A lead’s device writes versions of procedures.';
const LABEL = 'Tablet in the anteroom';

let program: string;
let journalScript: string;
let server: UnitServer;

test.beforeAll(async () => {
  [program, journalScript] = await Promise.all([unitProgram(), bundled('./journalPage.ts', 'browser')]);
});
test.afterAll(() => rmSync(dirname(program), { recursive: true, force: true }));
test.beforeEach(async () => {
  server = await unitServerOf(program);
});
test.afterEach(() => server.remove());

async function join(page: Page, ask: Ask, offer: object): Promise<void> {
  const { code } = await ask('/api/pairings', { label: LABEL, ...offer });
  await page.goto(`${server.address}/device#pair=${code}`);
  await page.reload();
  await page.getByRole('button', { name: 'Join' }).click();
  await expect(page.getByText('All sent.')).toBeVisible({ timeout: 15_000 });
}

test('an observer’s tablet writes no version and says so before anything is typed', async ({ page }) => {
  const complaints = complaintsOf(page);
  await join(page, await leadAt(server.address), { role: 'observer' });
  // Paired by a page that did not keep the role: the server tells it.
  await page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('doffline-paired') ?? '{}') as Record<string, unknown>;
    localStorage.setItem('doffline-paired', JSON.stringify({ ...kept, role: undefined }));
  });
  await page.goto(`${server.address}/write`);
  await page.getByLabel('From a copy of', { exact: true }).selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Copy: From a copy of' }).click();
  await page.getByRole('link', { name: 'Review', exact: true }).click();
  const send = page.getByRole('button', { name: 'Send for review …' });
  await expect(send).toHaveAccessibleDescription(BAR);
  await expect(send).toBeDisabled();
  await expect(page.getByRole('note').filter({ hasText: BAR })).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

/** As an older page did it. */
const recordForeign = async (page: Page): Promise<string> => {
  await page.evaluate(journalScript);
  return page.evaluate(async () => {
    const name = localStorage.getItem('doffline-device') ?? '';
    const store = await journal.openIndexedDb();
    const { write } = journal.device(name, 'larkmoor-isolation');
    await store.append([write('departure.accepted'), write('note.added')]);
    await store.close();
    return name;
  });
};

test('what an older page wrote is sent once the tablet is paired again as a lead’s', async ({ page }) => {
  // Five pages, two joinings and a server of its own: long on a machine that has other work.
  test.slow();
  const ask = await leadAt(server.address);
  await join(page, ask, { role: 'observer' });
  const device = await recordForeign(page);
  await page.goto(`${server.address}/device`);
  const told = page.locator('.sync-state');
  await expect(told).toContainText('Entry 1 of this device is of a kind', { timeout: 15_000 });
  await expect(told).toContainText('for the same tablet with the role lead');
  await ask(`/api/devices/${device}/revocation`, { reason: 'Another role (invented).' });
  await page.reload();
  await expect(page.getByText(/^2 entries of this device are not on the server yet/)).toBeVisible();
  await expect(page.getByText(/are never sent/)).toHaveCount(0);
  expect(await violationsOf(page)).toEqual([]);
  await page.goto(`${server.address}/guide`);
  await expect(page.getByRole('form', { name: 'Begin' })).toContainText('stay on this device until the lead');
  await join(page, ask, { role: 'lead', device });
  const { entries } = await ask('/api/entries?from=1&most=500');
  expect(entries.filter(({ entry }) => entry.device === device)).toHaveLength(2);
});
