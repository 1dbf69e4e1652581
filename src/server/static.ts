// Serves the built page on the loopback address. Built on node:http alone: it answers from a table of files in
// memory, and there is nothing to decide beyond which one. See files.ts for why no address can leave the folder.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { readSite, type ServedFile } from './files.ts';
import { SECURITY_HEADERS } from './headers.ts';
import { isForPapers, paperListener } from './localPapers.ts';
import type { Papers } from './papers.ts';

const LOOPBACK = '127.0.0.1';

/** Names by which a browser on this machine calls it. Any other is a foreign page that renamed its own host. */
const OWN_NAMES: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '[::1]']);

function isOwnHost(host: string | undefined): boolean {
  return host !== undefined && OWN_NAMES.has(host.toLowerCase().replace(/:\d+$/, ''));
}

/** The path of a request, decoded; undefined when it is not a proper address. */
function pathOf(request: IncomingMessage): string | undefined {
  const raw = (request.url ?? '').split(/[?#]/, 1)[0] ?? '';
  if (!raw.startsWith('/')) return undefined;
  try {
    return decodeURIComponent(raw);
  } catch {
    return undefined;
  }
}

/** A place inside the page ('/check') and not a file ('/check.js'): the page itself answers for it. */
function isPlaceInPage(path: string, request: IncomingMessage): boolean {
  const last = path.slice(path.lastIndexOf('/') + 1);
  return !last.includes('.') && (request.headers.accept ?? '').includes('text/html');
}

function refuse(
  response: ServerResponse,
  status: number,
  text: string,
  extra: Record<string, string> = {},
): void {
  response.writeHead(status, {
    ...SECURITY_HEADERS,
    ...extra,
    'Content-Type': 'text/plain; charset=utf-8',
    'Content-Length': Buffer.byteLength(text),
    'Cache-Control': 'no-store',
  });
  response.end(text);
}

function send(request: IncomingMessage, response: ServerResponse, file: ServedFile): void {
  const unchanged = request.headers['if-none-match'] === file.etag;
  response.writeHead(unchanged ? 304 : 200, {
    ...SECURITY_HEADERS,
    'Content-Type': file.type,
    ...(unchanged ? {} : { 'Content-Length': file.body.length }),
    'Cache-Control': file.forever ? 'public, max-age=31536000, immutable' : 'no-cache',
    ETag: file.etag,
  });
  response.end(unchanged || request.method === 'HEAD' ? undefined : file.body);
}

/**
 * Answers with the files below `root`: GET and HEAD; an unknown place gets index.html when the browser asks for a page,
 * and 404 otherwise. Throws when `root` holds no index.html.
 */
export function pageListener(root: string): (request: IncomingMessage, response: ServerResponse) => void {
  const site = readSite(root);
  const page = site.get('/index.html');
  if (page === undefined) throw new Error(`No index.html in ${root}: build the page first`);
  return (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return refuse(response, 405, 'Only GET and HEAD\n', { Allow: 'GET, HEAD' });
    }
    const path = pathOf(request);
    if (path === undefined) return refuse(response, 400, 'Not an address\n');
    const file = path === '/' ? page : site.get(path);
    if (file !== undefined) return send(request, response, file);
    if (isPlaceInPage(path, request)) return send(request, response, page);
    return refuse(response, 404, 'Not found\n');
  };
}

/** A server of the page for this machine alone, not yet listening. It sets papers where it is told how. */
export function createStaticServer(root: string, papers?: Papers): Server {
  const answer = pageListener(root);
  const print = papers && paperListener(papers);
  return createServer((request, response) => {
    if (!isOwnHost(request.headers.host)) return refuse(response, 421, 'Unknown host\n');
    if (print && isForPapers(request)) return print(request, response);
    return answer(request, response);
  });
}

function listenOnce(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, LOOPBACK, () => {
      server.off('error', reject);
      resolve();
    });
  });
}

function isPortTaken(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
}

/** Listens on `port`, or on the first free one of the `tries` after it. Returns the address to open. */
export async function listen(server: Server, port: number, tries = 100): Promise<string> {
  const last = port === 0 ? 0 : Math.min(port + tries, 65_535);
  for (let candidate = port; ; candidate += 1) {
    try {
      await listenOnce(server, candidate);
      break;
    } catch (error) {
      if (!isPortTaken(error) || candidate >= last) throw error;
    }
  }
  const bound = server.address();
  if (bound === null || typeof bound === 'string') throw new Error('The server has no port');
  return `http://${LOOPBACK}:${bound.port}/`;
}
