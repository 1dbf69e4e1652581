// A unit's server as a process that can be killed: the real interface over a folder that outlives it, and the built page, at
// one address. Run with FOLDER, PAGE and PORT it serves until it is ended; the browser tests do that.
import { createServer, type IncomingMessage, request, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { SECURITY_HEADERS } from '../../src/server/headers.ts';
import { listen, pageListener } from '../../src/server/static.ts';
import { start } from '../server/harness.ts';

export const startUnit = async (folder: string) =>
  start({ place: { in: 'folder', file: join(folder, 'journal.sqlite') } });

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
  const onward = request({ host: '127.0.0.1', port, method, path: url, headers }, (answer) => {
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(response);
  });
  onward.on('error', () => response.destroy());
  incoming.pipe(onward);
}

async function serve(folder: string, page: string, port: number): Promise<void> {
  const unit = await startUnit(folder);
  const pages = pageListener(page);
  const server = createServer((incoming, response) => {
    if (incoming.url?.startsWith('/api/')) return handOn(unit.port, incoming, response);
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    return pages(incoming, response);
  });
  await listen(server, port, 0);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { FOLDER = '', PAGE = '', PORT = '0' } = process.env;
  await serve(FOLDER, PAGE, Number(PORT));
}
