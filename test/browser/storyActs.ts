// The acts of a new user's whole story, from an empty browser to paper; each with whatever hand the test gives. The procedure is
// small and invented: two pairs of gloves, gown, respirator and shield, written with two forgotten hand hygienes.
import { expect, type Locator, type Page } from '@playwright/test';
import { confirm, type Hand } from './hands.ts';

const TITLE = 'Anteroom doffing (invented)';
/** Half a year from now. */
const REVIEW = new Date(Date.now() + 182 * 86_400_000).toISOString().slice(0, 10);
const UNIT = 'Larkmoor General Hospital (invented)';

const WORN = [
  'boot covers',
  'inner gloves',
  'gown',
  'N95 respirator',
  'face shield',
  'outer gloves',
] as const;
const BARE = ['scalp', 'ears', 'neck', 'ankle'] as const;

/** What is typed, and the sentence that is then the first to be offered. No hand hygiene after gloves, nor after boot covers. */
const STEPS: readonly (readonly [typed: string, sentence: RegExp])[] = [
  ['observer call', /^The observer: Call and wait for the answer\.$/],
  ['look over', /^Look over all equipment/],
  ['clean hands', /^Clean both hands.*until dry/],
  ['go doffing', /^Go to the doffing area\.$/],
  ['remove outer gloves', /^Remove the outer gloves: peel/],
  ['remove shield', /^Remove the face shield: by the strap/],
  ['clean hands', /^Clean both hands.*until dry/],
  ['remove gown', /^Remove the gown: take hold of the inside/],
  ['clean hands', /^Clean both hands.*until dry/],
  ['sit chair', /^Sit down on the chair\.$/],
  ['remove boot covers', /^Remove the boot covers: seated/],
  ['remove n95', /^Remove the N95 respirator: lower strap first/],
  ['clean hands', /^Clean both hands.*until dry/],
  ['remove inner gloves', /^Remove the inner gloves: peel/],
  ['clean hands', /^Clean both hands.*until dry/],
  ['stand clean side', /^Stand up with the feet on the floor of the clean side\.$/],
];

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });
const link = (page: Page, name: string): Locator => page.getByRole('link', { name, exact: true });
const grid = (page: Page): Locator => page.getByRole('grid', { name: 'Steps' });
const rows = (page: Page): Locator => grid(page).getByRole('row');

const sentences = (page: Page): Locator => rows(page).locator('.step-text');

const checked = (page: Page): Promise<void> =>
  expect(page.getByText('Checked as it stands.')).toBeVisible({ timeout: 60_000 });

export async function begin(page: Page, hand: Hand): Promise<void> {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await hand.press(link(page, 'Write a new one'));
  await hand.press(button(page, 'New doffing'));
  await hand.type(page.getByLabel('Title', { exact: true }), TITLE);
}

export async function dress(page: Page, hand: Hand): Promise<void> {
  const list = page.getByLabel('Put on over it', { exact: true });
  for (const item of WORN)
    await hand.take(list.first(), new RegExp(`^${item}$`), button(page, 'Put on: Put on over it').first());
  await expect(page.getByRole('img', { name: new RegExp(WORN.join(', ')) })).toBeVisible();
  await hand.press(page.getByText('Bare on purpose (0)'));
  for (const place of BARE) await hand.tick(page.getByRole('checkbox', { name: place, exact: true }));
  await hand.press(button(page, '+ observer'));
  const observer = page.getByRole('region', { name: 'The observer' });
  await hand.take(
    observer.getByLabel('Put on over it', { exact: true }),
    /^shoe covers$/,
    observer.getByRole('button', { name: 'Put on: Put on over it' }),
  );
  await expect(observer.getByRole('img', { name: /wearing shoe covers$/ })).toBeVisible();
}

export async function furnish(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Next: Room'));
  const area = page.getByRole('region', { name: 'Doffing area' });
  await hand.take(
    area.getByLabel('Fixture for doffing area', { exact: true }),
    /^chair$/,
    area.getByRole('button', { name: 'Add: Fixture for doffing area' }),
  );
  const chair = area.getByRole('listitem').filter({ hasText: /^chair/ });
  await hand.press(chair.locator('summary'));
  await hand.tick(chair.getByRole('checkbox', { name: 'Kept clean (protected)' }));
  await expect(chair.getByText('kept clean', { exact: true })).toBeVisible();
}

export async function writeSteps(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Next: Steps'));
  for (const [at, [typed, sentence]] of STEPS.entries()) {
    await hand.addStep(page.getByRole('combobox', { name: 'Add a step' }), typed, sentence);
    await expect(rows(page)).toHaveCount(at + 1);
  }
}

const FORGOTTEN = 'Remove the N95 respirator';

