// The tablet's journal in a real browser, at an address without https, where neither crypto.subtle nor locks are to be had:
// what was acknowledged outlives a reload and a browser that crashes, and two pages write one chain.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium, expect, type Page, test } from '@playwright/test';
import { build } from 'esbuild';
import type { JournalParts } from './journalPage.ts';

declare const journal: JournalParts;

const ADDRESS = 'http://anteroom.invalid/';
let script: string;

test.skip(({ hasTouch }) => hasTouch, 'a store has no screen: once, on the desk, is enough');

test.beforeAll(async () => {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('./journalPage.ts', import.meta.url))],
    bundle: true,
    format: 'iife',
    write: false,
    logLevel: 'error',
  });
  script = outputFiles[0]?.text ?? '';
});

/** A page that holds the journal's parts, under the policy of the house: no code made from text. */
async function pageIn(context: BrowserContext): Promise<Page> {
  await context.route(`${ADDRESS}**`, (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript', body: script })
      : route.fulfill({
          contentType: 'text/html',
          headers: { 'content-security-policy': "default-src 'self'" },
          body: '<!doctype html><title>Journal</title><script src="/journal.js"></script>',
        }),
  );
  const page = await context.newPage();
  await page.goto(ADDRESS);
  return page;
}

test('keeps every kind, refuses forks and gaps, and is there after a reload', async ({ context }) => {
  const page = await pageIn(context);
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  const first = await page.evaluate(async () => {
    const { device, everything, notes, oneOfEach, openIndexedDb, problemOf, verdictOf } = journal;
    const store = await openIndexedDb();
    const entries = oneOfEach();
    const once = await store.append(entries);
    const again = await store.append(entries);
    const { write } = device('desk', undefined, { number: 1, hash: entries[0]?.hash ?? '' });
    const [, , third] = notes(3, device('third'));
    const second = write('note.added');
    return {
      secure: isSecureContext,
      same: JSON.stringify(once) === JSON.stringify(again),
      kept: await everything(store),
      entries,
      fork: (await problemOf(store.append([second])))?.code,
      gap: third && (await problemOf(store.append([third])))?.code,
      verdict: await verdictOf(store),
    };
  });
  expect(first).toMatchObject({ secure: false, same: true, fork: 'fork', gap: 'gap' });
  expect(first.kept).toEqual(first.entries);
  expect(first.verdict.flaws).toEqual([]);
  await page.reload();
  const then = await page.evaluate(async () => journal.verdictOf(await journal.openIndexedDb()));
  expect(then).toEqual(first.verdict);
  expect(complaints).toEqual([]);
});

test('two pages write one chain, and a view goes on from its snapshot', async ({ context }) => {
  const pages = [await pageIn(context), await pageIn(context)];
  await Promise.all(
    pages.map((page, index) =>
      page.evaluate(async (name) => {
        const store = await journal.openIndexedDb();
        const writer = journal.device(name);
        for (let turn = 0; turn < 300; turn += 1) await store.append(journal.notes(2, writer));
        await store.append([writer.write('room.entered')]);
      }, `tablet-${index}`),
    ),
  );
  const told = await pages[0]!.evaluate(async () => {
    const store = await journal.openIndexedDb();
    const parts = { journal: store, snapshots: store.snapshots };
    const fresh = await journal.show(journal.roomView, parts);
    const next = await journal.show(journal.roomView, parts);
    return { verdict: await journal.verdictOf(store), fresh, next, now: journal.roomNow(next.state) };
  });
  expect(told.verdict).toMatchObject({ entries: 1202, devices: 2, flaws: [] });
  expect(told.next).toEqual({ ...told.fresh, since: 1202 });
  expect(told.now.inside.map(({ person }) => person)).toEqual(['p-3k7m']);
});

test('a browser that crashes while it writes loses nothing acknowledged', async ({ launchOptions }) => {
  test.setTimeout(120_000);
  const folder = await mkdtemp(join(tmpdir(), 'browser-'));
  const acknowledged: string[] = [];
  try {
    for (let round = 0; round < 2; round += 1) {
      const context = await chromium.launchPersistentContext(folder, launchOptions);
      const page = await pageIn(context);
      page.on('console', (message) => acknowledged.push(message.text()));
      const closed = new Promise((resolve) => context.once('close', resolve));
      const writing = page
        .evaluate(async () => {
          const store = await journal.openIndexedDb();
          const [last] = await store.read(Number.MAX_SAFE_INTEGER, { backwards: true, most: 1 });
          const writer = journal.device('tablet', undefined, last?.entry);
          for (;;)
            for (const { number, hash } of await store.append(journal.notes(1, writer)))
              console.log(`${number} ${hash}`);
        })
        .catch(() => undefined);
      await expect.poll(() => acknowledged.length).toBeGreaterThan(50 * (round + 1));
      const crash = await context.newCDPSession(page);
      await crash.send('Browser.crash').catch(() => undefined);
      await Promise.all([writing, closed]);
    }
    const context = await chromium.launchPersistentContext(folder, launchOptions);
    const page = await pageIn(context);
    const { verdict, kept } = await page.evaluate(async () => {
      const store = await journal.openIndexedDb();
      const entries = await journal.everything(store);
      return {
        verdict: await journal.verdictOf(store),
        kept: entries.map(({ number, hash }) => `${number} ${hash}`),
      };
    });
    expect(verdict.flaws).toEqual([]);
    expect(new Set(kept).size).toBe(kept.length);
    expect(acknowledged.filter((one) => !kept.includes(one))).toEqual([]);
    await context.close();
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
