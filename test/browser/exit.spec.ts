// A real exit, from the version that the unit's journal holds as approved, as it goes when much goes wrong: the observer is
// relieved in the middle, two slips, one way on not taken and one taken, stops from both displays, something told at the
// end. The journal afterwards says what happened, in its order, and by whom.
import { expect, type Locator, type Page, test } from '@playwright/test';
import {
  fillPeople,
  answeredIn,
  button,
  entriesOf,
  line,
  onward,
  onwardTo,
  PEDAL,
  pause,
  type Row,
  shown,
} from './guideDrill.ts';
import { violationsOf } from './page.ts';
import { seed } from './versionSeed.ts';

/** Within the approval's time (versionSeed.ts). */
const NOW = new Date('2026-11-25T12:00:00Z');

async function beginExit(page: Page): Promise<string> {
  await page.clock.install({ time: NOW });
  await seed(page);
  await page.goto('/guide');
  await page.getByText('Exit: for real, with an approved version').click();
  await expect(page.getByRole('combobox', { name: 'Procedure' })).toContainText(
    'version 1, approved 2026-03-02',
  );
  await fillPeople(page);
  // Without the assistant whom its steps need it begins only knowingly.
  await page.getByRole('textbox', { name: 'Assistant' }).fill('');
  await expect(page.getByText(/^Steps that need an assistant: \d/)).toBeVisible();
  await button(page, 'Begin the exit').click();
  await expect(page.getByRole('alert')).toContainText('Before it begins');
  await page.getByRole('textbox', { name: 'Assistant' }).fill('EF');
  await button(page, 'Begin the exit').click();
  await expect(line(page)).toBeVisible();
  return new URL(page.url()).pathname.split('/').at(-1) ?? '';
}

/** Asked to take over, the other observer first names the wrong line and is refused, then the old one keeps it; then it is taken. */
async function handOver(page: Page): Promise<void> {
  const ask = async (): Promise<void> => {
    await button(page, 'More').click();
    await button(page, 'Hand over').click();
    await pause(page);
    await button(page, 'charge nurse (CN)').click();
    await pause(page);
  };
  await ask();
  await page.getByRole('button', { name: /^2: Look over all equipment/ }).click();
  await expect(page.getByRole('alert')).toContainText('Not the line confirmed last');
  await pause(page);
  // Still asked, though something else lay over it meanwhile.
  await button(page, 'Back to the line').click();
  await button(page, 'More').click();
  await button(page, 'Hand over').click();
  await pause(page);
  await button(page, 'Do not hand over').click();
  await expect(page.locator('.g-people')).toContainText('Observer: CD');
  await pause(page);
  await ask();
  await page.getByRole('button', { name: /^3: / }).click();
  await expect(page.locator('.g-people')).toContainText('Observer: CN');
  await pause(page);
}

async function slip(page: Page, name: RegExp): Promise<void> {
  await button(page, 'Something went wrong').click();
  await pause(page);
  await page.getByRole('button', { name }).first().click();
  await expect(page.getByRole('region', { name: 'Another way on' })).toBeVisible({ timeout: 20_000 });
  await pause(page);
}

/** A display says stop; it cannot go on, and the observer can. */
async function stopFrom(page: Page, role: 'wearer' | 'assistant'): Promise<void> {
  const display = await page.context().newPage();
  await display.goto(`${new URL(page.url()).pathname}/display/${role}`);
  await button(display, 'STOP').click();
  await expect(line(page)).toContainText('Nobody moves');
  await expect(button(display, 'Go on')).toHaveCount(0);
  await display.close();
  // A stop moves the screen first and is stored then.
  await expect(page.getByRole('button', { name: 'Go on unsaved' })).toBeHidden();
  const stopped = await shown(page);
  await page.keyboard.press('PageDown');
  expect(await shown(page)).toBe(stopped);
  await pause(page);
  await button(page, 'Go on').click();
  await expect(line(page)).toContainText('Last confirmed');
  await pause(page);
}

const DETAILS = ['slip', 'question', 'answer', 'text'] as const;

/** What happened, beside the lines that were read and the times that were kept: who, what, and its details. */
const toldIn = (rows: readonly Row[], names: Readonly<Record<string, string>>): readonly string[] =>
  rows
    .filter(({ kind }) => !/line-|timer-/.test(kind))
    .map(({ kind, by, body }) => {
      const details = DETAILS.map((name) => body[name]).filter((one) => typeof one === 'string');
      const who = by === null ? [] : [names[by] ?? by];
      return [...who, kind.replace('exit.', ''), ...details].join(' ');
    });

