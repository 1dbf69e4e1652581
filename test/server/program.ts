// Builds the server once for a test file, and starts it as a program of its own: to be stopped, killed and started again.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export interface Program {
  readonly start: (asked: object, env?: Readonly<Record<string, string>>) => Promise<Served>;
  /** Folder of the page that it serves. */
  readonly page: string;
  readonly remove: () => void;
}

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Served {
  readonly port: number;
  readonly out: () => string;
  readonly err: () => string;
  /** The code that the terminal shows; empty where there is none. */
  readonly code: string;
  readonly signal: (name: NodeJS.Signals) => void;
  readonly ended: Promise<Ended>;
}

const REQUIRE = "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);";

/** Inside the house, so that native packages are found from there. */
export async function buildProgram(): Promise<Program> {
  mkdirSync('.cache', { recursive: true });
  const folder = mkdtempSync('.cache/server-');
  const file = join(folder, 'runner.mjs');
  const page = join(folder, 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>page</title>');
  await build({
    entryPoints: [fileURLToPath(new URL('./runner.ts', import.meta.url))],
    outfile: file,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['libsql', '@node-rs/argon2'],
    banner: { js: REQUIRE },
    logLevel: 'error',
  });
  const run = (asked: object, env: Readonly<Record<string, string>> = {}) =>
    watched(
      spawn(process.execPath, [file, JSON.stringify(asked), page], {
        stdio: ['ignore', 'pipe', 'pipe'],
        env: { PATH: process.env.PATH, ...env },
      }),
    );
  return {
    start: async (asked, env) => {
      const child = run({ port: 0, ...asked }, env);
      const port = await child.ready;
      const code = /code there: ([\w-]+)/.exec(child.out())?.[1] ?? '';
      return { ...child, port, code };
    },
    page,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

function watched(child: ChildProcess) {
  let out = '';
  let err = '';
  const ended = new Promise<Ended>((resolve) => {
    child.once('close', (status) => resolve({ status, out, err }));
  });
  const ready = new Promise<number>((resolve, reject) => {
    child.stdout?.on('data', (part: Buffer) => {
      out += part.toString();
      const port = /^Doffline serves the unit at \w+:\/\/\S*?(?::(\d+))?\/\s/.exec(out)?.[1];
      if (out.includes('Stop it with')) resolve(Number(port ?? 0));
    });
    child.stderr?.on('data', (part: Buffer) => {
      err += part.toString();
    });
    child.once('close', () => reject(new Error(`did not start: ${err}`)));
  });
  ready.catch(() => undefined);
  return {
    ready,
    ended,
    out: () => out,
    err: () => err,
    signal: (name: NodeJS.Signals) => void child.kill(name),
  };
}
