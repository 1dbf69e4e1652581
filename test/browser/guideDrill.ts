// A drill in a real browser for guide.spec.ts: how it is begun, read on with the plainest press, and what the journal holds of it.
import { expect, type Locator, type Page } from '@playwright/test';
import { sideways, violationsOf } from './page.ts';

/** Longer than a bounce, shorter than any time that is kept. */
const PAUSE = 600;
/** Longer than the longest time of a step. */
const LONG = 16 * 60_000;

export const line = (page: Page): Locator => page.getByRole('region', { name: 'The line', exact: true });
export const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', { name, exact: true });
export const next = (page: Page): Locator => page.locator('.g-presses-next button').first();

/** Time goes on by itself, and further when it is told to. */
export const pause = async (page: Page): Promise<void> => page.clock.fastForward(PAUSE);

/** Who takes part, and where. */
export async function fillPeople(page: Page, room = 'Red 1'): Promise<void> {
  const field = (name: string): Locator => page.getByRole('textbox', { name });
  await field('Wearer').fill('ab');
  await field('Observer').fill('CD');
  await field('Assistant').fill('EF');
  await field('Room').fill(room);
}

export async function fill(page: Page, procedure: string, room?: string): Promise<void> {
  await page.goto(`/guide?procedure=${procedure}`);
  await fillPeople(page, room);
}

/** Begins a drill by click; returns its id. */
export async function begin(page: Page, procedure: string, room?: string): Promise<string> {
  await fill(page, procedure, room);
  await button(page, 'Begin the drill').click();
  await expect(line(page)).toBeVisible();
  return new URL(page.url()).pathname.split('/').at(-1) ?? '';
}

export interface Hands {
  readonly confirm: (page: Page) => Promise<void>;
  readonly no: (page: Page) => Promise<void>;
}

const tap = async (target: Locator): Promise<void> => target.tap();

export const TOUCH: Hands = {
  confirm: async (page) => tap(next(page)),
  no: async (page) => tap(button(page, 'No')),
};
export const PEDAL: Hands = {
  confirm: async (page) => page.keyboard.press('PageDown'),
  no: async (page) => page.keyboard.press('n'),
};

interface Standing {
  /** What stands on the screen, to see that it moved. */
  readonly shown: string;
  /** The words of the first press that goes on; null where a time has to pass first, or a question is to be answered. */
  readonly next: string | null;
  readonly asks: boolean;
  readonly isSaving: boolean;
}

/** All of it at one look: a drill has many lines, and every look takes its time. */
const standing = async (page: Page): Promise<Standing> =>
  page.locator('.g-observer').evaluate((screen) => {
    const text = (part: string): string => screen.querySelector(part)?.textContent ?? '';
    const presses = [...screen.querySelectorAll('button')].map((press) => press.textContent);
    return {
      shown: [text('.g-step'), text('.g-line'), text('.g-presses-next'), text('.g-presses-more')].join('|'),
      next: screen.querySelector('.g-presses-next button')?.textContent ?? null,
      asks: presses.includes('Not sure'),
      isSaving: text('.g-saved').includes('Saving'),
    };
  });

export const shown = async (page: Page): Promise<string> => (await standing(page)).shown;

/** One press on, and until the screen has moved. A time that is started is let pass. */
export async function onward(page: Page, hands: Hands): Promise<void> {
  let before = await standing(page);
  // After a crash a time may still run.
  if (before.next === null && !before.asks) {
    await page.clock.fastForward(LONG);
    await expect(next(page)).toBeVisible();
    before = await standing(page);
  }
  if (before.asks) await hands.no(page);
  else await hands.confirm(page);
  const hasMoved = async (): Promise<boolean> => {
    const now = await standing(page);
    return now.shown !== before.shown && !now.isSaving;
  };
  await expect.poll(hasMoved, { intervals: [20, 50, 100] }).toBe(true);
  if (before.next === 'Start the time') {
    await page.clock.fastForward(LONG);
    await expect(button(page, 'Seen: as read')).toBeVisible();
  } else await pause(page);
}

/** Reads on until this step is read. */
export async function onwardTo(page: Page, hands: Hands, step: number): Promise<void> {
  const there = async (): Promise<boolean> => (await shown(page)).startsWith(`Step ${step} of`);
  for (let turn = 0; turn < 200; turn += 1) {
    if (await there()) return;
    await onward(page, hands);
  }
  throw new Error(`step ${step} was not reached`);
}

export interface Row {
  readonly kind: string;
  readonly by: string | null;
  readonly body: Readonly<Record<string, unknown>>;
}

/** The entries of an exit as they lie in the browser's database, in their order. */
export async function entriesOf(page: Page, exit: string): Promise<readonly Row[]> {
  const texts = await page.evaluate(
    async () =>
      new Promise<readonly string[]>((resolve, reject) => {
        const opening = indexedDB.open('doffline-journal');
        opening.addEventListener('error', () => reject(new Error('no journal')));
        opening.addEventListener('success', () => {
          const all = opening.result.transaction('entries').objectStore('entries').getAll();
          all.addEventListener('success', () => {
            opening.result.close();
            resolve((all.result as { text: string }[]).map(({ text }) => text));
          });
        });
      }),
  );
  return texts
    .map((text) => JSON.parse(text) as Row)
    .filter(({ body }) => body.exit === exit || body.visit === exit || body.id === exit);
}

/** What was answered, line by line. */
export const answeredIn = (rows: readonly Row[]): readonly unknown[] =>
  rows.filter(({ kind }) => kind === 'exit.line-confirmed').map(({ body }) => body.line);

/** Light on dark is read as well as dark on light. */
export async function hasContrast(page: Page): Promise<void> {
  expect(await violationsOf(page, ['color-contrast'])).toEqual([]);
}

/** Keys whose words are wider than they are. */
const overflowing = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.g-page button')].flatMap((key) => {
      const words = document.createRange();
      words.selectNodeContents(key);
      return words.getBoundingClientRect().width > key.getBoundingClientRect().width + 0.5
        ? [key.textContent]
        : [];
    }),
  );

/** No violation of the accessibility rules, nothing wider than the screen, nothing too small for a gloved finger. */
export async function keepsToTheRules(page: Page): Promise<void> {
  expect(await violationsOf(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('.g-page :is(button, select, input, a)')]
      .map((target) => ({ high: target.getBoundingClientRect().height, text: target.textContent }))
      .filter(({ high }) => high > 0 && high < 63.5)
      .map(({ high, text }) => `${text}: ${high}`),
  );
  expect(small).toEqual([]);
  expect(await overflowing(page)).toEqual([]);
}
