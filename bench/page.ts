// How long an edit takes in the page as its user sees it: from the key to the painted verdict on a draft of 100 steps, in
// Chromium, at this machine's speed and with the page's processor slowed to a quarter. Alt and an arrow move one step. Needs
// `npm run build` and an installed Chromium.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { freePort } from '../scripts/freePort.mjs';
import { printProcedure } from '../src/language/index.ts';
import { report, type Row } from './harness.ts';
import { hundred } from './hundred.ts';
import { chromiumPath } from '../scripts/chromium.mjs';

const EDITS = 60;
const CHROMIUM = chromiumPath();
const FRAME = 'under two frames, 33 ms';

interface Clock {
  samples: number[];
  worker: number[];
  asked: number;
}
declare const window: EventTarget & { clock: Clock };
declare const document: {
  querySelector(selector: string): { readonly textContent: string | null } | null;
};
declare const MutationObserver: new (
  hear: () => void,
) => {
  observe(target: object, options: object): void;
};
declare function requestAnimationFrame(work: () => void): void;

/** In the page: from the key until the frame in which the verdict is current again has been painted. */
function watch(): void {
  window.clock = { samples: [], worker: [], asked: 0 };
  const { clock } = window;
  window.addEventListener('keydown', () => (clock.asked = performance.now()), true);
  const status = document.querySelector('.write-status output');
  if (!status) throw new Error('no status');
  let stale = false;
  new MutationObserver(() => {
    const text = status.textContent ?? '';
    if (text.startsWith('Checking')) stale = true;
    if (!stale || !text.startsWith('Checked')) return;
    stale = false;
    const { asked } = clock;
    // After the frame: a task queued in its callback runs once it has been painted.
    requestAnimationFrame(() => setTimeout(() => clock.samples.push(performance.now() - asked)));
  }).observe(status, { childList: true, characterData: true, subtree: true });
}

async function edited(page: Page, slow: number): Promise<Row> {
  const client = await page.context().newCDPSession(page);
  await client.send('Emulation.setCPUThrottlingRate', { rate: slow });
  const rows = page.getByRole('grid', { name: 'Steps' }).getByRole('row');
  await rows.nth(10).focus();
  await page.evaluate(() => {
    window.clock.samples = [];
  });
  for (let edit = 0; edit < EDITS; edit += 1) {
    await page.keyboard.press(edit % 2 === 0 ? 'Alt+ArrowDown' : 'Alt+ArrowUp');
    await page.waitForFunction((count) => window.clock.samples.length > count, edit);
  }
  const samples = await page.evaluate(() => window.clock.samples);
  const speed = slow === 1 ? 'at full speed' : `page slowed ${slow} times`;
  return {
    name: `100 steps: from the key to the painted verdict, ${speed}`,
    samples,
    unit: 'ms',
    goal: FRAME,
  };
}

async function open(page: Page, port: number): Promise<void> {
  await page.goto(`http://127.0.0.1:${port}/write`);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'From a file …' }).press('Enter');
  const buffer = Buffer.from(printProcedure({ ...hundred(), agents: ['enveloped'] }));
  await (await chooser).setFiles({ name: 'hundred.yaml', mimeType: 'text/yaml', buffer });
  await page.getByText(/^Checked as it stands/).waitFor({ timeout: 120_000 });
  await page.evaluate(watch);
}

async function main(): Promise<void> {
  if (!existsSync(CHROMIUM) || !existsSync('dist/server.js')) {
    report([], [`not run: ${CHROMIUM} or dist/server.js (npm run build) is missing`]);
    return;
  }
  const port = await freePort();
  const server = spawn(process.execPath, ['dist/server.js'], {
    env: { ...process.env, PORT: String(port) },
    stdio: 'ignore',
  });
  const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking'];
  const browser = await chromium.launch({ executablePath: CHROMIUM, args });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await new Promise((resolve) => setTimeout(resolve, 1000));
    await open(page, port);
    const warm = await edited(page, 1);
    report([{ ...warm, samples: warm.samples.slice(10) }, await edited(page, 4)], []);
  } finally {
    await browser.close();
    server.kill();
  }
}

await main();
