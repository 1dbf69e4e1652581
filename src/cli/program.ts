// The commands, their arguments and their help. `main` is a plain function of arguments and streams that returns the exit
// status, so that tests call it as the shell does.
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { AGENTS, type Agent } from '../domain/products.ts';
import { DOCUMENT_KINDS, PAPER_STAGES } from '../print/index.ts';
import { LANGUAGES } from '../words/languages.ts';
import { ACCOUNT_STATUSES, addAccount, isAccount } from './account.ts';
import { cautionsText, check, type CheckedHow, type Status } from './check.ts';
import { compare } from './compare.ts';
import { cost } from './cost.ts';
import { explain } from './explain.ts';
import type { Io } from './io.ts';
import { addJournal, isJournal, JOURNAL_STATUSES } from './journal.ts';
import { order, type OrderRequest } from './order.ts';
import { print, type PrintRequest } from './print.ts';
import { replay } from './replay.ts';
import { addServe, isServe, SERVE_STATUSES } from './serve.ts';
import { PAPERS } from '../typeset/compile.ts';
import { VERSION } from './version.ts';
import { type Speech, speechFor, type SpeechRequest } from './wording.ts';

interface Shared {
  readonly agent?: string;
}

interface Dated extends Shared {
  readonly date?: string;
}

/** A command that needs words: they are loaded first, and nothing else is done where that fails. */
async function spoken(
  io: Io,
  request: SpeechRequest,
  work: (speech: Speech) => Promise<Status>,
): Promise<Status> {
  const speech = await speechFor(io, request);
  return speech ? work(speech) : 2;
}

const languageOption = (): Option =>
  new Option('--language <tag>', 'language of what is said about the procedure')
    .choices(LANGUAGES)
    .env('DOFFLINE_LANGUAGE')
    .default('en');

const wordingOption = (): Option =>
  new Option('--wording <file>', "the unit's own sentences (docs/languages.md)");

function howIn({ date, ...shared }: Dated): CheckedHow {
  const agents = agentsIn(shared);
  return { ...(agents ? { agents } : {}), ...(date === undefined ? {} : { day: date }) };
}

function agentsIn({ agent }: Shared): readonly Agent[] | undefined {
  if (agent === undefined) return undefined;
  return agent === 'all' ? AGENTS : AGENTS.filter((known) => known === agent);
}

function dateIn(text: string): string {
  const day = new Date(`${text}T00:00:00Z`);
  const valid = /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(day.getTime());
  if (!valid || !day.toISOString().startsWith(text))
    throw new InvalidArgumentError('Write a day as 2026-03-31.');
  return text;
}

const dayOption = (): Option =>
  new Option(
    '--date <day>',
    'tell accepted departures whose day of review is before it; none otherwise, the check has no clock',
  ).argParser(dateIn);

const agentOption = (): Option =>
  new Option('--agent <agent>', "agent to check against (default: the procedure's own)").choices([
    ...AGENTS,
    'all',
  ]);

const file = (): Argument => new Argument('<file>', 'a procedure file, or - for standard input');

type Finish = (status: Status) => void;

function addCheck(root: Command, io: Io, finish: Finish): void {
  root
    .command('check')
    .description('check procedure files')
    .argument('<files...>', 'procedure files, or - for standard input')
    .option('--json', 'print one object instead of text (docs/command-line.md)')
    .addOption(agentOption())
    .addOption(dayOption())
    .addOption(languageOption())
    .addOption(wordingOption())
    .action(async (files: string[], options: Dated & SpeechRequest & { json?: boolean }) => {
      const how = { json: options.json ?? false, how: howIn(options) };
      finish(await spoken(io, options, (speech) => check(io, speech, files, how)));
    });
}

function addExplain(root: Command, io: Io, finish: Finish): void {
  root
    .command('explain')
    .description('tell all about a finding code (or its beginning) or a surface')
    .addArgument(file())
    .argument('<code-or-surface...>', 'like one-slip.mucosa, practice, wearer.hand.left, or: left hand')
    .addOption(agentOption())
    .addOption(dayOption())
    .addOption(languageOption())
    .addOption(wordingOption())
    .action(async (path: string, asked: string[], options: Dated & SpeechRequest) => {
      const how = howIn(options);
      finish(await spoken(io, options, (speech) => explain(io, speech, path, asked.join(' '), how)));
    });
}

function addReplay(root: Command, io: Io, finish: Finish): void {
  root
    .command('replay')
    .description('run exactly the slips of a finding or combination, step by step')
    .addArgument(file())
    .argument('<id>', 'the id that stands beside it')
    .addOption(languageOption())
    .addOption(wordingOption())
    .action(async (path: string, id: string, options: SpeechRequest) => {
      finish(await spoken(io, options, (speech) => replay(io, speech, path, id)));
    });
}

function addCompare(root: Command, io: Io, finish: Finish): void {
  root
    .command('compare')
    .description('compare two procedures or versions: steps, findings, barriers, chances, time, supplies')
    .argument('<first>', 'a procedure file, or - for standard input')
    .argument('<second>', 'the file to compare with it')
    .option('--json', 'print one object instead of text (docs/command-line.md)')
    .addOption(agentOption())
    .action(async (first: string, second: string, options: Shared & { json?: boolean }) => {
      const agents = agentsIn(options);
      finish(
        await compare(io, [first, second], { json: options.json ?? false, ...(agents ? { agents } : {}) }),
      );
    });
}

const MOST_RUNS = 1000;

