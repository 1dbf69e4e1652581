// `doffline account`: what whoever has the machine may do to an account, where nobody else can. The work is the server's.
import type { Command } from 'commander';
import { builtServer } from './built.ts';
import type { Status } from './check.ts';
import { type Io, printable } from './io.ts';

interface LetInFlags {
  readonly data?: string;
}

async function letIn(io: Io, name: string, { data }: LetInFlags): Promise<Status> {
  const server = await builtServer(io, 'account');
  if (!server) return 2;
  const say = (to: (text: string) => void) => (text: string) => to(`${printable(text.trimEnd())}\n`);
  const terminal = { env: process.env, out: say(io.out), err: say(io.err) };
  return server.letInByName({ name, ...(data === undefined ? {} : { data }) }, terminal);
}

/** Whether a command is this one or one of its own. */
export const isAccount = (command: Command): boolean =>
  [command.name(), command.parent?.name()].includes('account');

export const ACCOUNT_STATUSES = `Exit status: 0 let in, 2 not, and the last line says why. Ask the person first, face to face, whether they chose their
password themselves: the lead knows the first one. docs/server.md tells who is let in to health records and who waits.`;

export function addAccount(root: Command, io: Io, finish: (status: Status) => void): void {
  const account = root
    .command('account')
    .description("accounts of the unit's server, where only whoever has the machine can help");
  account
    .command('let-in')
    .description('let an account of occupational health in to health records, where nobody is in who could')
    .argument('<name>', 'the name that they sign in with')
    .option('--data <folder>', "folder of the unit's data (default: DATABASE_URL, DOFFLINE_DATA, or data)")
    .action(async (name: string, flags: LetInFlags) => finish(await letIn(io, name, flags)));
}
