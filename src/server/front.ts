// The first to see a request: by what name it comes, whether it is for the interface or for the page, and what is noted of
// it. Everything that is answered carries the security headers.
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import { getRequestListener } from '@hono/node-server';
import { PROBLEMS } from '../api/problems.ts';
import type { Context } from './context.ts';
import { gathered } from './gather.ts';
import { SECURITY_HEADERS } from './headers.ts';
import { type Arrived, apiOf } from './interface.ts';
import { logRequest } from './log.ts';
import { type Small, smallPage } from './pages/address.ts';
import { arrivalOf } from './reach.ts';
import { bodyOf, Refusal } from './refusal.ts';
import { handlers } from './routes/index.ts';
import { addMonitoring } from './monitoring.ts';
import { openApiDocument } from './openapi.ts';
import { newTrace, type Trace } from './trace.ts';

type Listener = (request: IncomingMessage, response: ServerResponse) => unknown;

export interface Front {
  readonly listener: Listener;
  /** Ends a connection whose request could not be read, or came too slowly. `code`: what Node calls it. */
  readonly unreadable: (code: string, socket: Duplex) => void;
  /** From now on every answer closes its connection. */
  readonly stop: () => void;
}

/** A year. Only where the certificate is the hospital's own. */
const LASTING = 'max-age=31536000';

const isInterface = ({ url = '' }: IncomingMessage): boolean =>
  /^\/(api(\/|$|\?)|health$|metrics$)/i.test(url);

/** As the interface's addresses are written. Others would be put right on the way, and mean what they do not say. */
const isPlain = ({ url = '' }: IncomingMessage): boolean => /^(\/[\w-]+)+(\.json)?(\?|$)/.test(url);

function note({ log, metrics }: Context, trace: Trace, request: IncomingMessage, status: number): void {
  if (trace.untold && status < 400) return;
  const method = request.method ?? '';
  metrics.request(trace.route, method, status, (performance.now() - trace.since) / 1000);
  if (trace.route !== 'page' || status >= 400) logRequest(log, trace, method, status);
}

function refuse(
  response: ServerResponse,
  trace: Trace,
  code: 'wrong-host' | 'not-through-proxy' | 'not-found',
): void {
  trace.code = code;
  const text = JSON.stringify({ problem: bodyOf(new Refusal(code), trace.id) });
  response.writeHead(PROBLEMS[code].status, { 'Content-Type': 'application/json', Connection: 'close' });
  response.end(text);
}

function give(request: IncomingMessage, response: ServerResponse, { type, body }: Small): void {
  response.writeHead(200, { 'Content-Type': type, 'Cache-Control': 'no-store' });
  response.end(request.method === 'HEAD' ? undefined : body);
}

const UNREADABLE: Readonly<Record<string, string>> = {
  HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
  ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
};

function hangUp({ log }: Context, code: string, socket: Duplex): void {
  // Whoever went away needs no answer and no line in the log.
  if (code === 'ECONNRESET' || !socket.writable) return void socket.destroy();
  const status = UNREADABLE[code] ?? '400 Bad Request';
  log.warn({ status: Number(status.slice(0, 3)), code: 'unreadable', why: code }, 'refused');
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

/** The interface over Node's server; what is known of each request goes along. */
function interfaceListener(context: Context, arrived: WeakMap<IncomingMessage, Arrived>): Listener {
  const app = apiOf(context, handlers);
  addMonitoring(app, context);
  let description: object | undefined;
  app.get('/api/openapi.json', (http) => {
    http.env.trace.route = 'openapi';
    description ??= openApiDocument();
    return http.json(description);
  });
  return getRequestListener(
    (request, env) => {
      const incoming = env.incoming as IncomingMessage;
      return app.fetch(request, { ...env, ...arrived.get(incoming) });
    },
    { overrideGlobalObjects: false },
  );
}

/** `page` answers for the built page. */
export function frontOf(context: Context, page: Listener): Front {
  const arrived = new WeakMap<IncomingMessage, Arrived>();
  const journal = { ...context.journal, append: gathered(context.journal.append) };
  const answer = interfaceListener({ ...context, journal }, arrived);
  let stopping = false;
  const listener: Listener = (request, response) => {
    const trace = newTrace();
    const reach = context.reach();
    // 499: whoever asked went away before the answer was whole.
    response.once('close', () =>
      note(context, trace, request, response.writableFinished ? response.statusCode : 499),
    );
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    if (reach.lasting) response.setHeader('Strict-Transport-Security', LASTING);
    if (stopping) response.setHeader('Connection', 'close');
    const arrival = arrivalOf(request, reach);
    if (typeof arrival === 'string') return refuse(response, trace, arrival as 'wrong-host');
    if (!isInterface(request)) {
      trace.route = 'page';
      const small = smallPage((request.url ?? '').split('?', 1)[0] ?? '', reach, arrival.host);
      const isRead = request.method === 'GET' || request.method === 'HEAD';
      return small && isRead ? give(request, response, small) : page(request, response);
    }
    response.setHeader('Cache-Control', 'no-store');
    if (!isPlain(request)) return refuse(response, trace, 'not-found');
    arrived.set(request, { trace, arrival });
    return answer(request, response);
  };
  return {
    listener,
    unreadable: (code, socket) => hangUp(context, code, socket),
    stop: () => {
      stopping = true;
    },
  };
}
