// A tablet killed again and again while it runs drills, until 200 steps were confirmed (TABLET_STEPS changes that): SIGKILL of
// the whole browser, a crash or the closing of its tab, at random moments, often in the middle of a press. Then the same with
// the network cut and restored at random, to the unit's server. Nothing that the screen had moved on with may be missing,
// nothing be there twice, every chain be whole. test/browser/killed.spec.ts does a few of it.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { freePort } from '../scripts/freePort.mjs';
import { report, type Row } from './harness.ts';
import { offers, start } from './served.ts';
import { CHROMIUM, drill, ofExit, press, type Tablet, tabletAt, wrongIn } from './tabletRun.ts';

const STEPS = Number(process.env.TABLET_STEPS ?? 200);
/** A death about every so many presses. */
const PRESSES = 12;
const WAYS = ['browser', 'crash', 'close'] as const;

const roll = (sides: number): number => Math.floor(Math.random() * sides);

async function die(tablet: Tablet, way: (typeof WAYS)[number]): Promise<void> {
  await new Promise((done) => {
    setTimeout(done, roll(60));
  });
  if (way === 'browser') {
    await tablet.kill();
    await tablet.launch();
    return;
  }
  const page = tablet.page();
  if (way === 'crash') {
    const client = await page.context().newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    client.send('Page.crash').catch(() => undefined);
    await crashed;
  }
  await page.close();
  await tablet.reopen();
}

interface Tally {
  steps: number;
  deaths: Record<(typeof WAYS)[number], number>;
  readonly again: number[];
  readonly exits: string[];
}

/** After a death: all that the screen stood at is held, and the exit goes on. */
async function back(tablet: Tablet, address: string, exit: string, tally: Tally): Promise<void> {
  const stood = tablet.shown(exit);
  const from = performance.now();
  await tablet.page().goto(`${address}/guide/${exit}`);
  await tablet.page().locator('.g-observer').waitFor();
  tally.again.push(performance.now() - from);
  const held = await tablet.held();
  const { entries } = ofExit(held, exit);
  const wrong = wrongIn(held, tally.exits);
  if (entries.length < stood || wrong.length > 0)
    throw new Error(`${exit}: stood at ${stood}, ${entries.length} held; ${wrong.join('; ')}`);
}

async function kills(address: string): Promise<Row> {
  const profile = mkdtempSync(join(tmpdir(), 'doffline-tablet-'));
  const tablet = tabletAt(address, profile);
  const tally: Tally = { steps: 0, deaths: { browser: 0, crash: 0, close: 0 }, again: [], exits: [] };
  await tablet.launch();
  try {
    while (tally.steps < STEPS) {
      const exit = await drill(tablet, address);
      tally.exits.push(exit);
      const before = tally.steps;
      for (let over = false; !over && tally.steps < STEPS; ) {
        const doomed = roll(PRESSES) === 0;
        over = await press(tablet, exit, doomed && roll(3) > 0);
        if (!doomed) continue;
        const way = WAYS[roll(WAYS.length)]!;
        await die(tablet, way);
        tally.deaths[way] += 1;
        await back(tablet, address, exit, tally);
        tally.steps = before + ofExit(await tablet.held(), exit).confirmed.length;
      }
      tally.steps = before + ofExit(await tablet.held(), exit).confirmed.length;
    }
    const held = await tablet.held();
    const wrong = wrongIn(held, tally.exits);
    if (wrong.length > 0) throw new Error(wrong.join('; '));
    const { browser, crash, close } = tally.deaths;
    return {
      name: 'an exit on the screen again, after a death',
      samples: tally.again,
      unit: 'ms',
      note: `${tally.steps} steps (${held.rows.length} entries) over ${browser} SIGKILLs of the browser, ${crash} crashed and ${close} closed tabs: none lost that the screen had moved on with, none twice, chain whole`,
    };
  } finally {
    await tablet.end();
    rmSync(profile, { recursive: true, force: true });
  }
}

/** The unit's server says which numbers of a device it has. */
async function there(port: number, cookie: string, device: string): Promise<readonly number[]> {
  const numbers: number[] = [];
  for (let from = 1; ; ) {
    const answer = await fetch(`http://127.0.0.1:${port}/api/entries?from=${from}&most=500`, {
      headers: { cookie },
    });
    const { entries } = (await answer.json()) as {
      entries: { at: number; entry: { device: string; number: number } }[];
    };
    const last = entries.at(-1);
    if (!last) return numbers;
    numbers.push(...entries.filter(({ entry }) => entry.device === device).map(({ entry }) => entry.number));
    from = last.at + 1;
  }
}

async function cuts(): Promise<Row> {
  const [folder, profile] = ['unit', 'tablet'].map((name) =>
    mkdtempSync(join(tmpdir(), `doffline-${name}-`)),
  );
  const server = await start(folder!, undefined, resolve('dist/app'));
  const address = `http://127.0.0.1:${server.port}`;
  const { cookie, code } = await offers(server);
  const tablet = tabletAt(address, profile!);
  await tablet.launch();
  try {
    await tablet.page().goto(`${address}/device#pair=${code}`);
    await tablet.page().getByRole('button', { name: 'Join', exact: true }).click();
    await tablet.page().getByText('All sent.').waitFor();
    await tablet.page().getByText('The whole page is kept on this device.').waitFor();
    const device = await tablet.page().evaluate<string>("localStorage.getItem('doffline-device')");
    const samples: number[] = [];
    const exits: string[] = [];
    let [steps, cut] = [0, 0];
    while (steps < STEPS) {
      const exit = await drill(tablet, address);
      exits.push(exit);
      for (let over = false; !over; ) {
        const chance = roll(8);
        if (chance < 2)
          await tablet
            .page()
            .context()
            .setOffline(chance === 0);
        if (chance === 0) cut += 1;
        const from = performance.now();
        over = await press(tablet, exit);
        samples.push(performance.now() - from);
      }
      steps += ofExit(await tablet.held(), exit).confirmed.length;
    }
    await tablet.page().context().setOffline(false);
    await tablet.page().goto(`${address}/device`);
    await tablet.page().getByRole('button', { name: 'Try now' }).click();
    await tablet.page().getByText('All sent.').waitFor();
    const held = await tablet.held();
    const own = held.rows.filter((row) => row.device === device).map(({ number }) => number);
    const numbers = await there(server.port, cookie, device);
    const wrong = [
      ...wrongIn(held, exits),
      ...(numbers.join() === own.join() ? [] : ['not all on the server']),
    ];
    if (wrong.length > 0) throw new Error(wrong.join('; '));
    return {
      name: 'a press and the move of the screen, network cut and restored',
      samples,
      unit: 'ms',
      note: `${steps} steps (${own.length} entries) while the network was cut ${cut} times: all on the server once, in their order, both chains whole`,
    };
  } finally {
    await tablet.end();
    server.signal('SIGKILL');
    await server.ended;
    for (const one of [folder!, profile!]) rmSync(one, { recursive: true, force: true });
  }
}

async function main(): Promise<void> {
  if (!existsSync(CHROMIUM) || !existsSync('dist/app/index.html') || !existsSync('dist/server.js')) {
    report([], [], `${CHROMIUM} or the built page (npm run build) is missing`);
    return;
  }
  const port = await freePort();
  const server = spawn(process.execPath, ['dist/server.js'], {
    env: { ...process.env, PORT: String(port) },
    stdio: 'ignore',
  });
  try {
    await new Promise((done) => {
      setTimeout(done, 1500);
    });
    report([await kills(`http://127.0.0.1:${port}`), await cuts()]);
  } finally {
    server.kill();
  }
}

await main();
