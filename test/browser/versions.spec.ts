// A version's whole life as a new user lives it: written from a copy, mended, a departure accepted, sent, the diff read,
// approved, found in force and never editable, copied into a new draft, retired; by keyboard alone, with a reload in the middle;
// its end by finger alone. And every page about versions, journal and languages within the accessibility rules.
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test, type TestInfo } from '@playwright/test';
import type { Procedure } from '../../src/domain/procedure.ts';
import { confirm, finger, type Hand, keys } from './hands.ts';
import { DEVICE, PROCEDURE, seed, seedLines } from './versionSeed.ts';
import { complaintsOf, sideways, violationsOf } from './page.ts';

const NOW = new Date('2026-11-25T12:00:00Z');
const COPIED =
  'Larkmoor General Hospital (invented), isolation unit: doffing of suit and respirator, version 1';

const grid = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' });
const rows = (page: Page): Locator => grid(page).getByRole('row');
const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });
const link = (page: Page, name: string | RegExp): Locator => page.getByRole('link', { name, exact: true });

async function addMember(page: Page, hand: Hand, role: string, initials: string): Promise<void> {
  await hand.type(page.getByLabel('Role (never a name)'), role);
  await hand.type(page.getByLabel(/^Initials/), initials);
  const told = new RegExp(`role “${role}” and the initials ${initials} belongs to Larkmoor`);
  await confirm(page, hand, button(page, 'Add to the staff list …'), told);
}

const checked = (page: Page): Promise<void> =>
  expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });

async function mend(page: Page, hand: Hand, step: RegExp): Promise<void> {
  await checked(page);
  const texts = await rows(page).allTextContents();
  await hand.row(
    grid(page),
    texts.findIndex((text) => step.test(text) && text.includes('▲')),
  );
  await hand.press(button(page, /^Apply this mend/).first());
  await expect(button(page, /^Undo: Mend/)).toBeVisible();
}

async function acceptFirst(page: Page, hand: Hand): Promise<void> {
  const accepted = page.getByRole('region', { name: 'Accepted in writing' });
  await hand.choose(accepted.getByLabel('Accept in writing'), /./);
  await hand.choose(accepted.getByLabel('Accept in writing'), / – step /);
  await hand.type(accepted.getByLabel('Why', { exact: true }), 'The chair is wiped before every exit.');
  await hand.type(accepted.getByLabel(/^Who accepts it/), 'infection-prevention lead');
  await hand.day(accepted.getByLabel('Accepted on'), '2026-11-25');
  await hand.day(accepted.getByLabel('To be looked at again on'), '2027-05-25');
  await hand.press(accepted.getByRole('button', { name: 'Accept it' }));
}

