// What the guide does beside the screen, with fakes of the device in the page: it speaks in the wearer's language where a voice
// is there and says so where none is, keeps the screen awake or says that it may go dark, sounds and shakes.
import { expect, type Page, test } from '@playwright/test';
import { button, fill, line, next, onward, onwardTo, PEDAL, pause } from './guideDrill.ts';

const SUIT = 'larkmoor-suit-doffing';
const NO_VOICE = 'No voice for this language here: read it yourself.';
const DARK = 'This screen may go dark by itself.';

interface Fakes {
  readonly said: { readonly text: string; readonly lang: string }[];
  readonly asked: string[];
  readonly shaken: number[][];
  readonly tones: number[];
  voices: readonly { readonly lang: string; readonly localService: boolean }[];
  refuses: boolean;
  hide: (hidden: boolean) => void;
  comeVoices: () => void;
}
declare const fakes: Fakes;

async function fake(page: Page, languages: readonly string[]): Promise<void> {
  await page.clock.install();
  await page.addInitScript((langs) => {
    const made: Fakes = {
      said: [],
      asked: [],
      shaken: [],
      tones: [],
      voices: langs.map((lang) => ({ lang, localService: true })),
      refuses: sessionStorage.getItem('refuses') !== null,
      hide: () => undefined,
      comeVoices: () => undefined,
    };
    const set = (target: object, name: string, value: unknown): void => {
      Object.defineProperty(target, name, { value, configurable: true });
    };
    set(globalThis, 'fakes', made);
    const speech = new EventTarget();
    set(speech, 'getVoices', () => made.voices);
    set(speech, 'speak', (saying: { text: string; lang: string }) => made.said.push({ ...saying }));
    set(speech, 'cancel', () => undefined);
    made.comeVoices = () => speech.dispatchEvent(new Event('voiceschanged'));
    set(globalThis, 'speechSynthesis', speech);
    set(
      globalThis,
      'SpeechSynthesisUtterance',
      class {
        text: string;
        constructor(text: string) {
          this.text = text;
        }
      },
    );
    // The browser takes a wake lock back when the page is hidden.
    let held: EventTarget | undefined;
    let hidden = false;
    Object.defineProperty(Document.prototype, 'visibilityState', {
      get: () => (hidden ? 'hidden' : 'visible'),
    });
    const letGo = (): void => {
      held?.dispatchEvent(new Event('release'));
      held = undefined;
    };
    made.hide = (now) => {
      hidden = now;
      if (now) letGo();
      document.dispatchEvent(new Event('visibilitychange'));
    };
    set(navigator, 'wakeLock', {
      request: (what: string) => {
        made.asked.push(what);
        if (made.refuses) return Promise.reject(new DOMException('battery low', 'NotAllowedError'));
        const lock = new EventTarget();
        set(lock, 'release', () => Promise.resolve(letGo()));
        held = lock;
        return Promise.resolve(lock);
      },
    });
    set(navigator, 'vibrate', (pattern: number[]) => made.shaken.push(pattern));
    set(
      globalThis,
      'AudioContext',
      class {
        currentTime = 0;
        destination = {};
        createGain = () => ({ gain: { value: 0 }, connect: () => undefined });
        createOscillator = () => {
          const frequency = { value: 0 };
          return {
            frequency,
            connect: (next: unknown) => next,
            start: () => made.tones.push(frequency.value),
            stop: () => undefined,
          };
        };
      },
    );
  }, languages);
}

/** A drill whose wearer is read to in French. */
async function begin(page: Page): Promise<void> {
  await fill(page, SUIT);
  await page.getByLabel('Language of the wearer').selectOption('fr');
  await button(page, 'Begin the drill').click();
  await expect(line(page)).toBeVisible();
}

const said = (page: Page) => page.evaluate(() => fakes.said);

test('speaks to each in their language where it has a voice, and says where it has none', async ({
  page,
}) => {
  await fake(page, ['en-GB', 'fr-FR']);
  await begin(page);
  await onwardTo(page, PEDAL, 2);
  await expect(page.getByText(NO_VOICE)).toHaveCount(0);
  const all = await said(page);
  expect(all[0]?.lang).toBe('en-GB');
  expect(all.at(-1)?.lang).toBe('fr-FR');
  // What is spoken is what stands there.
  expect(await page.locator('.g-rows').first().textContent()).toBe(
    all.at(-1)?.text.replaceAll(/ (?=[A-Z])/g, ''),
  );
  // The French voice is gone: nothing is said in another, and the screen says so.
  await page.evaluate(() => {
    fakes.voices = fakes.voices.slice(0, 1);
  });
  await onwardTo(page, PEDAL, 3);
  await expect(page.getByText(NO_VOICE)).toBeVisible();
  expect(await said(page)).toHaveLength(all.length);
  // It comes late: the line that still stands there is said.
  await page.evaluate(() => {
    fakes.voices = [{ lang: 'fr-CA', localService: true }];
    fakes.comeVoices();
  });
  await expect(page.getByText(NO_VOICE)).toHaveCount(0);
  expect((await said(page)).at(-1)?.lang).toBe('fr-CA');
  // A voice that is fetched from elsewhere does not count.
  await page.evaluate(() => {
    fakes.voices = [{ lang: 'fr-FR', localService: false }];
  });
  const before = (await said(page)).length;
  await onwardTo(page, PEDAL, 4);
  await expect(page.getByText(NO_VOICE)).toBeVisible();
  expect(await said(page)).toHaveLength(before);
  await button(page, 'Voice off').click();
  await expect(button(page, 'Voice off')).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText(NO_VOICE)).toHaveCount(0);
});

test('asks for the screen to stay awake, again when it is looked at again, and says when it may not', async ({
  page,
}) => {
  await fake(page, ['en-GB']);
  await begin(page);
  const asked = () => page.evaluate(() => fakes.asked);
  expect(await asked()).toEqual(['screen']);
  await expect(page.getByText(DARK)).toHaveCount(0);
  await page.evaluate(() => fakes.hide(true));
  await expect(page.getByText(DARK)).toBeVisible();
  await page.evaluate(() => fakes.hide(false));
  await expect(page.getByText(DARK)).toHaveCount(0);
  expect(await asked()).toEqual(['screen', 'screen']);
  await page.evaluate(() => sessionStorage.setItem('refuses', 'yes'));
  await page.reload();
  await expect(line(page)).toBeVisible();
  await expect(page.getByText(DARK)).toBeVisible();
  expect(await asked()).toEqual(['screen']);
});

test('a stop and a time that is up are heard and felt', async ({ page }) => {
  await fake(page, ['en-GB', 'fr-FR']);
  await begin(page);
  const felt = () => page.evaluate(() => [fakes.shaken, fakes.tones] as const);
  await onwardTo(page, PEDAL, 3);
  expect(await felt()).toEqual([[], []]);
  await button(page, 'STOP').click();
  await expect.poll(felt).toEqual([[[500]], [392, 294]]);
  await pause(page);
  await button(page, 'Go on').click();
  await pause(page);
  await page.keyboard.press('PageDown');
  await pause(page);
  while ((await next(page).textContent()) !== 'Start the time') await onward(page, PEDAL);
  await onward(page, PEDAL);
  expect(await felt()).toEqual([
    [[500], [200, 100, 200]],
    [392, 294, 523, 659],
  ]);
});
