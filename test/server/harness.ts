// A real server for tests: real sockets, a real database, its own folder, a clock that tests can turn. Clients keep cookies
// as browsers do, and every answer is held to the schema that the interface promises.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, type RequestOptions, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RouteName } from '../../src/api/access.ts';
import { type ApiProblem, problem } from '../../src/api/problems.ts';
import type { Role } from '../../src/api/roles.ts';
import { type AnswerOf, type Route, ROUTES } from '../../src/api/routes.ts';
import { type JournalPlace, openJournal } from '../../src/journal/adapters/open.ts';
import type { Store } from '../../src/journal/port.ts';
import type { Context } from '../../src/server/context.ts';
import { frontOf } from '../../src/server/front.ts';
import { readHealthKeys } from '../../src/server/health/keys.ts';
import { newLimits } from '../../src/server/limits.ts';
import { newLog } from '../../src/server/log.ts';
import { newMetrics } from '../../src/server/metrics.ts';
import { type Papers, papersBy } from '../../src/server/papers.ts';
import { LOOPBACK_NAMES, type Reach } from '../../src/server/reach.ts';
import { listening, type Patience, serverFor, stopped } from '../../src/server/run.ts';
import { sightsIn } from '../../src/server/seen.ts';
import { pageListener } from '../../src/server/static.ts';
import { openRecords } from '../../src/server/store/open.ts';
import type { Database } from '../../src/server/store/sql.ts';

const SETUP_CODE = 'TEST-CODE';
export const LEAD = { name: 'Ada Invented', password: 'correct horse battery' } as const;
export const HEALTH_KEY = `first:${Buffer.alloc(32, 7).toString('base64')}`;

export interface Options {
  readonly place?: JournalPlace;
  readonly journal?: Store;
  readonly records?: Database;
  readonly healthKey?: string | undefined;
  readonly metricsToken?: string;
  readonly reach?: Partial<Reach>;
  readonly patience?: Patience;
  readonly papers?: Papers;
}

export interface Running {
  readonly context: Context;
  readonly port: number;
  readonly folder: string;
  readonly log: () => string;
  /** Turns the server's clock on. */
  readonly wait: (ms: number) => void;
  /** Forgets all tries that were counted. */
  readonly calm: () => void;
  readonly stop: () => Promise<void>;
}

function pageFolder(folder: string): string {
  const site = join(folder, 'app');
  mkdirSync(site, { recursive: true });
  writeFileSync(join(site, 'index.html'), '<!doctype html><title>page</title>');
  return site;
}

export async function start(options: Options = {}): Promise<Running> {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-server-'));
  const place = options.place ?? { in: 'folder', file: join(folder, 'journal.sqlite') };
  const lines: string[] = [];
  let later = 0;
  let port = 0;
  const reach = (): Reach => ({
    secure: false,
    names: new Set(LOOPBACK_NAMES),
    proxies: undefined,
    address: `http://127.0.0.1:${port}`,
    trustAddress: undefined,
    lasting: false,
    ...options.reach,
  });
  const records = options.records ?? (await openRecords(place));
  const log = newLog({ write: (line) => void lines.push(line) });
  const context: Context = {
    records,
    sights: sightsIn(records, log),
    journal: options.journal ?? (await openJournal(place)),
    clock: () => new Date(Date.now() + later),
    limits: newLimits(),
    log,
    metrics: newMetrics(),
    healthKeys: readHealthKeys('healthKey' in options ? options.healthKey : HEALTH_KEY),
    metricsToken: options.metricsToken,
    reach,
    // A file that is there, for tests that have no paper set.
    papers: options.papers ?? papersBy({ program: 'package.json' }),
    setup: { code: SETUP_CODE },
  };
  const front = frontOf(context, pageListener(pageFolder(folder)));
  const server = serverFor(front, undefined, options.patience);
  port = await listening(server, 0, '127.0.0.1');
  return {
    context,
    port,
    folder,
    log: () => lines.join(''),
    wait: (ms) => {
      later += ms;
    },
    calm: () => void Object.assign(context.limits, newLimits()),
    stop: async () => {
      await stopped(context, front, [server], 1000);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** One request as it is written, without anything that a friendly client would put right. */
export function ask(port: number, options: RequestOptions, body?: string | Buffer): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const call = request({ host: '127.0.0.1', port, agent: false, ...options }, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => {
        text += part;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
      );
      response.on('error', reject);
    });
    call.on('error', reject);
    call.end(body);
  });
}

