// `doffline account let-in`: whoever has the machine lets an account in to health records, where nobody is there who could. It may
// run beside the server; what it does is in the journal, and occupational health sees it.
import { existsSync } from 'node:fs';
import * as z from 'zod';
import { type JournalPlace, journalPlace, openJournal, placeName } from '../journal/adapters/open.ts';
import { recordsBeside } from '../journal/adapters/recordsFile.ts';
import type { Store } from '../journal/port.ts';
import { JournalError } from '../journal/problems.ts';
import { letIn } from './health/lettingIn.ts';
import { checkPair } from './pair.ts';
import { Refusal } from './refusal.ts';
import { folded } from './store/accounts.ts';
import { type HealthAccount, listHealthAccounts } from './store/healthAccess.ts';
import { openRecords } from './store/open.ts';
import type { Database } from './store/sql.ts';

export interface Terminal {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

const request = z.strictObject({ name: z.string(), data: z.string().optional() });

/** Nothing is begun anew by a mistyped folder. */
function checkThere(place: JournalPlace): void {
  if (place.in === 'folder' && !(existsSync(place.file) && existsSync(recordsBeside(place.file))))
    throw new Error(`There is no unit at ${placeName(place)}. Name the folder of its data with --data.`);
}

/** Who waits, for whoever mistyped a name or does not know it. */
function waitingText(all: readonly HealthAccount[]): string {
  const names = all.filter(({ health, disabled }) => health === 'waits' && !disabled).map(({ name }) => name);
  return names.length === 0 ? 'No account waits to be let in.' : `These wait: ${names.join('; ')}.`;
}

/** The account that is meant. Throws an Error that says why it cannot be let in, and what to do. */
function meant(all: readonly HealthAccount[], name: string): HealthAccount & { readonly since: string } {
  const found = all.find((one) => folded(one.name) === folded(name));
  if (!found) throw new Error(`No account of occupational health is called that. ${waitingText(all)}`);
  if (found.disabled)
    throw new Error(
      `${found.name} is closed. The lead opens an account again, on the page of the unit’s server.`,
    );
  if (found.health === 'in' || found.since === null)
    throw new Error(`${found.name} is let in already. ${waitingText(all)}`);
  if (found.firstPassword)
    throw new Error(
      `${found.name} still has the password that the lead gave, and the lead knows it. They sign in and choose their own first.`,
    );
  return { ...found, since: found.since };
}

async function lettingIn(records: Database, journal: Store, name: string, place: string): Promise<string> {
  const unit = await checkPair({ records, journal });
  if (!unit) throw new Error(`There is no unit at ${place}.`);
  const account = meant(await listHealthAccounts(records), name);
  const letting = { unit: unit.id, how: 'machine', by: null, now: new Date() } as const;
  await letIn({ records, journal }, account.id, account.since, letting);
  return account.name;
}

async function run(asked: unknown, { env }: Terminal): Promise<string> {
  const { name, data } = request.parse(asked);
  const place = journalPlace(env, data);
  checkThere(place);
  const journal = await openJournal(place);
  try {
    const records = await openRecords(place);
    try {
      return await lettingIn(records, journal, name, placeName(place));
    } finally {
      await records.close();
    }
  } finally {
    await journal.close();
  }
}

function told(error: unknown): string {
  if (error instanceof Refusal)
    return 'The account was changed meanwhile. See whether it still waits, and try again.';
  if (error instanceof JournalError || error instanceof Error) return error.message;
  return String(error);
}

/** Gives back the exit status: 0 let in, 2 not. */
export async function letInByName(asked: unknown, terminal: Terminal): Promise<0 | 2> {
  try {
    const name = await run(asked, terminal);
    terminal.out(
      `${name} is let in to health records. The journal says so, and occupational health sees it on its page.\n`,
    );
    return 0;
  } catch (error) {
    terminal.err(`error: ${told(error)}\n`);
    return 2;
  }
}