/** From a copy with its errors to a version under review. */
async function send(page: Page, hand: Hand): Promise<void> {
  await page.goto('/write');
  await hand.choose(page.getByLabel('From a copy of', { exact: true }), new RegExp(`^${escaped(COPIED)}$`));
  await hand.press(button(page, 'Copy: From a copy of'));
  await expect(rows(page).first()).toBeVisible();

  // Refused with the reasons, before anything is mended.
  await checked(page);
  await hand.press(link(page, 'Review'));
  await expect(page.getByRole('heading', { name: 'It cannot be sent yet' })).toBeVisible();
  await expect(page.getByText('These errors must be mended. They cannot be accepted:')).toBeVisible();
  await expect(button(page, 'Send for review …')).toBeDisabled();

  await hand.press(page.getByRole('link', { name: 'Go to the steps' }));
  await mend(page, hand, /rolls it down by its outside/);
  await mend(page, hand, /Touch the wearer's back/);
  await mend(page, hand, /Stand up\./);
  await hand.press(link(page, 'Rules'));
  await checked(page);
  await acceptFirst(page, hand);
  await page.reload();
  await hand.press(link(page, 'Review'));
  await expect(page.getByText('What the check found in exactly this draft')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('heading', { name: 'It cannot be sent yet' })).toHaveCount(0);

  await hand.type(page.getByLabel('Name of the unit'), 'Larkmoor General Hospital (invented)');
  await addMember(page, hand, 'infection-prevention lead', 'IL');
  await addMember(page, hand, 'charge nurse', 'CN');
  // Whoever lists people may list more.
  await expect(page.getByLabel('Role (never a name)')).toBeVisible();
  await hand.choose(page.getByLabel('Who sends it'), /\(IL\)/);
  await hand.tick(page.getByRole('checkbox', { name: /\(CN\)/ }));
  await confirm(
    page,
    hand,
    button(page, 'Send for review …'),
    /^The journal will say that infection-prevention lead \(IL\) sent version 1 of “Copy of Larkmoor .*” to charge nurse \(CN\) for review\.$/,
  );
  await expect(page.getByText('It is under review: nobody has approved it yet.')).toBeVisible();
}

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

/** Whoever sent it is not among those who may approve. */
async function approve(page: Page, hand: Hand, version: string, also: RegExp): Promise<void> {
  const people = page.getByRole('group', { name: /^Who approves/ });
  await expect(people.getByRole('checkbox')).toHaveCount(1);
  await hand.tick(people.getByRole('checkbox', { name: /\(CN\)/ }));
  await expect(button(page, `Approve version ${version} …`)).toBeEnabled({ timeout: 60_000 });
  await confirm(page, hand, button(page, `Approve version ${version} …`), also);
  await expect(page.getByText(`Version ${version} is approved and in force.`)).toBeVisible();
}

async function neverEdited(page: Page): Promise<void> {
  await expect(page.getByText(/^It is approved, and never changes/)).toBeVisible();
  await expect(page.getByRole('article').getByRole('textbox')).toHaveCount(0);
  await expect(page.getByRole('grid')).toHaveCount(0);
  for (const act of [/^Approve/, /^Send it back/, /^Edit/, /^Change/])
    await expect(button(page, act)).toHaveCount(0);
}

/** Version 2, and the reason stays in sight. */
async function sendBack(page: Page, hand: Hand): Promise<void> {
  await hand.choose(page.getByLabel('Who sends it back'), /\(CN\)/);
  await hand.type(page.getByLabel('Why, and what is to be changed'), 'Say who looks.');
  await confirm(
    page,
    hand,
    button(page, 'Send it back …'),
    /sent version 2 of .* back, because: Say who looks\.$/,
  );
  await expect(page.getByText('Sent back: Say who looks.')).toBeVisible();
  await expect(button(page, /^Approve/)).toHaveCount(0);
}

/** Version 1, which is in force. */
async function retire(page: Page, hand: Hand): Promise<void> {
  await hand.press(page.getByRole('link', { name: 'version 1', exact: true }));
  await hand.press(page.getByText('Retire this version'));
  await hand.choose(page.getByLabel('Who retires it'), /\(IL\)/);
  await hand.type(page.getByLabel('Why it is retired'), 'The supplier sends another suit.');
  await confirm(
    page,
    hand,
    button(page, 'Retire it …'),
    /retired version 1 of .*, because: The supplier sends another suit\.$/,
  );
  await expect(page.getByText('It is retired: nobody works by it any more.')).toBeVisible();
}

async function wholeLife(page: Page, hand: Hand): Promise<void> {
  await send(page, hand);
  await page.reload();
  await approve(
    page,
    hand,
    '1',
    /charge nurse \(CN\) approved version 1 .* on 2026-11-25, .* by 2027-11-25, 2 departures accepted with it\.$/,
  );
  await page.reload();
  await neverEdited(page);
  await hand.press(link(page, 'Versions'));
  await expect(page.getByText(/^In force:/)).toContainText('version 1');

  // Its successor: the same words, one note more, read as a diff against what is in force.
  await hand.press(page.getByRole('link', { name: 'version 1', exact: true }));
  await hand.press(button(page, 'New draft from it'));
  await checked(page);
  await hand.row(grid(page), 1);
  await hand.type(page.getByLabel('Note for the reader'), 'Front, back and both sides.');
  await hand.press(link(page, 'Review'));
  await expect(page.getByText('It will be version 2.')).toBeVisible();
  await expect(page.getByText('What the check found in exactly this draft')).toBeVisible({ timeout: 60_000 });
  await hand.choose(page.getByLabel('Who sends it'), /\(IL\)/);
  await hand.tick(page.getByRole('checkbox', { name: /\(CN\)/ }));
  await confirm(page, hand, button(page, 'Send for review …'), /sent version 2 /);
  const diff = page.getByRole('region', { name: /^What is different from version 1, which is in force/ });
  await expect(diff.getByText(/^Changed \(note\): step 2, now step 2\./)).toBeVisible({ timeout: 60_000 });
  await expect(diff.getByText('It has no error that version 1, which is in force has not.')).toBeVisible();

  await sendBack(page, hand);
  // The chain of all of it holds.
  await retire(page, hand);
  await hand.press(link(page, 'Journal'));
  await expect(page.getByText('Journal: 11 entries, chain unbroken')).toBeVisible();
}

test.beforeEach(async ({ page }) => page.clock.setFixedTime(NOW));

test('a version’s whole life by keyboard alone', async ({ page, hasTouch }) => {
  test.skip(hasTouch, 'keys only');
  test.setTimeout(240_000);
  const complaints = complaintsOf(page);
  await wholeLife(page, keys(page));
  expect(complaints).toEqual([]);
});

const REVIEW = `/versions/${PROCEDURE}/2/read`;
const APPROVED = `/versions/${PROCEDURE}/1/read`;

test('sent back and retired by finger alone', async ({ page }, info) => {
  test.skip(info.project.name !== 'tablet', 'on the tablet only');
  const complaints = complaintsOf(page);
  const hand = finger(page);
  await seed(page);
  await page.goto(REVIEW);
  await sendBack(page, hand);
  await retire(page, hand);
  await hand.press(link(page, 'Journal'));
  await expect(page.getByText('Journal: 9 entries, chain unbroken')).toBeVisible();
  expect(complaints).toEqual([]);
});

/** A page, and what must be there before it is looked at. */
const PAGES: readonly (readonly [name: string, path: string, shows: string | RegExp])[] = [
  ['home', '/versions', 'Waiting for review'],
  ['procedure', `/versions/${PROCEDURE}`, 'Every version'],
  ['review', REVIEW, /^Left out|^Moved|^New: step/],
  ['approved', APPROVED, /^In numbers/],
  ['departures', '/versions/departures', 'overdue by'],
  ['journal', '/journal', 'Journal: 7 entries, chain unbroken'],
  ['languages', '/languages', 'None are in place.'],
  ['language', '/languages/fr', 'Steps, as they are read aloud'],
];

const screenOf = (info: TestInfo, name: string): string =>
  `.cache/screens/versions-${name}-${info.project.name}.png`;

/** Whatever is pressed and is lower than a finger. */
const tooSmall = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'main :is(button, select, summary, .pill, input[type=text], .row-link, .button)',
      ),
    ]
      .map((target) => ({ box: target.getBoundingClientRect(), text: target.textContent?.slice(0, 40) }))
      .filter(({ box }) => box.height > 1 && box.height < 43.5)
      .map(({ box, text }) => `${text}: ${Math.round(box.height)}`),
  );

