// A unit's server as a process that can be killed: the real interface over a folder that outlives it, and the built page, at
// one address. Run with FOLDER, PAGE and PORT it serves until it is ended; the browser tests do that. With KEYLESS it has no key for
// health records.
import { createServer, type IncomingMessage, request, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { SECURITY_HEADERS } from '../../src/server/headers.ts';
import { listen, pageListener } from '../../src/server/static.ts';
import { type Options, start } from '../server/harness.ts';

export const startUnit = async (folder: string, options: Options = {}) =>
  start({ place: { in: 'folder', file: join(folder, 'journal.sqlite') }, ...options });

/** Hands a request for the interface on, as if the browser had called it by its own address. */
function handOn(port: number, incoming: IncomingMessage, response: ServerResponse): void {
  const host = `127.0.0.1:${port}`;
  const { origin } = incoming.headers;
  const headers = {
    ...incoming.headers,
    host,
    ...(origin === undefined ? {} : { origin: `http://${host}` }),
  };
  const { method, url } = incoming;
  // A connection of its own for each: a kept one may be closed by the other side at that moment.
  const onward = request({ host: '127.0.0.1', port, method, path: url, headers, agent: false }, (answer) => {
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(response);
  });
  onward.on('error', () => response.destroy());
  incoming.pipe(onward);
}

async function serve(folder: string, page: string, port: number, options: Options): Promise<void> {
  const unit = await startUnit(folder, options);
  const pages = pageListener(page);
  const server = createServer((incoming, response) => {
    if (incoming.url?.startsWith('/api/')) return handOn(unit.port, incoming, response);
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    return pages(incoming, response);
  });
  await listen(server, port, 0);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { FOLDER = '', PAGE = '', PORT = '0', KEYLESS } = process.env;
  await serve(FOLDER, PAGE, Number(PORT), KEYLESS === undefined ? {} : { healthKey: undefined });
}