test('a real exit of an approved version: the journal says what happened, in order and by whom', async ({
  page,
}) => {
  test.setTimeout(180_000);
  const exit = await beginExit(page);
  await expect(page.getByText('DRILL', { exact: true })).toHaveCount(0);
  await onwardTo(page, PEDAL, 4);
  await handOver(page);
  await onwardTo(page, PEDAL, 6);
  await slip(page, /apron swings against the body/i);
  // Place by place, what is harder to reach first; what stays as it is, is folded.
  const offer = page.getByRole('region', { name: 'Another way on' });
  await expect(offer.getByText(/^1 place harder to reach/)).toBeVisible();
  await expect(offer.getByText(/back of the .*→/)).toBeVisible();
  await expect(offer.getByText(/places take the same as read/)).toBeVisible();
  await expect(offer.getByText(/→/)).toHaveCount(1);
  await button(page, 'Keep to the script').click();
  await button(page, 'Not possible in this room').click();
  await pause(page);
  await onwardTo(page, PEDAL, 9);
  await slip(page, /gloves snap back/i);
  await button(page, 'Take this way').click();
  await expect(page.getByRole('region', { name: 'Another way on' })).toHaveCount(0);
  await pause(page);
  await stopFrom(page, 'wearer');
  await stopFrom(page, 'assistant');

  const question = page.getByText('Did anything splash on you?').first();
  while ((await question.count()) === 0) await onward(page, PEDAL);
  await button(page, 'Yes').click();
  await expect(page.getByRole('list', { name: 'Told by the wearer' })).toContainText('splash');
  await pause(page);
  while ((await page.locator('.g-outcome').count()) === 0) await onward(page, PEDAL);
  await expect(page.locator('.g-outcome')).toContainText('Deviations recorded');

  const rows = await entriesOf(page, exit);
  const { wearer, observer, assistants, ...begun } = rows[0]?.body ?? {};
  expect(begun).toMatchObject({ drill: false, version: '1', room: 'red-1' });
  const names = {
    [String(observer)]: 'CD',
    [String(wearer)]: 'AB',
    [String(assistants)]: 'EF',
    'p-nurseaaa': 'CN',
  };
  expect(toldIn(rows, names)).toEqual([
    'CD started',
    'CN handed-over',
    'CN slip-recorded apron-off:swing',
    'continuation-offered',
    'CN continuation-answered Not possible in this room',
    'CN slip-recorded outer-gloves-off:snap',
    'continuation-offered',
    'CN continuation-answered',
    'AB stopped',
    'CN resumed',
    'EF stopped',
    'CN resumed',
    'CN question-answered tear no',
    'CN question-answered sting no',
    'CN question-answered splash yes',
    'CN question-answered faint no',
    'CN question-answered touch no',
    'CN ended',
  ]);
  const choices = rows
    .filter(({ kind }) => kind === 'exit.continuation-answered')
    .map(({ body }) => body.choice);
  expect(choices).toEqual([null, expect.stringMatching(/^way-/)]);
  // Every line once; those before the relief by the first observer, those after it by the second.
  const lines = answeredIn(rows);
  expect(new Set(lines).size).toBe(lines.length);
  const relief = rows.findIndex(({ kind }) => kind === 'exit.handed-over');
  rows.forEach(({ kind, by }, at) => {
    if (kind === 'exit.line-confirmed') expect(names[by ?? '']).toBe(at < relief ? 'CD' : 'CN');
  });
  expect(rows.at(-1)?.body).toMatchObject({ how: 'finished', deviations: 3, linesNotSeen: 0 });
});

const card = (page: Page, name: string): Locator => page.getByRole('listitem', { name, exact: true });

test('a real exit signs in who takes part: seen in the logbook, handed over, ended, and once each', async ({
  page,
  context,
}, info) => {
  test.setTimeout(180_000);
  await beginExit(page);
  const book = await context.newPage();
  await book.clock.install({ time: NOW });
  await book.goto('/logbook');
  await expect(book.getByRole('heading', { name: 'Red 1: 3 in' })).toBeVisible();
  await expect(card(book, 'observer (CD), Observer')).toContainText('By the exit that is read aloud');
  await expect(card(book, 'wearer (AB), Wearer')).toContainText('observer (CD)');
  await expect(book.getByText('The observer is not signed in')).toHaveCount(0);
  await book.screenshot({ path: `.cache/screens/exit-logbook-${info.project.name}.png`, fullPage: true });
  expect(await violationsOf(book)).toEqual([]);

  await onwardTo(page, PEDAL, 4);
  await handOver(page);
  await book.reload();
  await expect(card(book, 'charge nurse (CN), Observer')).toBeVisible();
  await expect(card(book, 'observer (CD), Observer')).toHaveCount(0);
  await expect(card(book, 'wearer (AB), Wearer')).toContainText('charge nurse (CN)');

  // Signed in by hand as well.
  await book.getByRole('link', { name: 'Sign in', exact: true }).first().click();
  await book.getByLabel('Who', { exact: true }).selectOption({ label: 'charge nurse (CN)' });
  await book.getByText('Observer', { exact: true }).first().click();
  await book.getByLabel('Written by').selectOption({ label: 'charge nurse (CN)' });
  await button(book, 'Sign in').click();
  await expect(book.getByRole('heading', { name: 'Red 1: 3 in' })).toBeVisible();
  await expect(card(book, 'charge nurse (CN), Observer')).toHaveCount(1);

  await button(page, 'STOP').click();
  await expect(line(page)).toContainText('Nobody moves');
  await book.getByRole('link', { name: 'Sign out assistant (EF)' }).click();
  await expect(book.getByText('signs them out as it ends')).toBeVisible();
  await book.goto('/logbook/with');
  await book.getByLabel('With whom').selectOption({ label: 'wearer (AB)' });
  const answer = book.getByRole('region', { name: 'Answer' });
  for (const who of ['observer (CD)', 'charge nurse (CN)', 'assistant (EF)'])
    await expect(answer.getByRole('rowheader', { name: who })).toHaveCount(1);
});
