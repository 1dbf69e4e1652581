// Browser tests against the built page, as the local server serves it, on three sizes of screen. Uses an installed
// Chromium; the flags keep it from calling home, which a closed network refuses many times at every start.
import { defineConfig } from '@playwright/test';
import { chromiumPath } from './scripts/chromium.mjs';
import { freePort } from './scripts/freePort.mjs';

// Read again by every worker, which inherits the environment and so the first one's choice.
process.env.DOFFLINE_TEST_PORT ??= String(await freePort());
const port = process.env.DOFFLINE_TEST_PORT;

const touch = { hasTouch: true };

/** What a finger could break: told on the tablet, which is what a unit has at its doors. */
const byFinger = /finger|touch|tap |display|metres|by night/;

/** What a narrow screen could break: told on the phone. Everything else is tried on the desk alone. */
const onNarrow = /rules|screen|size|sideways|light and dark/;

/** Of these the desk or the tablet tells all, whatever their titles say. */
const notNarrow =
  /beyond every size|is killed|stay awake|two pages on one draft|crashes at that moment|finger alone|touch alone|display|by night/;

export default defineConfig({
  testDir: 'test/browser',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  reporter: [
    ['list'],
    ['json', { outputFile: process.env.PLAYWRIGHT_JSON_OUTPUT_FILE ?? '.cache/browser.json' }],
  ],
  forbidOnly: process.env.CI === 'true',
  fullyParallel: true,
  workers: 2,
  retries: 0,
  // Generous, so that a busy machine is no failure: what is right does not wait for them.
  timeout: 60_000,
  expect: { timeout: 15_000 },
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // A trace keeps the whole page at every act and makes a long test take twice as long: asked for where one is looked at.
    trace: process.env.DOFFLINE_TRACE === '1' ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: chromiumPath(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } } },
    {
      name: 'tablet',
      grep: byFinger,
      grepInvert: /keeps to the rules, the screen/,
      use: { ...touch, viewport: { width: 1024, height: 768 } },
    },
    {
      name: 'phone',
      grep: onNarrow,
      grepInvert: notNarrow,
      use: { ...touch, viewport: { width: 390, height: 844 } },
    },
  ],
  webServer: {
    command: 'node dist/server.js',
    url: `http://127.0.0.1:${port}/`,
    env: { PORT: port },
    reuseExistingServer: false,
    stdout: 'ignore',
  },
});
