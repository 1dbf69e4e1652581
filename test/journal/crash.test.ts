// A writing program is killed at a random moment, again and again, over one journal: everything that it said was stored is
// there, once, and the chain holds. Two programs write at once, so that their turns are cut as well.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../../src/journal/adapters/sqlite.ts';
import { verdictOf } from './contract.ts';

const folder = mkdtempSync(join(tmpdir(), 'journal-crash-'));
const file = join(folder, 'journal.sqlite');
// Inside the house, so that the native package is found from there.
const place = join('.cache', 'journal');
let program: string;

beforeAll(async () => {
  mkdirSync(place, { recursive: true });
  program = join(mkdtempSync(join(place, 'writer-')), 'writer.mjs');
  await build({
    entryPoints: [fileURLToPath(new URL('./writer.ts', import.meta.url))],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['libsql'],
    logLevel: 'error',
  });
});
afterAll(() => {
  rmSync(folder, { recursive: true });
  rmSync(join(program, '..'), { recursive: true });
});

/** Runs a writer until so many milliseconds after its first word, and gives back what it said. */
function killed(name: string, after: number): Promise<readonly string[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, file, name], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let complaint = '';
    child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), after));
    child.stdout.on('data', (part: Buffer) => (said += part.toString()));
    child.stderr.on('data', (part: Buffer) => (complaint += part.toString()));
    child.on('error', reject);
    child.on('close', (_, signal) => {
      if (signal === 'SIGKILL') resolve(said.split('\n').slice(0, -1));
      else reject(new Error(complaint));
    });
  });
}

test('20 kills: every acknowledged entry is there, once, and the chain holds', async () => {
  const acknowledged = new Map<string, string>();
  for (let round = 0; round < 10; round += 1) {
    const names = ['tablet-1', 'tablet-2'];
    const said = await Promise.all(names.map((name) => killed(name, Math.random() * 60)));
    for (const [index, lines] of said.entries()) {
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) {
        const [number = '', hash = ''] = line.split(' ');
        acknowledged.set(`${names[index]} ${number}`, hash);
      }
    }
    const store = await openSqlite(file);
    const rows = new Map(
      (await store.rows(1, 100_000)).map((row) => [`${row.device} ${row.number}`, row.hash]),
    );
    if (round % 5 === 4)
      expect(await verdictOf(store, 100_000)).toMatchObject({ flaws: [], entries: rows.size });
    await store.close();
    for (const [place, hash] of acknowledged) expect(rows.get(place), place).toBe(hash);
  }
  expect(acknowledged.size).toBeGreaterThan(40);
});
