// The logbook as it is used at the door: two rooms at once, signs in words, signing in and out by finger, a late entry, a
// correction, who was with whom, the day on paper; the server gone and the page loaded anew. Everybody is invented.
// Screenshots are left in .cache/screens to be looked at.
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import type { Bodies } from '../../src/journal/kinds/index.ts';
import { button, fill, hasContrast, line, onward, PEDAL, pause } from './guideDrill.ts';
import { complaintsOf, sideways, violationsOf } from './page.ts';
import { PROCEDURE, seed, seedLines } from './versionSeed.ts';

const NOON = '2026-11-25T12:00:00Z';
const [WEARER, OTHER, OBSERVER, CLEANER] = ['p-wearaaaa', 'p-otheraaa', 'p-obseraaa', 'p-cleanaaa'];
const LIMIT = { minutes: 120, source: 'Unit rule 4 (invented)' };

// Half of it or less on a quiet machine.
test.describe.configure({ timeout: 60_000 });

const picture = (info: TestInfo, name: string): string =>
  `.cache/screens/logbook-${name}-${info.project.name}.png`;

const today = (time: string): string => `2026-11-25T${time}:00.000Z`;

const content = (): string => {
  const approved = seedLines().find(([kind]) => kind === 'procedure.approved');
  return approved?.[0] === 'procedure.approved' ? approved[1].content : '';
};

const NOTHING_MORE: Omit<Bodies['room.entered'], 'visit' | 'person' | 'room' | 'happened'> = {
  role: 'other',
  worn: null,
  ensemble: null,
  items: [],
  observer: null,
  limit: null,
  drill: false,
  late: null,
};

/** Two rooms: a wearer near the limit and their observer; a wearer long past it, also signed in elsewhere; a cleaner who went. */
async function twoRooms(page: Page): Promise<void> {
  await page.clock.install({ time: NOON });
  const worn = { procedure: PROCEDURE, version: '1', content: content() };
  const items = [
    { item: 'coverall', size: 'L', lot: 'LOT-8841' },
    { item: 'outer glove', size: 'M', lot: 'LOT-2207' },
  ];
  await seed(page, [
    ...seedLines(),
    ['staff.listed', { person: WEARER, role: 'nurse', initials: 'WR' }],
    ['staff.listed', { person: OTHER, role: 'physician', initials: 'PH' }],
    ['staff.listed', { person: OBSERVER, role: 'trained observer', initials: 'OB' }],
    ['staff.listed', { person: CLEANER, role: 'cleaner', initials: 'CL' }],
    [
      'room.entered',
      {
        ...NOTHING_MORE,
        visit: 'v-wearer',
        person: WEARER,
        room: 'red-1',
        happened: today('10:06'),
        role: 'wearer',
        worn,
        items,
        observer: OBSERVER,
        limit: LIMIT,
      },
    ],
    [
      'room.entered',
      {
        ...NOTHING_MORE,
        visit: 'v-observer',
        person: OBSERVER,
        room: 'red-1',
        happened: today('10:00'),
        role: 'observer',
        ensemble: 'Gown, shield (invented)',
      },
    ],
    [
      'room.entered',
      {
        ...NOTHING_MORE,
        visit: 'v-other',
        person: OTHER,
        room: 'red-2',
        happened: today('07:00'),
        role: 'wearer',
        worn,
        limit: LIMIT,
        late: 'The tablet was charging.',
      },
    ],
    [
      'room.entered',
      { ...NOTHING_MORE, visit: 'v-twice', person: OTHER, room: 'red-1', happened: today('11:30') },
    ],
    [
      'room.entered',
      { ...NOTHING_MORE, visit: 'v-cleaner', person: CLEANER, room: 'red-1', happened: today('10:10') },
    ],
    [
      'room.left',
      {
        visit: 'v-cleaner',
        person: CLEANER,
        room: 'red-1',
        happened: today('10:40'),
        exit: null,
        asked: 'asked',
        late: null,
      },
    ],
  ]);
  await page.goto('/logbook');
  await expect(page.getByRole('heading', { name: 'Red 1: 3 in' })).toBeVisible();
}

const card = (page: Page, name: string): Locator => page.getByRole('listitem', { name });
const press = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });

