// Starts the local server for the page beside this bundle (dist/app) and prints where to open it.
// PORT is the first port to try (4173 if not set, 0 for any free one).
import { fileURLToPath } from 'node:url';
import { papersBy } from './papers.ts';
import { createStaticServer, listen } from './static.ts';

function wantedPort(value: string | undefined): number {
  if (value === undefined || value === '') return 4173;
  if (!/^\d{1,5}$/.test(value) || Number(value) > 65_535) {
    throw new Error(`PORT must be a number from 0 to 65535, not "${value}"`);
  }
  return Number(value);
}

const port = wantedPort(process.env.PORT);
const beside = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const papers = papersBy({ program: beside('typeset.js') });
const server = createStaticServer(beside('app/'), papers);
console.log(`Doffline is open at ${await listen(server, port)} (this machine only). Stop it with Ctrl+C.`);

const stop = (): void => {
  papers.close();
  server.close();
  server.closeAllConnections();
};
process.once('SIGINT', stop);
process.once('SIGTERM', stop);