/** The open route that stands at the respirator, and the mend for it: pressed, undone, redone. */
export async function mend(page: Page, hand: Hand): Promise<void> {
  await checked(page);
  await expect(page.getByText('Open route', { exact: true }).first()).toBeVisible();
  const at = (await rows(page).allTextContents()).findIndex((text) => text.includes(FORGOTTEN));
  await hand.row(grid(page), at);
  await expect(page.getByRole('heading', { name: `Step ${at + 1} of ${STEPS.length}` })).toBeVisible();
  await expect(page.getByText(/^Open route to the wearer's/).first()).toBeVisible();
  await hand.press(button(page, /^Apply this mend: .*clean both/).first());
}

/** Nothing of it is lost, by undo nor by a reload. */
export async function undoneAndRedone(page: Page, hand: Hand): Promise<void> {
  await hand.undo(button(page, /^Undo: Mend/));
  await hand.press(button(page, /^Redo: Mend/));
  await expect(button(page, /^Undo: Mend/)).toBeEnabled();
}

/** What was written stands there again, word by word. */
export async function reload(page: Page): Promise<void> {
  const before = await sentences(page).allTextContents();
  await page.reload();
  await expect(sentences(page)).toHaveText(before);
}

export async function order(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Better order …'));
  await hand.pick(page.getByRole('radiogroup', { name: 'Time for the proof' }), '10 seconds');
  await hand.press(button(page, 'Search for a better order'));
  await expect(page.getByRole('heading', { name: 'The order found' })).toBeVisible({ timeout: 60_000 });
}

export async function takeOver(page: Page, hand: Hand): Promise<void> {
  await hand.press(button(page, 'Take this order into a draft'));
  await expect(button(page, 'Undo: Better order')).toBeVisible();
  await checked(page);
}

/** Every departure that stands in the way, one after the other. */
export async function acceptTheRest(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Review'));
  await expect(page.getByText('What the check found in exactly this draft')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('These errors must be mended. They cannot be accepted:')).toHaveCount(0);
  const left = await page.locator('.hinders li li').allTextContents();
  expect(left.length).toBeGreaterThan(0);
  await hand.press(link(page, 'Accept in writing'));
  const accepted = page.getByRole('region', { name: 'Accepted in writing' });
  for (const [at, what] of left.entries()) {
    await hand.choose(accepted.getByLabel('Accept in writing'), new RegExp(`^${escaped(what)}`));
    await hand.type(accepted.getByLabel('Why', { exact: true }), 'This equipment leaves no other way.');
    if (at === 0) {
      await hand.type(accepted.getByLabel(/^Who accepts it/), 'infection-prevention lead');
      await hand.day(accepted.getByLabel('To be looked at again on'), REVIEW);
    }
    await hand.press(accepted.getByRole('button', { name: 'Accept it' }));
    await expect(accepted.getByRole('button', { name: /^No longer accept/ })).toHaveCount(at + 1);
  }
}

async function addMember(page: Page, hand: Hand, role: string, initials: string): Promise<void> {
  await hand.type(page.getByLabel('Role (never a name)'), role);
  await hand.type(page.getByLabel(/^Initials/), initials);
  await confirm(page, hand, button(page, 'Add to the staff list …'), new RegExp(`${role}.*${initials}`));
}

export async function send(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Review'));
  await expect(page.getByText('What the check found in exactly this draft')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('heading', { name: 'It cannot be sent yet' })).toHaveCount(0);
  await hand.type(page.getByLabel('Name of the unit'), UNIT);
  await addMember(page, hand, 'infection-prevention lead', 'IL');
  await addMember(page, hand, 'charge nurse', 'CN');
  await hand.choose(page.getByLabel('Who sends it'), /\(IL\)/);
  await hand.tick(page.getByRole('checkbox', { name: /\(CN\)/ }));
  await confirm(
    page,
    hand,
    button(page, 'Send for review …'),
    /\(IL\) sent version 1 .* to charge nurse \(CN\)/,
  );
  await expect(page.getByText('It is under review: nobody has approved it yet.')).toBeVisible();
}

/** Another role than who sent it. */
export async function approve(page: Page, hand: Hand): Promise<void> {
  await hand.press(link(page, 'Versions'));
  await hand.press(
    page
      .getByRole('main')
      .getByRole('link', { name: new RegExp(`^${escaped(TITLE)}`) })
      .first(),
  );
  await hand.tick(
    page.getByRole('group', { name: /^Who approves/ }).getByRole('checkbox', { name: /\(CN\)/ }),
  );
  const approves = button(page, 'Approve version 1 …');
  await expect(approves).toBeEnabled({ timeout: 60_000 });
  await confirm(
    page,
    hand,
    approves,
    /charge nurse \(CN\) approved version 1 .*departures? accepted with it/,
  );
  await expect(page.getByText('Version 1 is approved and in force.')).toBeVisible();
}

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