async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('.log-press')]
      .map((target) => ({ high: target.getBoundingClientRect().height, text: target.textContent }))
      .filter(({ high }) => high < 63.5)
      .map(({ high, text }) => `${text}: ${high}`),
  );
  expect(small).toEqual([]);
}

test('who is in two rooms now, on every screen, and signing out by touch', async ({
  page,
  hasTouch,
}, info) => {
  const complaints = complaintsOf(page);
  await twoRooms(page);
  const wearer = card(page, 'nurse (WR), Wearer');
  await expect(wearer).toContainText('The limit is near');
  await expect(wearer).toContainText('6 min left');
  await expect(wearer).toContainText('of 120 min Unit rule 4 (invented)');
  await expect(wearer).toContainText('coverall L, lot LOT-8841');
  await expect(wearer).toContainText('trained observer (OB)');
  const other = card(page, 'physician (PH), Wearer');
  await expect(other).toContainText('Still in, for very long');
  await expect(other).toContainText('In two rooms at once: also in Red 1');
  await expect(other).toContainText('No observer is named');
  await expect(other).toContainText('late entry');
  await page.screenshot({ path: picture(info, 'now'), fullPage: true });
  await keepsToTheRules(page);
  if (!hasTouch) {
    await page.emulateMedia({ colorScheme: 'dark' });
    await hasContrast(page);
    await page.emulateMedia({ colorScheme: 'light' });
  }

  const act = async (target: Locator): Promise<void> => (hasTouch ? target.tap() : target.click());
  await act(page.getByRole('link', { name: 'Sign out nurse (WR)' }));
  await expect(page.getByText('Did anything tear?')).toBeVisible();
  await page.screenshot({ path: picture(info, 'out'), fullPage: true });
  await keepsToTheRules(page);
  await act(press(page, 'Sign out'));
  await expect(page.getByRole('alert')).toHaveText('Say whether the end questions were asked.');
  await act(page.getByText('Asked now', { exact: true }));
  await page.getByLabel('Written by').selectOption({ label: 'trained observer (OB)' });
  await act(press(page, 'Sign out'));
  await expect(page.getByRole('heading', { name: 'Red 1: 2 in' })).toBeVisible();
  await expect(wearer).toBeHidden();
  expect(complaints).toEqual([]);
});

test('signs in, late, changes the observer, and corrects; a reload without a server loses nothing', async ({
  page,
  context,
}, info) => {
  await twoRooms(page);
  await page.getByRole('link', { name: 'Sign in', exact: true }).first().click();
  await page.getByLabel('Who', { exact: true }).selectOption({ label: 'cleaner (CL)' });
  await page.getByLabel('Room').fill('Red 2');
  await page.getByText('Cleaner', { exact: true }).click();
  await page
    .getByLabel('Ensemble, by the approved version')
    .selectOption({ label: `${PROCEDURE}, version 1` });
  await page.getByText('Sizes and lots').click();
  await page.getByLabel('Size: boot covers').fill('M');
  await page.getByLabel('Lot: boot covers').fill('LOT-9');
  await page.getByLabel('Limit, minutes').fill('60');
  await page.getByText('Earlier: a late entry').click();
  await page.getByLabel('It happened at').fill('2026-11-25T11:20');
  await page.getByLabel('Written by').selectOption({ label: 'trained observer (OB)' });
  await press(page, 'Sign in').click();
  const alert = page.getByRole('alert').filter({ hasText: /\S/ });
  await expect(alert).toHaveText(/The limit is a whole number/);
  await page.getByLabel('Where the limit is written').fill('Unit rule 5 (invented)');
  await press(page, 'Sign in').click();
  await expect(alert).toHaveText('Say why it is written late.');
  await page.getByLabel('Why it is written late (no names)').fill('Went in as the tablet started anew.');
  await page.screenshot({ path: picture(info, 'in'), fullPage: true });
  await keepsToTheRules(page);
  await press(page, 'Sign in').click();
  const cleaner = card(page, 'cleaner (CL), Cleaner');
  await expect(cleaner).toContainText('11:20');
  await expect(cleaner).toContainText('late entry');
  await expect(cleaner).toContainText('lot LOT-9');

  await page.getByRole('link', { name: 'Change observer of cleaner (CL)' }).click();
  await page.getByLabel('Observer', { exact: true }).selectOption({ label: 'charge nurse (CN)' });
  await page.getByLabel('Written by').selectOption({ label: 'trained observer (OB)' });
  await press(page, 'Change observer').click();
  await expect(cleaner).toContainText('charge nurse (CN)');

  await page.goto('/device');
  await expect(page.getByText('The whole page is kept on this device.')).toBeVisible({ timeout: 15_000 });
  await context.setOffline(true);
  await page.goto('/logbook');
  await page.getByRole('link', { name: 'Correct cleaner (CL)' }).click();
  await page.getByLabel('In', { exact: true }).fill('2026-11-25T11:25');
  await page.getByLabel('What was wrong or missing (no names)').fill('Five minutes out.');
  await page.getByLabel('Written by').selectOption({ label: 'charge nurse (CN)' });
  await page.screenshot({ path: picture(info, 'correct'), fullPage: true });
  await keepsToTheRules(page);
  await press(page, 'Correct').click();
  await expect(cleaner).toContainText('11:25');
  await page.reload();
  await expect(cleaner).toContainText('Five minutes out.');
  await expect(cleaner).toContainText('charge nurse (CN)');
});

