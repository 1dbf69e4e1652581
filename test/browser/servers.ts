// Servers as processes of their own, which a browser test may kill: any program, and the real server of a unit with the built
// page before it.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from '@playwright/test';
import { build } from 'esbuild';
import { freePort } from '../../scripts/freePort.mjs';

export const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

export interface Server {
  readonly address: string;
  readonly start: () => Promise<void>;
  readonly kill: () => Promise<void>;
}

/** A server as a process of its own: `file` is its program. */
export async function serverOf(file: string, env: Readonly<Record<string, string>> = {}): Promise<Server> {
  const port = await freePort();
  let running: ChildProcess | undefined;
  const address = `http://127.0.0.1:${port}`;
  return {
    address,
    start: async () => {
      running = spawn(process.execPath, [file], {
        env: { ...process.env, ...env, PORT: String(port) },
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

/** A source bundled into one file. */
export async function bundled(source: string, platform: 'browser' | 'node'): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL(source, import.meta.url))],
    bundle: true,
    write: false,
    logLevel: 'error',
    ...(platform === 'node' ? { platform, format: 'esm', packages: 'external' } : { format: 'iife' }),
  });
  return outputFiles[0]?.text ?? '';
}

/** The unit's server as one file, where the packages that it needs are found. Whoever made it removes it. */
export async function unitProgram(): Promise<string> {
  const cache = fileURLToPath(new URL('../../.cache', import.meta.url));
  mkdirSync(cache, { recursive: true });
  const file = join(mkdtempSync(join(cache, 'unit-server-')), 'server.mjs');
  writeFileSync(file, await bundled('../sync/unitServer.ts', 'node'));
  return file;
}

export interface UnitServer extends Server {
  /** Ends it, and its data with it. */
  readonly remove: () => Promise<void>;
}

/** Started, with a folder of its own. */
export async function unitServerOf(program: string, env: Readonly<Record<string, string>> = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-unit-'));
  const server = await serverOf(program, {
    ...env,
    FOLDER: folder,
    PAGE: join(DIST, 'app'),
    TMPDIR: folder,
  });
  await server.start();
  const remove = async (): Promise<void> => {
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  };
  return { ...server, remove } satisfies UnitServer;
}

interface Json {
  readonly code: string;
  readonly password: string;
  readonly entries: readonly { readonly entry: { readonly device: string; readonly number: number } }[];
}

export type Ask = (path: string, body?: unknown) => Promise<Json>;

/** Makes the unit and its lead; asks as the lead. */
export async function leadAt(address: string): Promise<Ask> {
  const ask = async (path: string, body?: unknown, cookie = '') =>
    fetch(address + path, {
      ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
      headers: { 'Content-Type': 'application/json', cookie },
    });
  const made = await ask('/api/unit', {
    demo: false,
    code: 'TEST-CODE',
    id: 'larkmoor-isolation',
    title: 'Larkmoor (invented)',
    name: 'Ada Invented',
    password: 'correct horse battery',
  });
  const cookie = made.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
  return async (path, body) => (await ask(path, body, cookie)).json() as Promise<Json>;
}