test('every page of versions keeps to the rules, the screen and the size of a finger', async ({
  page,
}, info) => {
  test.setTimeout(240_000);
  await page.clock.setFixedTime(new Date('2027-10-01T12:00:00Z'));
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await seed(page);
  const complaints = complaintsOf(page);
  for (const [name, path, shows] of PAGES) {
    await page.goto(path);
    await expect(page.getByText(shows).first()).toBeVisible({ timeout: 60_000 });
    expect.soft(await violationsOf(page), name).toEqual([]);
    expect.soft(await sideways(page), name).toBeLessThanOrEqual(0);
    expect.soft(await tooSmall(page), name).toEqual([]);
    await page.screenshot({ path: screenOf(info, name), fullPage: true });
  }
  expect(complaints).toEqual([]);
});

test('the dialog keeps to the rules, and Escape writes nothing', async ({ page }, info) => {
  await seed(page);
  await page.goto(REVIEW);
  await page
    .getByRole('group', { name: /^Who approves/ })
    .getByText(/\(CN\)/)
    .click();
  await expect(button(page, 'Approve version 2 …')).toBeEnabled({ timeout: 60_000 });
  await button(page, 'Approve version 2 …').press('Enter');
  await expect(page.getByRole('alertdialog')).toContainText(
    '1 departure accepted with it, version 1 retired.',
  );
  expect(await violationsOf(page)).toEqual([]);
  await page.screenshot({ path: screenOf(info, 'dialog') });
  await page.keyboard.press('Escape');
  await expect(page.getByRole('alertdialog')).toHaveCount(0);
  await page.goto('/journal');
  await expect(page.getByText('Journal: 7 entries, chain unbroken')).toBeVisible();
});

