// `doffline serve`: everything a unit's server needs, opened in its order, and closed in the other when a signal comes. The
// command line hands over what it was asked for, where the built page is, and where to write.
import type { Server } from 'node:http';
import { dirname } from 'node:path';
import {
  type JournalPlace,
  journalPlace,
  openJournal,
  placeName,
  USUAL_FOLDER,
} from '../journal/adapters/open.ts';
import { JournalError } from '../journal/problems.ts';
import type { Context } from './context.ts';
import { frontOf } from './front.ts';
import { readHealthKeys } from './health/keys.ts';
import { newLimits } from './limits.ts';
import { type Log, newLog } from './log.ts';
import { newMetrics } from './metrics.ts';
import { foundNames, inAddress, LOOPBACK } from './names.ts';
import { trustServer } from './pages/trust.ts';
import { checkPair } from './pair.ts';
import { papersBy } from './papers.ts';
import { blockList, type Reach } from './reach.ts';
import { readRequest, type ServeRequest } from './request.ts';
import { listening, serverFor, stopped } from './run.ts';
import { newCode } from './secrets.ts';
import { sightsIn } from './seen.ts';
import { makeDemo, type Person } from './setup.ts';
import { startText } from './startText.ts';
import { pageListener } from './static.ts';
import { hasLead } from './store/accounts.ts';
import { openRecords } from './store/open.ts';
import { fingerprintOf } from './tls/certificates.ts';
import { keepFresh, type Tls, tlsFor } from './tls/source.ts';

export { letInByName } from './letIn.ts';

export interface World {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder of the built page. */
  readonly page: string;
  /** The built program that sets papers. */
  readonly typeset: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

const ANY: readonly string[] = ['0.0.0.0', '::'];

/** Names by which the server may be called, the one for tablets first. */
function namesFor({ host, name, behindProxy }: ServeRequest): readonly string[] {
  if (behindProxy.length > 0) return name;
  const found = ANY.includes(host) ? [...foundNames(), ...LOOPBACK] : [host, ...LOOPBACK];
  return [...new Set([...name, ...found])];
}

/** What the server is called may be said before its port is known; the addresses follow it. */
function reachFor(request: ServeRequest, tls: Tls | undefined, ports: { main: number; trust: number }) {
  const { behindProxy, https } = request;
  const names = namesFor(request);
  const proxied = behindProxy.length > 0;
  const secure = tls !== undefined || proxied;
  const [first = 'localhost'] = tls && tls.names.length > 0 ? tls.names : names;
  const called = new Set(names.map(inAddress));
  const proxies = proxied ? blockList(behindProxy) : undefined;
  return (): Reach => ({
    secure,
    names: called,
    proxies,
    address: `${secure ? 'https' : 'http'}://${inAddress(first)}${proxied ? '' : `:${ports.main}`}`,
    trustAddress: https ? `http://${inAddress(first)}:${ports.trust}` : undefined,
    lasting: secure && !https,
  });
}

async function open(place: JournalPlace, world: World, log: Log, reach: () => Reach): Promise<Context> {
  const healthKeys = readHealthKeys(world.env.DOFFLINE_HEALTH_KEY);
  const journal = await openJournal(place);
  try {
    const records = await openRecords(place);
    return {
      records,
      journal,
      clock: () => new Date(),
      limits: newLimits(),
      log,
      metrics: newMetrics(),
      sights: sightsIn(records, log),
      papers: papersBy({ program: world.typeset }),
      healthKeys,
      metricsToken: world.env.DOFFLINE_METRICS_TOKEN || undefined,
      reach,
      setup: { code: undefined },
    };
  } catch (error) {
    await journal.close();
    throw error;
  }
}

/** The code where a lead is missing, or another one is wanted; the demonstration's people where it was made now. */
async function prepare(context: Context, { demo, newLead }: ServeRequest): Promise<readonly Person[]> {
  const { records } = context;
  const isThere = (await checkPair(context)) !== undefined;
  if (demo && !isThere) return (await makeDemo(context)).people;
  if (newLead || !(await hasLead(records))) context.setup.code = newCode();
  return [];
}

function signal(): Promise<void> {
  return new Promise((resolve) => {
    for (const name of ['SIGTERM', 'SIGINT'] as const) process.once(name, () => resolve());
  });
}

interface Trusting {
  readonly server: Server;
  readonly fingerprint: string;
}

function trusting(tls: Tls | undefined, reach: () => Reach): Trusting | undefined {
  if (tls?.authority === undefined) return undefined;
  const here = (): string => `${reach().trustAddress ?? ''}/`;
  const server = trustServer({ authority: tls.authority, here, secure: () => `${reach().address}/` });
  return { server, fingerprint: fingerprintOf(tls.authority) };
}

function tell(
  world: World,
  request: ServeRequest,
  context: Context,
  people: readonly Person[],
  place: string,
  trust: Trusting | undefined,
): void {
  const { address, secure, trustAddress } = context.reach();
  world.out(
    startText({
      address,
      place,
      secure,
      people,
      open: !LOOPBACK.includes(request.host),
      setupCode: context.setup.code,
      hasHealthKey: context.healthKeys !== undefined,
      trust: trust && { address: trustAddress ?? '', fingerprint: trust.fingerprint },
      behindProxy: request.behindProxy.length > 0,
    }),
  );
}

async function run(request: ServeRequest, world: World): Promise<void> {
  const log = newLog();
  const place = journalPlace(world.env, request.data);
  const folder = place.in === 'folder' ? dirname(place.file) : world.env.DOFFLINE_DATA || USUAL_FOLDER;
  const tls = await tlsFor(request, folder, namesFor({ ...request, name: [] }));
  const ports = { main: request.port, trust: 0 };
  const reach = reachFor(request, tls, ports);
  const context = await open(place, world, log, reach);
  const front = frontOf(context, pageListener(world.page));
  const proxied = request.behindProxy.length > 0;
  const server = serverFor(front, tls?.now, proxied ? { fromOne: Infinity } : {});
  const trust = trusting(tls, reach);
  const servers = [server, ...(trust ? [trust.server] : [])];
  try {
    const people = await prepare(context, request);
    ports.main = await listening(server, request.port, request.host);
    if (trust)
      ports.trust = await listening(trust.server, request.trustPort ?? trustPortFor(request), request.host);
    const done =
      tls && keepFresh(tls, log, (pair) => 'setSecureContext' in server && server.setSecureContext(pair));
    log.info({ secure: reach().secure }, 'started');
    tell(world, request, context, people, placeName(place), trust);
    await signal();
    done?.();
    log.info('stopping');
  } finally {
    await stopped(context, front, servers);
    log.info('stopped');
  }
}

/** The port after the main one; any free one where that was asked for too. */
const trustPortFor = ({ port }: ServeRequest): number => (port === 0 ? 0 : Math.min(port + 1, 65_535));

function told(error: unknown): string {
  if (error instanceof JournalError) return error.message;
  if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')
    return 'The port is taken. Choose another one with --port (and --trust-port).';
  if (error instanceof Error && 'code' in error && error.code === 'EADDRNOTAVAIL')
    return 'This machine has no such address (--host).';
  return error instanceof Error ? error.message : String(error);
}

/** Serves until a signal comes. Gives back the exit status: 0 stopped as asked, 2 could not start. */
export async function serve(asked: unknown, world: World): Promise<0 | 2> {
  try {
    await run(readRequest(asked), world);
    return 0;
  } catch (error) {
    world.err(`error: ${told(error)}\n`);
    return 2;
  }
}
