// The two ways in which a person reaches a thing in these tests: keys alone, or a finger alone. What the page itself saw is
// counted, so that a test by keys cannot lean on a pointer unnoticed, nor one by finger on a key or a mouse.
import { expect, type Locator, type Page } from '@playwright/test';
import { askedOf } from './page.ts';

export interface Hand {
  readonly press: (target: Locator) => Promise<void>;
  readonly type: (field: Locator, text: string) => Promise<void>;
  /** A day as '2026-11-25', in a field for days, which asks for it in the order of the machine's language. */
  readonly day: (field: Locator, day: string) => Promise<void>;
  readonly choose: (list: Locator, option: RegExp) => Promise<void>;
  /** One of a list that acts on Enter, or on the button beside it. */
  readonly take: (list: Locator, option: RegExp, button: Locator) => Promise<void>;
  /** A tick, or one of several of which only one can be chosen. */
  readonly tick: (box: Locator) => Promise<void>;
  readonly pick: (group: Locator, name: string) => Promise<void>;
  /** Typed, then taken from the sentences that are offered for it. */
  readonly addStep: (field: Locator, typed: string, sentence: RegExp) => Promise<void>;
  /** By shortcut where there are keys. */
  readonly undo: (button: Locator) => Promise<void>;
  readonly row: (grid: Locator, at: number) => Promise<void>;
}

/** Tab, or Shift and Tab where it lies behind, until it or something in it has the focus. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  const wayTo = askedOf(target, (element) => {
    const at = document.activeElement ?? document.body;
    if (element.contains(at)) return 'there';
    const after = at.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING;
    return after && at !== document.body ? 'Shift+Tab' : 'Tab';
  });
  for (let press = 0; press < 160; press += 1) {
    const way = await wayTo();
    if (way === 'there') return;
    await page.keyboard.press(way);
  }
  throw new Error(`${String(target)} was not reached by Tab`);
}

/** Whatever was pressed, something has the focus afterwards, so that the next key goes on from there. */
const goesOn = (page: Page): Promise<void> =>
  expect
    .poll(() => page.evaluate(() => document.activeElement?.tagName), 'what has the focus')
    .not.toBe('BODY');

const optionAt = async (list: Locator, option: RegExp): Promise<number> => {
  const at = await list.evaluate(
    (element, pattern) =>
      [...(element as HTMLSelectElement).options].findIndex(({ text }) => new RegExp(pattern).test(text)),
    option.source,
  );
  expect(at, `${option} among the choices`).toBeGreaterThan(-1);
  return at;
};

const offered = async (page: Page, sentence: RegExp): Promise<Locator> => {
  const option = page.getByRole('option').filter({ hasText: sentence }).first();
  await expect(option).toBeVisible();
  return option;
};

