// The served unit as a program of its own for the benches, and tablets that talk to it as real ones do: over sockets that
// stay open, each with its own chain.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Entry, headOf, nextEntry, START } from '../src/journal/entry.ts';

export const UNIT = 'larkmoor-isolation';

export interface Served {
  readonly port: number;
  /** The code for the first lead; empty where there is one. */
  readonly code: string;
  readonly signal: (name: NodeJS.Signals) => void;
  readonly ended: Promise<void>;
}

/** dist/serve.js is bundled by bench/run.mjs. */
const RUN = `const { serve } = await import(${JSON.stringify(pathToFileURL(join('dist', 'serve.js')).href)});
process.exitCode = await serve(JSON.parse(process.argv[1]), { env: process.env, page: process.argv[2],
  out: (text) => process.stdout.write(text), err: (text) => process.stderr.write(text) });`;

function heard(child: ChildProcess): Promise<{ readonly port: number; readonly code: string }> {
  return new Promise((resolve, reject) => {
    let out = '';
    let complaint = '';
    child.stderr?.on('data', (part: Buffer) => {
      complaint = part.toString();
    });
    child.stdout?.on('data', (part: Buffer) => {
      out += part.toString();
      const port = /^Doffline serves the unit at http:\/\/127\.0\.0\.1:(\d+)\//.exec(out)?.[1];
      const code = /code there: ([\w-]+)/.exec(out)?.[1] ?? '';
      if (port !== undefined) resolve({ port: Number(port), code });
    });
    child.once('close', () => reject(new Error(`the server did not start: ${complaint}`)));
  });
}

/** Nothing to be seen, for those who only send. */
function emptyPage(folder: string): string {
  const page = join(folder, 'page');
  mkdirSync(page, { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html>');
  return page;
}

/** Starts the server over a folder, or over the database of `address`; `page`: the built page. */
export async function start(
  folder: string,
  address?: string,
  page: string = emptyPage(folder),
): Promise<Served> {
  const asked = JSON.stringify({ port: 0, ...(address === undefined ? { data: folder } : {}) });
  const env = { PATH: process.env.PATH, ...(address === undefined ? {} : { DATABASE_URL: address }) };
  const child = spawn(process.execPath, ['--input-type=module', '-e', RUN, asked, page], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env,
  });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const { port, code } = await heard(child);
  return { port, code, ended, signal: (name) => void child.kill(name) };
}

export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly cookies: readonly string[];
}

export function post(port: number, path: string, body: object, cookie = '', agent?: Agent): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', ...(cookie === '' ? {} : { cookie }) };
    const call = request(
      { host: '127.0.0.1', port, path, method: 'POST', headers, ...(agent ? { agent } : { agent: false }) },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (part: string) => {
          text += part;
        });
        response.on('error', reject);
        response.on('end', () => {
          const cookies = (response.headers['set-cookie'] ?? []).map((line) => line.split(';', 1)[0] ?? '');
          resolve({ status: response.statusCode ?? 0, text, cookies });
        });
      },
    );
    call.on('error', reject);
    call.end(JSON.stringify(body));
  });
}

async function done(answer: Promise<Answer>): Promise<Answer> {
  const got = await answer;
  if (got.status !== 200) throw new Error(`${got.status}: ${got.text}`);
  return got;
}

export interface Tablet {
  readonly id: string;
  readonly cookie: string;
  readonly agent: Agent;
  readonly write: () => Entry;
}

function tabletOf(id: string, cookie: string): Tablet {
  let head = START;
  const write = (): Entry => {
    const line = head.number + 1;
    const entry = nextEntry(head, {
      unit: UNIT,
      device: id,
      kind: 'exit.line-confirmed',
      version: 1,
      at: new Date().toISOString(),
      by: 'p-9x2q',
      body: { exit: 'exit-1', line, step: `s${line % 90}`, means: 'pedal' },
    });
    head = headOf(entry);
    return entry;
  };
  return { id, cookie, write, agent: new Agent({ keepAlive: true, maxSockets: 1 }) };
}

/** Makes the unit; the lead's cookie. */
async function unitAt({ port, code }: Served): Promise<string> {
  const lead = { name: 'Bench Lead', password: 'correct horse battery' };
  const unit = { demo: false, code, id: UNIT, title: 'Larkmoor (invented)', ...lead };
  const [desk = ''] = (await done(post(port, '/api/unit', unit))).cookies;
  return desk;
}

/** Makes the unit and a code for one tablet, to be typed in. */
export async function offers(served: Served): Promise<{ readonly cookie: string; readonly code: string }> {
  const cookie = await unitAt(served);
  const wanted = { label: 'Tablet', role: 'observer' };
  const { text } = await done(post(served.port, '/api/pairings', wanted, cookie));
  return { cookie, code: (JSON.parse(text) as { code: string }).code };
}

/** Makes the unit and pairs so many tablets. */
export async function tablets(served: Served, count: number): Promise<readonly Tablet[]> {
  const { port } = served;
  const desk = await unitAt(served);
  const paired: Tablet[] = [];
  for (let index = 0; index < count; index += 1) {
    const wanted = { label: `Tablet ${index}`, role: 'observer' };
    const offer = JSON.parse((await done(post(port, '/api/pairings', wanted, desk))).text) as {
      code: string;
    };
    const joined = await done(post(port, '/api/device', { code: offer.code }));
    const { device } = JSON.parse(joined.text) as { device: string };
    paired.push(tabletOf(device, joined.cookies[0] ?? ''));
  }
  return paired;
}
