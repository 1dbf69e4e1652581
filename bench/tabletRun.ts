// A tablet that runs drills while it is killed: Chromium as a program of its own over a profile that stays, its guide driven by
// the pedal's key, every move of its screen heard. After each death the journal must hold all that the screen had moved on
// with, nothing twice, its chain whole. Shared by the bench (200 steps and more) and a short browser test.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import type { Entry, Row } from '../src/journal/entry.ts';
import { verifier } from '../src/journal/verify.ts';
import { chromiumPath } from '../scripts/chromium.mjs';

export const CHROMIUM = chromiumPath();

const FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--no-first-run',
  '--remote-debugging-port=0',
];

/** Longer than a bounce of the pedal; longer than the longest time of a step. */
const PAUSE_MS = 600;
const LONG_MS = 16 * 60_000;
const PATIENCE_MS = 20_000;

const after = async (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });

async function until<Found>(look: () => Promise<Found | undefined>, what: string): Promise<Found> {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const found = await look();
    if (found !== undefined) return found;
    if (Date.now() > end) throw new Error(`waited in vain: ${what}`);
    await after(20);
  }
}

/** Tells of each state that stands on the screen: how many entries the exit has there. */
const WATCH = `new MutationObserver(() => {
  const shown = document.querySelector('.g-observer')?.getAttribute('data-entries');
  if (shown && shown !== globalThis.lastShown) { globalThis.lastShown = shown; globalThis.moved(location.pathname, Number(shown)); }
}).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-entries'] });`;

const ALL_ROWS = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('doffline-journal');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const all = opening.result.transaction('entries').objectStore('entries').getAll();
    const head = opening.result.transaction('head').objectStore('head').get('head');
    head.onsuccess = () => { opening.result.close(); resolve({ rows: all.result, head: head.result }); };
  };
})`;

interface Held {
  readonly rows: readonly Row[];
  readonly head: { readonly number: number; readonly hash: string };
}

const entriesIn = ({ rows }: Held): readonly Entry[] => rows.map(({ text }) => JSON.parse(text) as Entry);

/** The state of the screen before it was killed, by exit. */
export interface Tablet {
  readonly page: () => Page;
  /** Entries of an exit that the screen last stood at. */
  readonly shown: (exit: string) => number;
  readonly held: () => Promise<Held>;
  readonly launch: () => Promise<void>;
  /** SIGKILL of the whole browser. */
  readonly kill: () => Promise<void>;
  readonly reopen: () => Promise<void>;
  readonly pass: (milliseconds: number) => Promise<void>;
  readonly end: () => Promise<void>;
}

export function tabletAt(address: string, profile: string): Tablet {
  const moves = new Map<string, number>();
  let [child, browser, page]: [ChildProcess?, Browser?, Page?] = [];
  /** Goes on over deaths, as a clock on the wall does. */
  let clock = Date.now();
  const here = (): Page => {
    if (!page) throw new Error('no page');
    return page;
  };
  const reopen = async (): Promise<void> => {
    const [context] = browser?.contexts() ?? [];
    if (!context) throw new Error('no browser');
    page = await context.newPage();
    await page.exposeFunction('moved', (path: string, entries: number) => {
      moves.set(path.split('/').at(-1) ?? '', entries);
    });
    await page.addInitScript(WATCH);
    await page.clock.install({ time: clock });
    await page.goto(address);
  };
  const launch = async (): Promise<void> => {
    const told = join(profile, 'DevToolsActivePort');
    rmSync(told, { force: true });
    // A process group of its own, so that all of it dies at once.
    child = spawn(CHROMIUM, [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'], {
      stdio: 'ignore',
      detached: true,
    });
    const port = await until(async () => {
      await Promise.resolve();
      const [line] = existsSync(told) ? readFileSync(told, 'utf8').split('\n') : [];
      return line === undefined || line === '' ? undefined : line;
    }, 'Chromium');
    browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    await reopen();
  };
  const kill = async (): Promise<void> => {
    const dying = child;
    if (dying?.pid !== undefined && dying.exitCode === null && dying.signalCode === null) {
      const ended = new Promise((resolve) => dying.once('exit', resolve));
      process.kill(-dying.pid, 'SIGKILL');
      await ended;
    }
    await browser?.close().catch(() => undefined);
  };
  return {
    page: here,
    shown: (exit) => moves.get(exit) ?? 0,
    held: async () => here().evaluate(ALL_ROWS),
    launch,
    kill,
    reopen,
    pass: async (milliseconds) => {
      clock += milliseconds;
      await here().clock.fastForward(milliseconds);
    },
    end: kill,
  };
}

/** Begins a drill; its id. */
export async function drill({ page }: Tablet, address: string): Promise<string> {
  await page().goto(`${address}/guide?procedure=larkmoor-suit-doffing`);
  for (const [name, typed] of [
    ['Wearer', 'AB'],
    ['Observer', 'CD'],
    ['Assistant', 'EF'],
    ['Room', 'Red 1'],
  ] as const)
    await page().getByRole('textbox', { name }).fill(typed);
  await page().getByRole('button', { name: 'Begin the drill' }).click();
  await page().locator('.g-observer').waitFor();
  return new URL(page().url()).pathname.split('/').at(-1) ?? '';
}

const LOOK = `({
  next: document.querySelector('.g-presses-next button')?.textContent ?? '',
  asks: document.querySelector('.g-presses-more')?.textContent.includes('Not sure') ?? false,
  over: document.querySelector('.g-outcome') !== null,
})`;

interface Look {
  readonly next: string;
  readonly asks: boolean;
  readonly over: boolean;
}

/** One press on. True when the exit has ended. `doomed`: nobody waits for what the press does. */
export async function press(tablet: Tablet, exit: string, doomed = false): Promise<boolean> {
  const { page, pass, shown } = tablet;
  const { next, asks, over } = await page().evaluate<Look>(LOOK);
  if (over) return true;
  if (next === '' && !asks) {
    await pass(LONG_MS);
    return false;
  }
  const before = shown(exit);
  await pass(PAUSE_MS);
  const pressed = page().keyboard.press(asks ? 'n' : 'PageDown');
  if (doomed) {
    pressed.catch(() => undefined);
    return false;
  }
  await pressed;
  await until(async () => Promise.resolve(shown(exit) > before ? true : undefined), `a move of ${exit}`);
  return false;
}

/** Entries of an exit, and the steps that were confirmed in it. */
export function ofExit(held: Held, exit: string) {
  const entries = entriesIn(held).filter(({ body }) => body.exit === exit);
  const confirmed = entries.filter(({ kind }) => kind === 'exit.line-confirmed').map(({ body }) => body.line);
  return { entries, confirmed };
}

/** What is wrong with what is held: a flaw of the chain, an entry twice, a line confirmed twice. */
export function wrongIn(held: Held, exits: readonly string[]): readonly string[] {
  const { take, end } = verifier();
  for (const row of held.rows) take(row);
  const flaws = end(held.head).flaws.map((flaw) => JSON.stringify(flaw));
  const twice = exits.flatMap((exit) => {
    const { entries, confirmed } = ofExit(held, exit);
    const told = entries.map(({ kind, at, body }) => JSON.stringify([kind, at, body]));
    return [
      ...(new Set(confirmed).size < confirmed.length ? [`${exit}: a line confirmed twice`] : []),
      ...(new Set(told).size < told.length ? [`${exit}: an entry twice`] : []),
    ];
  });
  return [...flaws, ...twice];
}