export interface Given {
  readonly body?: unknown;
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | number>>;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface Client {
  readonly cookies: Map<string, string>;
  readonly raw: (name: RouteName, given?: Given) => Promise<Answer>;
  /** The answer, held to its schema. Throws where it is a refusal. */
  readonly call: <Name extends RouteName>(name: Name, given?: Given) => Promise<AnswerOf<Name>>;
  /** The refusal, held to its schema. Throws where it is none. */
  readonly refused: (name: RouteName, given?: Given) => Promise<ApiProblem & { readonly status: number }>;
}

function keepCookies(cookies: Map<string, string>, { headers }: Answer): void {
  for (const line of headers['set-cookie'] ?? []) {
    const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
    if (/max-age=0/i.test(line)) cookies.delete(name);
    else cookies.set(name, value);
  }
}

function pathOf(route: Route, { params = {}, query = {} }: Given = {}): string {
  const path = route.path.replaceAll(/\{(\w+)\}/g, (_, key: string) =>
    encodeURIComponent(params[key] ?? 'x'),
  );
  const search = new URLSearchParams(
    Object.entries(query).map(([key, value]): [string, string] => [key, String(value)]),
  );
  return search.size > 0 ? `${path}?${search.toString()}` : path;
}

export function client(port: number, cookies = new Map<string, string>()): Client {
  const raw: Client['raw'] = async (name, given = {}) => {
    const route: Route = ROUTES[name];
    const cookie = [...cookies].map(([key, value]) => `${key}=${value}`).join('; ');
    const headers = {
      ...(given.body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(cookie === '' ? {} : { cookie }),
      ...given.headers,
    };
    const body = given.body === undefined ? undefined : JSON.stringify(given.body);
    const answer = await ask(
      port,
      { method: route.method.toUpperCase(), path: pathOf(route, given), headers },
      body,
    );
    keepCookies(cookies, answer);
    return answer;
  };
  return {
    cookies,
    raw,
    call: async <Name extends RouteName>(name: Name, given?: Given) => {
      const { status, text } = await raw(name, given);
      if (status !== 200) throw new Error(`${name}: ${status} ${text}`);
      const shape: Route['answer'] = ROUTES[name].answer;
      return shape.parse(JSON.parse(text)) as AnswerOf<Name>;
    },
    refused: async (name, given) => {
      const { status, text } = await raw(name, given);
      if (status === 200) throw new Error(`${name} was not refused: ${text}`);
      return { status, ...problem.parse((JSON.parse(text) as { problem: unknown }).problem) };
    },
  };
}

/** The unit is made, and its lead signed in. */
export async function lead({ port }: Pick<Running, 'port'>): Promise<Client> {
  const one = client(port);
  await one.call('create-unit', {
    body: { demo: false, code: SETUP_CODE, id: 'larkmoor-isolation', title: 'Larkmoor (invented)', ...LEAD },
  });
  return one;
}

/** Somebody of a role, signed in with a password of their own. */
export async function person({ port }: Pick<Running, 'port'>, by: Client, role: Role): Promise<Client> {
  const name = `Some ${role} ${Math.random().toString(36).slice(2)}`;
  const { password } = await by.call('create-account', { body: { name, role } });
  const one = client(port);
  await one.call('sign-in', { body: { name, password } });
  await one.call('change-password', { body: { old: password, new: 'violet kettle seventeen' } });
  return one;
}

/** A paired device of a role, and its id. */
export async function tablet({ port }: Pick<Running, 'port'>, by: Client, role: Role = 'observer') {
  const { code } = await by.call('offer-pairing', { body: { label: 'Tablet in the anteroom', role } });
  const one = client(port);
  const { device } = await one.call('pair', { body: { code } });
  return { client: one, device, code };
}