/** Version 2 accepts something as well that the check does not find in it. */
const withStale = (procedure: Procedure): Procedure => ({
  ...procedure,
  accepted: procedure.accepted.flatMap((one) =>
    procedure.version === '2'
      ? [one, { ...one, finding: 'practice.clean-and-dirty-chair-apart', step: 'sit-boots' }]
      : [one],
  ),
});

/** The same on every screen: looked at once. */
const oneScreen = (info: TestInfo): void => test.skip(info.project.name !== 'desk', 'on one screen only');

test('overdue departures stand first', async ({ page }, info) => {
  oneScreen(info);
  await page.clock.setFixedTime(new Date('2027-05-01T12:00:00Z'));
  await seed(page);
  await page.goto('/versions/departures');
  const all = page.getByRole('main').locator('.stated');
  await expect(all).toHaveCount(2);
  const [first, second] = await all.allTextContents();
  expect(first).toContain('overdue by 60 days');
  expect(first).toContain('to be looked at again on 2027-03-02');
  expect(second).toContain('due in');
});

test('what another tab approved is no longer to be decided here', async ({ page, context }, info) => {
  oneScreen(info);
  await seed(page);
  await page.goto(REVIEW);
  await expect(page.getByRole('heading', { name: 'Decide' })).toBeVisible();
  const other = await context.newPage();
  await other.clock.setFixedTime(NOW);
  await other.goto(REVIEW);
  await other
    .getByRole('group', { name: /^Who approves/ })
    .getByText(/\(CN\)/)
    .click();
  await expect(button(other, 'Approve version 2 …')).toBeEnabled({ timeout: 60_000 });
  await button(other, 'Approve version 2 …').press('Enter');
  await other.getByRole('button', { name: 'Write it' }).press('Enter');
  await expect(other.getByText('Version 2 is approved and in force.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Decide' })).toHaveCount(0);
  await expect(page.getByText(/^It is approved, and never changes/)).toBeVisible();
});

test('what the screen says is written outlives the page that crashes at that moment', async ({
  page,
  context,
}, info) => {
  oneScreen(info);
  test.setTimeout(60_000);
  await seed(page, seedLines(withStale));
  await page.goto(REVIEW);
  // Nobody approves on a day to come, and what is accepted but no longer found is told of.
  await page.getByRole('checkbox', { name: /\(CN\)/ }).press('Space');
  await page.getByLabel('Day of approval').fill('2999-01-01');
  await expect(page.getByText('The day of approval has not come yet.')).toBeVisible();
  await expect(page.getByText(/^The check does not find this in the version/)).toHaveCount(1);
  await page.getByLabel('Who sends it back').selectOption({ label: 'charge nurse (CN)' });
  await page.getByLabel('Why, and what is to be changed').fill('Say who looks.');
  await button(page, 'Send it back …').press('Enter');
  await page.getByRole('button', { name: 'Write it' }).press('Enter');
  await expect(page.getByText('Version 2 was sent back.')).toBeVisible();
  const crash = page.waitForEvent('crash');
  const devtools = await context.newCDPSession(page);
  devtools.send('Page.crash').catch(() => undefined);
  await crash;
  const after = await context.newPage();
  await after.goto(REVIEW);
  await expect(after.getByText('Sent back: Say who looks.')).toBeVisible();
  await after.goto('/journal');
  await expect(after.getByText('Journal: 8 entries, chain unbroken')).toBeVisible();
});

test('the journal is saved line by line, with this device’s id', async ({ page }, info) => {
  oneScreen(info);
  await seed(page);
  await page.goto('/journal');
  await expect(page.getByText(DEVICE, { exact: true })).toBeVisible();
  const download = page.waitForEvent('download');
  await button(page, 'Save as JSON Lines').press('Enter');
  const lines = (await readFile(await (await download).path(), 'utf8')).trim().split('\n');
  expect(lines).toHaveLength(seedLines().length);
  expect(lines.map((line) => (JSON.parse(line) as { kind: string }).kind)).toEqual(
    seedLines().map(([kind]) => kind),
  );
  expect(lines.join('')).not.toContain('infection-prevention lead');
});

test('what came to review with errors cannot be approved here either, and the reason is said', async ({
  page,
}, info) => {
  oneScreen(info);
  test.setTimeout(60_000);
  await seed(page, seedLines().slice(0, 4));
  await page.goto(APPROVED);
  await expect(page.getByText('These errors must be mended. They cannot be accepted:')).toBeVisible({
    timeout: 60_000,
  });
  await page
    .getByRole('group', { name: /^Who approves/ })
    .getByText(/\(CN\)/)
    .click();
  await expect(button(page, 'Approve version 1 …')).toBeDisabled();
});

