// `doffline serve`: hands over to the built server.
import { type Command, InvalidArgumentError } from 'commander';
import { beside, builtServer } from './built.ts';
import type { Status } from './check.ts';
import type { Io } from './io.ts';

async function serve(io: Io, flags: object): Promise<Status> {
  const [page, typeset] = [beside('app'), beside('typeset.js')];
  const server = await builtServer(io, 'serve', [page]);
  if (!server) return 2;
  return server.serve(flags, { env: process.env, page, typeset, out: io.out, err: io.err });
}

function portIn(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535) throw new InvalidArgumentError('Write a number up to 65535.');
  return port;
}

const listed = (text: string, before: readonly string[] | undefined): readonly string[] => [
  ...(before ?? []),
  ...text.split(',').map((one) => one.trim()),
];

/** Whether a command is this one. */
export const isServe = (command: Command): boolean => command.name() === 'serve';

export const SERVE_STATUSES =
  'Exit status: 0 stopped as asked (SIGTERM or Ctrl+C), 2 could not be started. docs/server.md tells all.';

export function addServe(root: Command, io: Io, finish: (status: Status) => void): void {
  root
    .command('serve')
    .description('serve the unit: the page, accounts, paired tablets, the journal')
    .option('--port <number>', 'port to listen on (default: 4173)', portIn)
    .option('--host <address>', 'address to listen on; 0.0.0.0 for the network (default: this machine only)')
    .option('--data <folder>', "folder of the unit's data (default: DATABASE_URL, DOFFLINE_DATA, or data)")
    .option('--https', "https with the unit's own certificate authority, made where there is none")
    .option('--cert <file>', "https with the hospital's certificate, in PEM")
    .option('--key <file>', 'its private key, in PEM')
    .option('--name <names>', 'names and addresses by which browsers call it, with commas', listed)
    .option(
      '--trust-port <number>',
      'port of the page for trusting the authority (default: the next)',
      portIn,
    )
    .option('--behind-proxy <addresses>', 'proxies with https that are believed, with commas', listed)
    .option('--demo', 'where there is no unit: make the invented one, and show its passwords')
    .option('--new-lead', 'show a code with which another lead is made')
    .action(async (flags: object) => finish(await serve(io, flags)));
}
