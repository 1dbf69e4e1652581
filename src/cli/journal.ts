// `doffline journal`: verify, back up, restore, export. They read the journal while others write to it, and never change an
// entry. The database's package loads only when a journal is opened.
import { existsSync } from 'node:fs';
import { type Command, InvalidArgumentError } from 'commander';
import type { JournalPlace } from '../journal/adapters/open.ts';
import { type Audit, audit } from '../journal/audit.ts';
import type { Head } from '../journal/entry.ts';
import { exportLine } from '../journal/export.ts';
import { pages } from '../journal/fold.ts';
import type { Store } from '../journal/port.ts';
import { JournalError } from '../journal/problems.ts';
import type { Status } from './check.ts';
import { type Io, printable } from './io.ts';
import { JOURNAL_FORMAT, type JournalReport } from './journalSchema.ts';
import { auditText, flawSentence, isSound, keptText, restoredText, thereText } from './journalText.ts';
import { VERSION } from './version.ts';

interface Where {
  readonly data?: string;
}

const stores = () => import('../journal/adapters/open.ts');
const backups = () => import('../journal/adapters/backup.ts');

const failed = (error: unknown): string => {
  if (error instanceof JournalError) return error.message;
  throw error;
};

type Reading = { readonly problem: string } | { readonly store: Store; readonly place: string };

/** Opens the journal that is meant for reading, or says why there is none. */
async function opened(where: JournalPlace): Promise<Reading> {
  const { placeName, readJournal } = await stores();
  const place = placeName(where);
  try {
    const store = await readJournal(where);
    return store ? { store, place } : { problem: `There is no journal at ${printable(place)}.` };
  } catch (error) {
    return { problem: `${printable(place)}: ${failed(error)}` };
  }
}

async function placeOf({ data }: Where): Promise<JournalPlace> {
  const { journalPlace } = await stores();
  return journalPlace(process.env, data);
}

/** Runs work on the journal for reading; what fails is said, and ends with a status of 2. */
async function reading(
  io: Io,
  where: JournalPlace,
  work: (store: Store, place: string) => Promise<Status>,
): Promise<Status> {
  const found = await opened(where);
  if ('problem' in found) {
    io.err(`error: ${found.problem}\n`);
    return 2;
  }
  try {
    return await work(found.store, found.place);
  } catch (error) {
    io.err(`error: ${failed(error)}\n`);
    return 2;
  } finally {
    await found.store.close();
  }
}

function reportOf(place: string, found: Audit): JournalReport {
  const { flaws, damage, falseSnapshots, ...rest } = found;
  return {
    format: JOURNAL_FORMAT,
    version: VERSION,
    status: isSound(found) ? 0 : 1,
    place,
    ...rest,
    flaws: flaws.map((flaw) => ({ ...flaw, sentence: flawSentence(flaw) })),
    damage: [...damage],
    falseSnapshots: [...falseSnapshots],
    problem: null,
  };
}

const nothing = (place: string, problem: string): JournalReport => ({
  format: JOURNAL_FORMAT,
  version: VERSION,
  status: 2,
  place,
  entries: 0,
  devices: 0,
  head: { number: 0, hash: '' },
  flaws: [],
  more: 0,
  damage: [],
  falseSnapshots: [],
  problem,
});

interface VerifyFlags extends Where {
  readonly json?: boolean;
  readonly expect?: Head;
}

async function verify(io: Io, { json = false, expect, ...where }: VerifyFlags): Promise<Status> {
  const meant = await placeOf(where);
  const print = (report: JournalReport): void => io.out(`${JSON.stringify(report, null, 2)}\n`);
  const found = await opened(meant);
  if ('problem' in found) {
    if (json) print(nothing((await stores()).placeName(meant), found.problem));
    else io.err(`error: ${found.problem}\n`);
    return 2;
  }
  const { selfCheckOf } = await stores();
  try {
    const told = await audit(found.store, {
      ...(expect ? { expected: expect } : {}),
      selfCheck: () => selfCheckOf(found.store),
    });
    if (json) print(reportOf(found.place, told));
    else io.out(auditText(found.place, told));
    return isSound(told) ? 0 : 1;
  } finally {
    await found.store.close();
  }
}

/** Verifies a file that a backup was made of, or that is to be restored. */
async function auditFile(file: string): Promise<Audit> {
  const { readJournal, selfCheckOf } = await stores();
  const store = await readJournal({ in: 'folder', file });
  if (!store) throw new JournalError({ code: 'unavailable', detail: `there is no file ${file}` });
  try {
    return await audit(store, { selfCheck: () => selfCheckOf(store) });
  } finally {
    await store.close();
  }
}

/** What is in the file besides the journal. Throws where that is damaged. */
async function tellKept(io: Io, meant: JournalPlace, file: string): Promise<void> {
  const { keptIn } = await backups();
  io.out(keptText(meant.in, await keptIn(file)));
}