function runsIn(text: string): number {
  const runs = Number(text);
  if (!Number.isInteger(runs) || runs < 1 || runs > MOST_RUNS)
    throw new InvalidArgumentError(`Write a whole number from 1 to ${MOST_RUNS}.`);
  return runs;
}

interface CostFlags {
  readonly json?: boolean;
  readonly runs?: number;
  readonly prices?: string;
}

function addCost(root: Command, io: Io, finish: Finish): void {
  root
    .command('cost')
    .description('count what a run takes: equipment, wipes, hand rub, mats, minutes, waste')
    .addArgument(file())
    .option('--runs <number>', 'runs a day', runsIn)
    .option('--prices <file>', 'a price list of your own (docs/command-line.md); there is no default')
    .option('--json', 'print one object instead of text (docs/command-line.md)')
    .action(async (path: string, { json = false, runs = 1, prices }: CostFlags) => {
      finish(await cost(io, path, { json, runs, ...(prices === undefined ? {} : { prices }) }));
    });
}

const MOST_SECONDS = 3600;

function secondsIn(text: string): number {
  const seconds = Number(text);
  if (!(seconds > 0) || seconds > MOST_SECONDS)
    throw new InvalidArgumentError(`Write a number of seconds up to ${MOST_SECONDS}.`);
  return seconds;
}

type OrderFlags = Omit<OrderRequest, 'agent'> & SpeechRequest & { readonly agent?: Agent };

function addOrder(root: Command, io: Io, finish: Finish): void {
  root
    .command('order')
    .description('search for the best doffing order, with proof or the gap; or put one item for another')
    .addArgument(file())
    .addOption(
      new Option('--agent <agent>', "agent to search against (default: the procedure's first)").choices(
        AGENTS,
      ),
    )
    .option('--seconds <number>', 'time for the proof; what is left then is told as the gap', secondsIn, 20)
    .option('--free', 'let it depart from published practice where the given procedure does not')
    .option('--instead <from=to>', 'least rewriting with one item or product in place of another')
    .option('--out <file>', 'write the procedure found to this file')
    .option('--force', 'overwrite it if it is there')
    .option('--json', 'print one object instead of text (docs/command-line.md)')
    .addOption(languageOption())
    .addOption(wordingOption())
    .action(async (path: string, flags: OrderFlags) => {
      finish(await spoken(io, flags, (speech) => order(io, speech, path, flags)));
    });
}

interface PrintFlags extends Omit<PrintRequest, 'kind'>, SpeechRequest {
  readonly as: PrintRequest['kind'];
}

function addPrint(root: Command, io: Io, finish: Finish): void {
  root
    .command('print')
    .description('print a procedure as a PDF: wall chart, read-aloud script, card, sign-off sheet, dossier')
    .addArgument(file())
    .addOption(new Option('--as <document>', 'which paper').choices(DOCUMENT_KINDS).makeOptionMandatory())
    .addOption(new Option('--paper <size>', 'size of the sheets').choices(PAPERS).default('a4'))
    .addOption(languageOption())
    .addOption(wordingOption())
    .option('--date <day>', 'the day to print on it; none otherwise, so that prints can be compared', dateIn)
    .addOption(
      new Option('--stage <stage>', 'what to say of its approval on every page; nothing otherwise').choices(
        PAPER_STAGES,
      ),
    )
    .option('--out <file>', 'the file to write (otherwise named after the procedure and the paper)')
    .option('--force', 'write over a file that is there')
    .action(async (path: string, { as, ...flags }: PrintFlags) => {
      finish(await spoken(io, flags, (speech) => print(io, speech, path, { ...flags, kind: as })));
    });
}

const STATUSES =
  'Exit status of check: 0 nothing above a note, 1 findings of severity error, 2 something could not be read.';

function statusesOf(command: Command): string {
  if (isServe(command)) return SERVE_STATUSES;
  if (isAccount(command)) return ACCOUNT_STATUSES;
  return isJournal(command) ? JOURNAL_STATUSES : STATUSES;
}

const afterHelp = ({ command }: { readonly command: Command }): string =>
  `\n${statusesOf(command)}\n\n${cautionsText()}`;

/** The program; each command leaves its status in `finish`. Commands inherit streams and the way errors end. */
function program(io: Io, finish: Finish): Command {
  const plain = (): boolean => false;
  const root = new Command('doffline')
    .description('Finds the steps of a donning or doffing procedure that are one slip away from bare skin.')
    .version(VERSION, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .configureOutput({ writeOut: io.out, writeErr: io.err, getOutHasColors: plain, getErrHasColors: plain })
    .exitOverride()
    .addHelpText('afterAll', afterHelp);
  addCheck(root, io, finish);
  addExplain(root, io, finish);
  addReplay(root, io, finish);
  addCompare(root, io, finish);
  addCost(root, io, finish);
  addOrder(root, io, finish);
  addPrint(root, io, finish);
  addJournal(root, io, finish);
  addServe(root, io, finish);
  addAccount(root, io, finish);
  return root;
}

/** Whatever the commands cannot be told: help and version end well, everything else is a status of 2. */
function statusOfError(error: unknown): Status {
  if (!(error instanceof CommanderError)) throw error;
  return error.exitCode === 0 ? 0 : 2;
}

/** Runs the command line with these arguments (without the program's own name). Returns the exit status. */
export async function main(args: readonly string[], io: Io): Promise<Status> {
  let status: Status = 0;
  try {
    await program(io, (found) => {
      status = found;
    }).parseAsync([...args], { from: 'user' });
  } catch (error) {
    return statusOfError(error);
  }
  return status;
}
