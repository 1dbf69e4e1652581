// From the first load on the page needs no server: it is killed (SIGKILL) and every place still opens, a check is worked out,
// a draft is kept. A newer version is taken on a press and not before. At an address without https the page says what it
// cannot do.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const PLACES = ['/', '/compare', '/write', '/evidence', '/device', '/no/such/place'] as const;

/** A port that nobody uses. */
async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  return typeof address === 'object' && address !== null ? address.port : 0;
}

interface Server {
  readonly address: string;
  readonly start: () => Promise<void>;
  readonly kill: () => Promise<void>;
}

/** The built server as a process of its own, over a copy of the page that a test may change. */
async function serverOver(folder: string): Promise<Server> {
  const port = await freePort();
  let running: ChildProcess | undefined;
  const address = `http://127.0.0.1:${port}`;
  return {
    address,
    start: async () => {
      running = spawn(process.execPath, [join(folder, 'server.js')], {
        env: { ...process.env, PORT: String(port) },
        stdio: 'ignore',
      });
      await expect
        .poll(async () =>
          fetch(address).then(
            ({ ok }) => ok,
            () => false,
          ),
        )
        .toBe(true);
    },
    kill: async () => {
      const ended = running && once(running, 'exit');
      running?.kill('SIGKILL');
      running = undefined;
      await ended;
    },
  };
}

function copyOfBuild(): string {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-offline-'));
  cpSync(join(DIST, 'app'), join(folder, 'app'), { recursive: true });
  cpSync(join(DIST, 'server.js'), join(folder, 'server.js'));
  return folder;
}

/** Everything the page complains about. */
function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return complaints;
}

async function keptWhole(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/device`);
  await expect(page.getByText('The whole page is kept on this device.')).toBeVisible({ timeout: 15_000 });
}

test.describe('with a server of its own', () => {
  let folder: string;
  let server: Server;

  test.beforeEach(async () => {
    folder = copyOfBuild();
    server = await serverOver(folder);
    await server.start();
  });

  test.afterEach(async () => {
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  });

  test('everything works after the server was killed', async ({ page }) => {
    const complaints = complaintsOf(page);
    await keptWhole(page, server.address);
    await server.kill();
    for (const place of PLACES) {
      await page.goto(server.address + place);
      await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
    }
    await page.goto(server.address);
    // The invented unit's procedure, checked in a worker.
    await expect(page.getByRole('heading', { name: 'What the check finds in it' })).toBeVisible({
      timeout: 15_000,
    });
    expect(complaints).toEqual([]);
  });
});