export function keys(page: Page): Hand {
  const { keyboard } = page;
  const times = async (key: string, count: number): Promise<void> => {
    for (let press = 0; press < count; press += 1) await keyboard.press(key);
  };
  const choose = async (list: Locator, option: RegExp): Promise<void> => {
    await tabTo(page, list);
    const at = await optionAt(list, option);
    await keyboard.press('Home');
    await times('ArrowDown', at);
    await expect(list.locator('option:checked')).toHaveText(option);
  };
  return {
    press: async (target) => {
      await tabTo(page, target);
      await keyboard.press('Enter');
      await goesOn(page);
    },
    type: async (field, text) => {
      await tabTo(page, field);
      await keyboard.press('Control+a');
      await keyboard.type(text);
    },
    day: async (field, day) => {
      await tabTo(page, field);
      const [year = '', month = '', date = ''] = day.split('-');
      for (const typed of [date + month + year, month + date + year]) {
        await times('ArrowLeft', 2);
        await keyboard.type(typed);
        if ((await field.inputValue()) === day) return;
      }
      await expect(field).toHaveValue(day);
    },
    choose,
    take: async (list, option) => {
      await choose(list, option);
      await keyboard.press('Enter');
    },
    tick: async (box) => {
      await tabTo(page, box);
      await keyboard.press('Space');
    },
    pick: async (group, name) => {
      await tabTo(page, group.locator('input:checked'));
      const names = await group
        .getByRole('radio')
        .evaluateAll((all) => all.map((one) => one.closest('label')?.textContent ?? ''));
      const from = await group
        .getByRole('radio')
        .evaluateAll((all) => all.findIndex((one) => (one as HTMLInputElement).checked));
      const to = names.indexOf(name);
      await times(to < from ? 'ArrowLeft' : 'ArrowRight', Math.abs(to - from));
      await expect(group.getByRole('radio', { name })).toBeChecked();
    },
    addStep: async (field, typed, sentence) => {
      await tabTo(page, field);
      await keyboard.type(typed);
      await offered(page, sentence);
      const texts = await page.getByRole('option').allTextContents();
      await times('ArrowDown', 1 + texts.findIndex((text) => sentence.test(text)));
      await keyboard.press('Enter');
    },
    undo: async (button) => {
      await expect(button).toBeEnabled();
      await keyboard.press('Control+z');
    },
    row: async (grid, at) => {
      await tabTo(page, grid);
      await keyboard.press('Home');
      await times('ArrowDown', at);
      await keyboard.press('Enter');
    },
  };
}

/** A list that the finger opens is the tablet's own: it cannot be driven from here, so its choice is made directly. */
export function finger(page: Page): Hand {
  const choose = async (list: Locator, option: RegExp): Promise<void> => {
    await list.selectOption({ index: await optionAt(list, option) });
  };
  const type = async (field: Locator, text: string): Promise<void> => {
    await field.tap();
    await field.fill(text);
  };
  const labelOf = (box: Locator): Locator => box.locator('xpath=ancestor-or-self::label').first();
  return {
    press: (target) => target.tap(),
    type,
    day: (field, day) => field.fill(day),
    choose,
    take: async (list, option, button) => {
      await choose(list, option);
      await button.tap();
    },
    tick: (box) => labelOf(box).tap(),
    pick: (group, name) => labelOf(group.getByRole('radio', { name })).tap(),
    addStep: async (field, typed, sentence) => {
      await type(field, typed);
      const option = await offered(page, sentence);
      await still(option);
      await option.tap();
    },
    undo: (button) => button.tap(),
    row: (grid, at) => grid.getByRole('row').nth(at).locator('.step-text').tap(),
  };
}

/** The list moves above the field when it no longer fits below: a finger waits for that. */
async function still(target: Locator): Promise<void> {
  let at = '';
  await expect
    .poll(async () => {
      const before = at;
      at = JSON.stringify(await target.boundingBox());
      return at === before;
    })
    .toBe(true);
}

/** What the page was touched with, from now on and over reloads: kinds of pointer, and 'key'. */
export async function touchedBy(page: Page): Promise<ReadonlySet<string>> {
  const seen = new Set<string>();
  await page.exposeFunction('touchedWith', (what: string) => seen.add(what));
  await page.addInitScript(() => {
    const tell = (window as unknown as { touchedWith: (what: string) => void }).touchedWith;
    addEventListener('keydown', (event) => event.isTrusted && tell('key'), true);
    for (const kind of ['pointerdown', 'pointermove'] as const)
      addEventListener(kind, (event) => event.isTrusted && tell(event.pointerType), true);
  });
  return seen;
}

/** Whoever asks says in one sentence what will be written; then it is written. */
export async function confirm(
  page: Page,
  hand: Pick<Hand, 'press'>,
  opens: Locator,
  sentence: RegExp,
): Promise<void> {
  await hand.press(opens);
  const dialog = page.getByRole('alertdialog');
  await expect(dialog.locator('.will-write')).toHaveText(sentence);
  await hand.press(dialog.getByRole('button', { name: 'Write it' }));
  await expect(dialog).toHaveCount(0);
}