test('on paper: title, stage, steps and how far the language may be trusted; no buttons', async ({
  page,
}, info) => {
  oneScreen(info);
  await seed(page);
  await page.goto(APPROVED);
  await expect(page.getByText('Go to the doffing area.')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.print-panel')).toBeHidden();
  await expect(page.getByRole('navigation')).toHaveCount(0);
  await expect(page.locator('.language-note:visible')).toHaveCount(1);
  await expect(page.locator('main .language-note')).toContainText('Machine-made wording');
  await expect(page.getByText('approved, in force')).toBeVisible();
  await page.screenshot({ path: screenOf(info, 'paper'), fullPage: true });
});

test('a journal in which somebody rewrote an approval says so', async ({ page }, info) => {
  oneScreen(info);
  await seed(page, seedLines(), (row) =>
    row.unitNumber === 5 ? { ...row, text: row.text.replace('2027-03-02', '2037-03-02') } : row,
  );
  await page.goto('/journal');
  await expect(page.getByText('Journal: 7 entries, chain BROKEN')).toBeVisible();
  await expect(page.getByText('Entry 5 (device d-seed) was altered after it was stored.')).toBeVisible();
});

test('a language is chosen, read and signed off; another word of it makes it machine-made again', async ({
  page,
}, info) => {
  test.skip(info.project.name === 'tablet', 'on the widest and the narrowest screen');
  test.setTimeout(60_000);
  await seed(page);
  await page.goto(APPROVED);
  const note = page.getByRole('complementary', { name: 'How far this language may be trusted' });
  await page.getByLabel('Language of the sentences').selectOption({ label: 'Français' });
  await expect(page.getByText(/^Passez dans la zone de déshabillage/)).toBeVisible();
  await expect(note).toContainText('Formulation produite par machine');
  await expect(note).toContainText('Machine-made wording');
  await page.reload();
  await expect(page.getByText(/^Passez dans la zone de déshabillage/)).toBeVisible();

  await note.getByRole('link').press('Enter');
  await page.getByLabel('Who signs').selectOption({ label: 'charge nurse (CN)' });
  await page.getByText(/speak French as their first language/).click();
  await page.getByText(/^They have read all \d+ rows$/).click();
  await button(page, 'Sign French off …').press('Enter');
  await expect(page.getByRole('alertdialog')).toContainText('a clinician who speaks French natively');
  await page.getByRole('button', { name: 'Write it' }).press('Enter');
  await expect(note).toContainText('validée par charge nurse (CN) le 2026-11-25');
  await page.goto('/languages');
  await expect(page.getByRole('listitem').filter({ hasText: 'Français' })).toContainText('signed off');
  await expect(page.getByRole('listitem').filter({ hasText: 'Español' })).toContainText('machine-made');

  const chooser = page.waitForEvent('filechooser');
  await button(page, 'Open a file of wording …').press('Enter');
  const own = 'fr:\n  sentences:\n    caution.real-breach: "Incident : appelez le poste de garde."\n';
  await (await chooser).setFiles({ name: 'own.yaml', mimeType: 'text/yaml', buffer: Buffer.from(own) });
  await expect(page.getByText('In place: fr: 1.')).toBeVisible();
  await expect(page.getByRole('contentinfo')).toContainText('appelez le poste de garde');
  await expect(page.getByRole('listitem').filter({ hasText: 'Français' })).toContainText(
    'to be reviewed again',
  );
  await expect(note).toContainText('what it says has changed since');
});

test('a wrong file of wording is refused whole, with the place', async ({ page }, info) => {
  oneScreen(info);
  await page.goto('/languages');
  const chooser = page.waitForEvent('filechooser');
  await button(page, 'Open a file of wording …').press('Enter');
  const wrong = 'fr:\n  sentences:\n    no.such-code: "x"\n';
  await (await chooser).setFiles({ name: 'own.yaml', mimeType: 'text/yaml', buffer: Buffer.from(wrong) });
  await expect(page.getByRole('alert')).toContainText('Line 3, column');
  await expect(page.getByText('None are in place.')).toBeVisible();
});