async function backup(io: Io, { to, ...where }: Where & { readonly to: string }): Promise<Status> {
  const meant = await placeOf(where);
  if (existsSync(to)) {
    io.err(`error: ${printable(to)} is there already. A backup overwrites nothing: name another file.\n`);
    return 2;
  }
  return reading(io, meant, async (store) => {
    const { makeBackup } = await backups();
    await makeBackup(meant, store, to, new Date());
    const found = await auditFile(to);
    io.out(auditText(to, found));
    await tellKept(io, meant, to);
    return isSound(found) ? 0 : 1;
  });
}

interface RestoreFlags extends Where {
  readonly force?: boolean;
}

/** Whether a backup may be restored as it is; says why not. */
async function isRestorable(io: Io, from: string, found: Audit): Promise<boolean> {
  const { keptIn } = await backups();
  try {
    if (isSound(found)) {
      await keptIn(from);
      return true;
    }
    io.err(auditText(from, found));
  } catch (error) {
    if (!(error instanceof JournalError) || error.problem.code !== 'damaged') throw error;
    io.err(`${error.message}\n`);
  }
  io.err('error: This backup is damaged and was not restored.\n');
  return false;
}

async function restoreInto(io: Io, from: string, meant: JournalPlace, force: boolean): Promise<Status> {
  const { alreadyAt, keptIn, restore: put } = await backups();
  const { placeName } = await stores();
  const found = await auditFile(from);
  if (!(await isRestorable(io, from, found))) return 1;
  const kept = await keptIn(from);
  const there = force ? [] : await alreadyAt(meant);
  if (there.length > 0) {
    io.err(thereText(there, kept !== undefined));
    return 2;
  }
  const restored = await put(from, meant);
  const { number, hash } = found.head;
  io.out(
    `${printable(placeName(meant))}: restored, ${found.entries} entries, ends at ${number}:${hash}\n` +
      restoredText(meant.in, kept, restored),
  );
  return 0;
}

async function restore(io: Io, from: string, { force = false, ...where }: RestoreFlags): Promise<Status> {
  try {
    return await restoreInto(io, from, await placeOf(where), force);
  } catch (error) {
    io.err(`error: ${failed(error)}\n`);
    return 2;
  }
}

interface ExportFlags extends Where {
  readonly withText?: boolean;
}

async function exportLines(io: Io, { withText = false, ...where }: ExportFlags): Promise<Status> {
  return reading(io, await placeOf(where), async (store) => {
    const { number } = await store.head();
    for await (const page of pages(store)) {
      const lines = page.filter(({ unitNumber }) => unitNumber <= number);
      io.out(lines.map((one) => `${exportLine(one, { text: withText })}\n`).join(''));
      if (lines.length < page.length) break;
    }
    return 0;
  });
}

function headIn(text: string): Head {
  const [, number, hash] = /^(\d{1,15}):([0-9a-f]{64})$/.exec(text) ?? [];
  if (number === undefined || hash === undefined)
    throw new InvalidArgumentError('Write it as verify shows it: a number, a colon, 64 digits.');
  return { number: Number(number), hash };
}

const DATA = "folder of the journal (default: the environment's DATABASE_URL, DOFFLINE_DATA, or data)";

export const JOURNAL_STATUSES = `Exit status: 0 done, and all is as it was stored; 1 something is altered, missing or damaged; 2 it could not be
done, or there is no journal. docs/journal.md tells what the journal holds, what its chains can show and what not.`;

/** Whether a command is this one or one of its own. */
export const isJournal = (command: Command): boolean =>
  [command.name(), command.parent?.name()].includes('journal');

export function addJournal(root: Command, io: Io, finish: (status: Status) => void): void {
  const journal = root
    .command('journal')
    .description("the unit's record: verify it, back it up, restore it, export it");
  journal
    .command('verify')
    .description('find every altered, missing or moved entry')
    .option('--data <folder>', DATA)
    .option('--expect <number:hash>', 'an end that was written down earlier', headIn)
    .option('--json', 'print one object instead of text (docs/journal.md)')
    .action(async (flags: VerifyFlags) => finish(await verify(io, flags)));
  journal
    .command('backup')
    .description(
      "write the journal and the server's records as they stand to a file, while others go on writing",
    )
    .requiredOption('--to <file>', 'the file to write; it must not exist')
    .option('--data <folder>', DATA)
    .action(async (flags: Where & { readonly to: string }) => finish(await backup(io, flags)));
  journal
    .command('restore')
    .description('put a backup in place')
    .argument('<file>', 'a file that backup wrote')
    .option('--data <folder>', DATA)
    .option('--force', 'where a journal or records are there: put them aside')
    .action(async (from: string, flags: RestoreFlags) => finish(await restore(io, from, flags)));
  journal
    .command('export')
    .description('print every entry as a line of JSON, without free text, in which names may stand')
    .option('--data <folder>', DATA)
    .option('--with-text', 'with everything that was typed')
    .action(async (flags: ExportFlags) => finish(await exportLines(io, flags)));
}
