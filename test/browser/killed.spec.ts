// The tablet's whole browser is killed (SIGKILL) while a drill is read, in the middle of a press: what its screen had moved on
// with is there, nothing twice, and the drill goes on, even where it had only just begun. `node bench/run.mjs tablet` does it
// over 200 steps, with crashed and closed tabs and a network that comes and goes.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { drill, ofExit, press, tabletAt, wrongIn } from '../../bench/tabletRun.ts';

test('a browser that is killed loses nothing that its screen had moved on with', async ({ baseURL }) => {
  test.setTimeout(120_000);
  const address = baseURL ?? '';
  const profile = mkdtempSync(join(tmpdir(), 'doffline-killed-'));
  const tablet = tabletAt(address, profile);
  await tablet.launch();
  try {
    const exit = await drill(tablet, address);
    for (const presses of [0, 3, 4]) {
      for (let turn = 0; turn < presses; turn += 1) await press(tablet, exit);
      await press(tablet, exit, true);
      await tablet.kill();
      const stood = tablet.shown(exit);
      await tablet.launch();
      await tablet.page().goto(`${address}/guide/${exit}`);
      await tablet.page().locator('.g-observer').waitFor();
      const held = await tablet.held();
      expect(ofExit(held, exit).entries.length).toBeGreaterThanOrEqual(stood);
      expect(wrongIn(held, [exit])).toEqual([]);
    }
    expect(ofExit(await tablet.held(), exit).confirmed.length).toBeGreaterThan(1);
  } finally {
    await tablet.end();
    rmSync(profile, { recursive: true, force: true });
  }
});
