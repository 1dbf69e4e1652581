// A running server from its parts: listening, and stopping without losing what is under way. A request that is being
// answered when the signal comes is finished; then the stores are closed, which brings the journal's log into its file.
import { createServer, type Server as HttpServer } from 'node:http';
import { createServer as createSecureServer, type Server as HttpsServer } from 'node:https';
import type { AddressInfo, Socket } from 'node:net';
import type { Context } from './context.ts';
import type { Front } from './front.ts';

/** Patience with slow senders, in milliseconds, and how large a request's head may be, in bytes. */
const LIMITS = {
  headersTimeout: 10_000,
  requestTimeout: 20_000,
  keepAliveTimeout: 30_000,
  connectionsCheckingInterval: 1000,
  maxHeaderSize: 16 * 1024,
  /** Nothing comes and nothing is taken: longer than the last paper of a full queue. Who never reads an answer holds nothing for good. */
  silence: 6 * 60_000,
  /** Connections from one address: one machine must not hold all there are. A proxy's are everybody's. */
  fromOne: 500,
} as const;

const TLS = { minVersion: 'TLSv1.2', handshakeTimeout: 10_000 } as const;

const MOST_CONNECTIONS = 2000;
/** So long requests under way may take after the signal. */
const LAST_MS = 10_000;

export interface Secrets {
  readonly cert: string;
  readonly key: string;
}

export type Patience = Partial<Record<keyof typeof LIMITS, number>>;

/** Hangs up on who has so many connections already. */
function limitEach(server: HttpServer | HttpsServer, most: number): void {
  const open = new Map<string, number>();
  server.on('connection', (socket: Socket) => {
    const from = socket.remoteAddress ?? '';
    const count = (open.get(from) ?? 0) + 1;
    open.set(from, count);
    socket.once('close', () => {
      const left = open.get(from)! - 1;
      if (left > 0) open.set(from, left);
      else open.delete(from);
    });
    if (count > most) socket.destroy();
  });
}

export function serverFor(
  front: Front,
  tls: Secrets | undefined,
  patience: Patience = {},
): HttpServer | HttpsServer {
  const { silence, fromOne, ...limits } = { ...LIMITS, ...patience };
  const listener = (...args: Parameters<Front['listener']>): void => void front.listener(...args);
  const server = tls
    ? createSecureServer({ ...limits, ...tls, ...TLS }, listener)
    : createServer(limits, listener);
  server.maxConnections = MOST_CONNECTIONS;
  server.timeout = silence;
  limitEach(server, fromOne);
  server.on('clientError', (error: NodeJS.ErrnoException, socket) =>
    front.unreadable(error.code ?? '', socket),
  );
  return server;
}

export function listening(server: HttpServer | HttpsServer, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

function closed(server: HttpServer | HttpsServer, lastMs: number): Promise<void> {
  return new Promise((resolve) => {
    // A browser keeps its connection after the last answer: it is closed as soon as nothing is under way on it.
    const idle = setInterval(() => server.closeIdleConnections(), 50);
    const end = setTimeout(() => server.closeAllConnections(), lastMs);
    server.close(() => {
      clearInterval(idle);
      clearTimeout(end);
      resolve();
    });
    server.closeIdleConnections();
  });
}

/** Accepts nothing more, finishes what is under way, closes the stores. */
export async function stopped(
  { journal, records, sights, papers }: Pick<Context, 'journal' | 'records' | 'sights' | 'papers'>,
  front: Front,
  servers: readonly (HttpServer | HttpsServer)[],
  lastMs = LAST_MS,
): Promise<void> {
  front.stop();
  await Promise.all(servers.map((server) => closed(server, lastMs)));
  papers.close();
  await sights.write();
  await journal.close();
  await records.close();
}
