// From the first load on the page needs no server: it is killed (SIGKILL) and every place still opens, a check is worked out,
// a draft is kept. A newer version is taken on a press and not before. At an address without https the page says what it
// cannot do.
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import type { JournalParts } from './journalPage.ts';
import { complaintsOf, violationsOf } from './page.ts';
import {
  type Ask,
  bundled,
  DIST,
  leadAt,
  type Server,
  serverOf,
  unitProgram,
  type UnitServer,
  unitServerOf,
} from './servers.ts';

declare const journal: JournalParts;

const PLACES = [
  '/',
  '/compare',
  '/write',
  '/versions',
  '/journal',
  '/languages',
  '/guide',
  '/logbook',
  '/evidence',
  '/device',
  '/device/exit/none',
  '/no/such/place',
] as const;

function copyOfBuild(): string {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-offline-'));
  cpSync(join(DIST, 'app'), join(folder, 'app'), { recursive: true });
  cpSync(join(DIST, 'server.js'), join(folder, 'server.js'));
  return folder;
}

async function keptWhole(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/device`);
  await expect(page.getByText('The whole page is kept on this device.')).toBeVisible({ timeout: 15_000 });
}

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** The same page under another version's name: a new build, as far as a browser can tell. */
function makeNewer(folder: string): void {
  const [page, worker] = [join(folder, 'app/index.html'), join(folder, 'app/sw.js')];
  const old = readFileSync(page, 'utf8');
  const version = /name="version" content="([^"]+)"/.exec(old)?.[1] ?? '';
  const newer = old.replace(version, '9.9.9-newer');
  writeFileSync(page, newer);
  const source = readFileSync(worker, 'utf8');
  writeFileSync(worker, source.replace(hashOf(old), hashOf(newer)).replaceAll(version, '9.9.9-newer'));
}

let journalScript: string;
let unitServer: string;

test.beforeAll(async () => {
  journalScript = await bundled('./journalPage.ts', 'browser');
  unitServer = await unitProgram();
});

test.afterAll(() => rmSync(dirname(unitServer), { recursive: true, force: true }));

// Servers are started and killed, and a whole page is kept each time.
test.describe.configure({ timeout: 60_000 });

test.skip(({ hasTouch }) => hasTouch, 'what is kept has no screen: once, on the desk, is enough');

/** Why the browser would not install the page. A window without a history never does. */
async function whyNotInstalled(page: Page): Promise<readonly string[]> {
  const session = await page.context().newCDPSession(page);
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  return installabilityErrors.map(({ errorId }) => errorId).filter((one) => one !== 'in-incognito');
}

test.describe('with a server of its own', () => {
  let folder: string;
  let server: Server;

  test.beforeEach(async () => {
    folder = copyOfBuild();
    server = await serverOf(join(folder, 'server.js'));
    await server.start();
  });

  test.afterEach(async () => {
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  });

  test('everything works after the server was killed, and a draft is kept', async ({ page }) => {
    const complaints = complaintsOf(page);
    await keptWhole(page, server.address);
    expect(await whyNotInstalled(page)).toEqual([]);
    await server.kill();
    for (const place of PLACES) {
      await page.goto(server.address + place);
      await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
    }
    await page.goto(`${server.address}/write`);
    await page.locator('.button.main').first().click();
    await expect(page).toHaveURL(/\/write\/[a-z0-9]+\//);
    const draft = page.url();
    await page.goto(server.address);
    // The invented unit's procedure, checked in a worker.
    await expect(page.getByRole('heading', { name: 'What the check finds in it' })).toBeVisible({
      timeout: 15_000,
    });
    await page.goto(draft);
    await page.reload();
    await expect(page.getByRole('heading', { level: 1, name: /^Write/ })).toHaveCount(1);
    expect(complaints).toEqual([]);
  });

  test('a newer version is taken on a press, and not during an exit', async ({ page }) => {
    await keptWhole(page, server.address);
    const before = await page.getByText(/^Doffline \d/).textContent();
    await page.evaluate(journalScript);
    await page.evaluate(async () => {
      localStorage.setItem('doffline-device', 'tablet-x');
      const { write } = journal.device('tablet-x');
      const { unit, device, kind, version, by, body } = write('exit.started');
      const at = new Date().toISOString();
      const began = journal.nextEntry(
        { number: 0, hash: '0'.repeat(64) },
        { unit, device, kind, version, at, by, body },
      );
      await (await journal.openIndexedDb()).append([began]);
    });
    makeNewer(folder);
    await server.kill();
    await server.start();
    await page.reload();
    await expect(page.getByText('A newer version is here.')).toBeVisible({ timeout: 15_000 });
    // Not by itself, not by a reload, not while the exit is open.
    await page.reload();
    await expect(page.getByText(before ?? '')).toBeVisible();
    await page.getByRole('button', { name: 'Load it' }).click();
    await expect(page.getByText('An exit is under way on this device.')).toBeVisible();
    await expect(page.getByText(before ?? '')).toBeVisible();
    await page.evaluate(journalScript);
    await page.evaluate(async () => {
      const store = await journal.openIndexedDb();
      const [first] = await store.read(1);
      const { unit, device } = first!.entry;
      const body = { exit: 'exit-1', how: 'finished', deviations: 0, linesNotSeen: 0 };
      const at = new Date().toISOString();
      const end = journal.nextEntry(first!.entry, {
        unit,
        device,
        kind: 'exit.ended',
        version: 1,
        at,
        by: null,
        body,
      });
      await store.append([end]);
    });
    await page.getByRole('button', { name: 'Load it' }).click();
    await expect(page.getByText(/^Doffline \d/)).not.toHaveText(before ?? '', { timeout: 15_000 });
    await expect(page.getByText('A newer version is here.')).toHaveCount(0);
  });
});

test.describe('with the unit’s server', () => {
  let server: UnitServer;

  test.beforeEach(async () => {
    server = await unitServerOf(unitServer);
  });

  test.afterEach(() => server.remove());

  async function joined(context: BrowserContext, ask: Ask, role = 'observer') {
    const page = await context.newPage();
    const { code } = await ask('/api/pairings', { label: 'Tablet in the anteroom', role });
    await page.goto(`${server.address}/device#pair=${code}`);
    await page.getByRole('button', { name: 'Join' }).click();
    await expect(page.getByText('All sent.')).toBeVisible({ timeout: 15_000 });
    return page;
  }

  /** Writes so many lines of an exit as the page does: stored first, then told. */
  const record = async (page: Page, count: number, first: boolean) =>
    page.evaluate(
      async ([many, begins]) => {
        const name = localStorage.getItem('doffline-device') ?? '';
        const store = await journal.openIndexedDb();
        const [last] = await store.read(Number.MAX_SAFE_INTEGER, { device: name, backwards: true, most: 1 });
        const { write } = journal.device(name, 'larkmoor-isolation', last?.entry);
        await store.append(
          Array.from({ length: many }, (_, at) =>
            write(begins && at === 0 ? 'exit.started' : 'exit.line-confirmed'),
          ),
        );
        await store.close();
        // As another tab of this browser makes itself heard.
        window.dispatchEvent(new StorageEvent('storage', { key: 'doffline-journal-written' }));
      },
      [count, first] as const,
    );

  const numbersThere = async (ask: Ask, device: string | null) =>
    (await ask('/api/entries?from=1&most=500')).entries
      .filter(({ entry }) => entry.device === device)
      .map(({ entry }) => entry.number);

  const upTo = (count: number) => Array.from({ length: count }, (_, index) => index + 1);
  const deviceOf = async (page: Page) => page.evaluate(() => localStorage.getItem('doffline-device'));

  test('entries wait while the server is gone, and are sent when it is back', async ({ context }) => {
    const ask = await leadAt(server.address);
    const page = await joined(context, ask);
    await expect(page.getByText('The whole page is kept on this device.')).toBeVisible({ timeout: 15_000 });
    await server.kill();
    await page.reload();
    await page.evaluate(journalScript);
    await record(page, 5, true);
    await expect(page.getByText(/^5 entries are waiting since/).first()).toBeVisible();
    await server.start();
    await page.getByRole('button', { name: 'Try now' }).click();
    await expect(page.getByText('All sent.')).toBeVisible({ timeout: 15_000 });
    expect(await numbersThere(ask, await deviceOf(page))).toEqual(upTo(5));
  });

  test('what was recorded before joining is told, stays, and can be saved', async ({ context }) => {
    const ask = await leadAt(server.address);
    const page = await context.newPage();
    await page.goto(`${server.address}/device`);
    await page.evaluate(journalScript);
    await record(page, 3, true);
    const before = await deviceOf(page);
    await expect(page.getByText(/^This device holds 3 entries that no server has\./)).toBeVisible();
    // An exit that is under way keeps a device from joining.
    await page.evaluate(async () => {
      const store = await journal.openIndexedDb();
      const name = localStorage.getItem('doffline-device') ?? '';
      const [last] = await store.read(Number.MAX_SAFE_INTEGER, { device: name, backwards: true, most: 1 });
      await store.append([journal.device(name, 'larkmoor-isolation', last?.entry).write('exit.ended')]);
      await store.close();
    });
    const { code } = await ask('/api/pairings', { label: 'Tablet in the anteroom', role: 'observer' });
    await page.goto(`${server.address}/device#pair=${code}`);
    await page.reload();
    await expect(page.getByText(/^This device holds 4 entries that no server has\./)).toBeVisible();
    await page.getByRole('button', { name: 'Join' }).click();
    await expect(page.getByText('All sent.')).toBeVisible({ timeout: 15_000 });
    await expect(page.getByText(/^4 entries from before this device joined stay/)).toBeVisible();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save them as a file' }).click();
    const file = await (await saving).path();
    const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
    expect(lines.map((one) => (JSON.parse(one) as { device: string }).device)).toEqual(
      Array.from({ length: 4 }, () => before),
    );
    expect(await numbersThere(ask, before)).toEqual([]);
  });

  test('fifty entries through a network that comes and goes: none lost, none twice', async ({ context }) => {
    const ask = await leadAt(server.address);
    const page = await joined(context, ask);
    await page.evaluate(journalScript);
    // Not by chance alone, so that a failure can be seen again.
    let dice = 20261125;
    const roll = (sides: number): number => {
      dice = (dice * 1103515245 + 12345) % 2147483648;
      return Math.floor((dice / 2147483648) * sides);
    };
    for (let line = 0; line < 50; line += 1) {
      const chance = roll(6);
      if (chance === 0) await context.setOffline(true);
      if (chance > 3) await context.setOffline(false);
      if (line === 20) await server.kill();
      if (line === 35) await server.start();
      await record(page, 1, line === 0);
    }
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Try now' }).click();
    await expect(page.getByText('All sent.')).toBeVisible({ timeout: 20_000 });
    await expect(page.getByText(/waiting since/)).toHaveCount(0);
    expect(await numbersThere(ask, await deviceOf(page))).toEqual(upTo(50));
  });

  test('two devices that were cut off tell one account', async ({ browser }) => {
    const ask = await leadAt(server.address);
    const contexts = [await browser.newContext(), await browser.newContext()];
    const pages = await Promise.all(contexts.map(async (context) => joined(context, ask)));
    for (const context of contexts) await context.setOffline(true);
    for (const [index, page] of pages.entries()) {
      await page.evaluate(journalScript);
      await record(page, 4, index === 0);
    }
    for (const context of contexts) await context.setOffline(false);
    for (const page of pages) {
      await page.getByRole('button', { name: 'Try now' }).click();
      await expect(page.getByText('All sent.')).toBeVisible({ timeout: 15_000 });
    }
    const told: (string | null)[] = [];
    for (const page of pages) {
      await page.getByRole('button', { name: 'Try now' }).click();
      await page.goto(`${server.address}/device/exit/exit-1`);
      await expect(page.getByRole('row')).toHaveCount(9, { timeout: 15_000 });
      await expect(page.getByText('not on the server yet')).toHaveCount(0);
      told.push(await page.getByRole('table').textContent());
    }
    expect(told[0]).toBe(told[1]);
    await Promise.all(contexts.map(async (context) => context.close()));
  });
});

test('an address without https says what it cannot do', async ({ context }) => {
  const page = await context.newPage();
  await context.route('http://anteroom.invalid/**', async (route) => {
    const { pathname } = new URL(route.request().url());
    const file = join(DIST, 'app', pathname.includes('.') ? pathname : 'index.html');
    await route.fulfill({ path: file });
  });
  await page.goto('http://anteroom.invalid/device');
  await expect(page.getByText(/^This address is not https/)).toBeVisible();
  await expect(page.getByText('Works without a network: no: this address is not https')).toBeVisible();
  await expect(page.getByText(/^(The browser has|This browser cannot be asked)/)).toBeVisible();
  expect(await violationsOf(page)).toEqual([]);
});