test('the day’s log and who was with whom', async ({ page }, info) => {
  await twoRooms(page);
  await page.getByRole('link', { name: 'The day’s log' }).click();
  const log = page.getByRole('region', { name: 'The log' });
  await expect(log.getByRole('row')).toHaveCount(6);
  await page.getByLabel('Ensemble, size or lot').fill('lot-2207');
  await expect(log.getByRole('row')).toHaveCount(2);
  await page.getByLabel('Ensemble, size or lot').fill('');
  expect(await log.textContent()).not.toContain(WEARER);
  await page.getByText('With ids of the staff list').click();
  await expect(log).toContainText(WEARER ?? '');
  await page.getByText('With ids of the staff list').click();
  await page.screenshot({ path: picture(info, 'day'), fullPage: true });
  await keepsToTheRules(page);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
  await page.screenshot({ path: picture(info, 'paper'), fullPage: true });
  await page.emulateMedia({ media: 'screen' });

  await page.goto('/evidence');
  await expect(page.getByText('One person is signed in past the limit.')).toBeVisible();
  await page.goto('/logbook/with');
  await page.getByLabel('With whom').selectOption({ label: 'nurse (WR)' });
  const answer = page.getByRole('region', { name: 'Answer' });
  await expect(answer.getByRole('row').nth(1)).toContainText('trained observer (OB)');
  await expect(answer.getByRole('row').nth(1)).toContainText(/1 h 5\d min/);
  await expect(answer.getByRole('row').nth(1)).toContainText('open: still in, or never signed out');
  await expect(answer.getByRole('row').filter({ hasText: 'cleaner (CL)' })).toContainText('30 min');
  await expect(answer.getByRole('row').filter({ hasText: 'physician (PH)' })).toContainText('Red 1');
  await page.screenshot({ path: picture(info, 'with'), fullPage: true });
  await keepsToTheRules(page);
});

test('a donning that is read aloud takes sizes and lots before its first line, and the logbook shows them', async ({
  page,
}, info) => {
  test.setTimeout(180_000);
  await page.clock.install({ time: NOON });
  await fill(page, 'everyday-donning');
  await page.getByText('Sizes and lots').click();
  await page.getByLabel('Size: gown').fill('L');
  await page.getByLabel('Lot: gown').fill('LOT-8841');
  await page.screenshot({ path: picture(info, 'packs'), fullPage: true });
  await keepsToTheRules(page);
  await button(page, 'Begin the drill').click();
  await expect(line(page)).toBeVisible();
  await onward(page, PEDAL);
  // A reload in between loses nothing of it.
  await page.reload();
  const bare = page.getByRole('region', { name: 'What the check says of coverage' });
  await expect(line(page)).toBeVisible();
  while ((await bare.count()) === 0) await onward(page, PEDAL);
  await page.keyboard.press('o');
  await page.getByLabel('Reason (no names)').fill('Everyday isolation only.');
  await pause(page);
  await button(page, 'Record it and go in').click();
  await expect(line(page)).toContainText('In the room');
  await page.goto('/logbook');
  await expect(card(page, 'wearer (AB), Wearer')).toContainText('gown L, lot LOT-8841');
});
