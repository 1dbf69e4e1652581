// Letting an account in to health records: by somebody who is in, or on the server's machine. The journal is told first, in a chain
// of its own: where that cannot be stored nobody is let in. The unit's first account comes in by itself while there is nothing yet
// that it could read; nobody else does, whatever a lead closes, makes or changes.
import type { Bodies } from '../../journal/kinds/index.ts';
import type { Store } from '../../journal/port.ts';
import type { Context } from '../context.ts';
import { toldError } from '../log.ts';
import { HEALTH_DEVICE, headOfDevice, LETTINGS_DEVICE, writeOwn } from '../ownEntries.ts';
import { Refusal } from '../refusal.ts';
import type { Account } from '../store/accounts.ts';
import { type HealthAccount, listHealthAccounts, setLetIn } from '../store/healthAccess.ts';
import type { Database } from '../store/sql.ts';

interface Stores {
  readonly records: Database;
  readonly journal: Pick<Store, 'read' | 'append'>;
}

export interface Letting {
  readonly unit: string;
  readonly how: Bodies['health.let-in']['how'];
  /** Null on the machine. */
  readonly by: Pick<Account, 'id' | 'person'> | null;
  readonly now: Date;
}

async function note({ journal }: Stores, account: Account, { unit, how, by, now }: Letting): Promise<void> {
  await writeOwn(journal, {
    unit,
    device: LETTINGS_DEVICE,
    kind: 'health.let-in',
    at: now,
    by: by?.person ?? null,
    body: { account: account.id, person: account.person, how, byAccount: by?.id ?? null },
  });
}

async function waiting({ records }: Stores, id: string, since: string): Promise<HealthAccount> {
  const found = (await listHealthAccounts(records)).find((one) => one.id === id);
  if (!found || found.disabled || found.health !== 'waits' || found.since !== since)
    throw new Refusal('not-waiting');
  // The lead knows that password: whoever is let in must be the one who chose another.
  if (found.firstPassword) throw new Refusal('still-first-password');
  return found;
}

/** Lets in the account that waits since then. */
export async function letIn(stores: Stores, id: string, since: string, letting: Letting): Promise<void> {
  await note(stores, await waiting(stores, id, since), letting);
  const done = await stores.records.write((sql) => setLetIn(sql, id, since, letting.now));
  if (!done) throw new Refusal('not-waiting');
}

/** Neither a record nor anybody who was let in before: records without their accounts may have been put beside this journal. */
async function isUntouched({ journal }: Stores): Promise<boolean> {
  const heads = await Promise.all([HEALTH_DEVICE, LETTINGS_DEVICE].map((one) => headOfDevice(journal, one)));
  return heads.every(({ number }) => number === 0);
}

/**
 * The first account that is of occupational health, made or changed a moment ago (`letting.now`), while no other ever was. Where the
 * journal cannot be told it waits, like any other: the account itself is made, and its password must not be lost.
 */
export async function letFirstIn(
  { records, journal, log }: Pick<Context, 'records' | 'journal' | 'log'>,
  account: Account,
  letting: Omit<Letting, 'how'>,
): Promise<Account> {
  const stores = { records, journal };
  const since = letting.now.toISOString();
  try {
    if (!(await isUntouched(stores))) return account;
    await note(stores, account, { ...letting, how: 'first' });
    const done = await records.write((sql) => setLetIn(sql, account.id, since, letting.now));
    return done ? { ...account, health: 'in' } : account;
  } catch (error) {
    log.warn(toldError(error), 'a first account could not be let in');
    return account;
  }
}
