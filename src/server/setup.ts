// The unit's beginning. Whoever can read the server's terminal is believed to be its owner: it shows a code there while there
// is no lead, and the code makes the first one. The journal comes first, so that a crash between the two leaves nothing
// that cannot be done again.
import { randomUUID, timingSafeEqual } from 'node:crypto';
import type { BodyOf } from '../api/routes.ts';
import { isStrong } from '../api/passwordRule.ts';
import { type Role, ROLES } from '../api/roles.ts';
import { seen } from '../journal/reading.ts';
import type { Context } from './context.ts';
import { letFirstIn } from './health/lettingIn.ts';
import { SERVER_DEVICE, writeOwn } from './ownEntries.ts';
import { keep } from './passwords.ts';
import { Refusal } from './refusal.ts';
import { fingerprint, newId, newPassword, readCode } from './secrets.ts';
import { type Account, addAccount, type NewAccount } from './store/accounts.ts';
import { wasAnyOfHealth } from './store/healthAccess.ts';
import type { Sql } from './store/sql.ts';
import { addUnit, findUnit, type Unit } from './store/unit.ts';

/** The demonstration's unit. Nobody and nothing in it exists, and its name says so wherever it stands. */
const DEMO: Unit = {
  id: 'larkmoor-isolation',
  title: 'Larkmoor General Hospital (invented)',
  invented: true,
};

export interface Person {
  readonly name: string;
  readonly role: Role;
  readonly password: string;
}

export interface Made {
  readonly unit: Unit;
  readonly account: Account;
  /** The demonstration's people, with their passwords. */
  readonly people: readonly Person[];
}

const same = (one: string, other: string): boolean =>
  timingSafeEqual(Buffer.from(fingerprint(one)), Buffer.from(fingerprint(other)));

export function isSetupCode(context: Context, typed: string): boolean {
  const { code } = context.setup;
  return same(readCode(typed), readCode(code ?? randomUUID())) && code !== undefined;
}

/** What the journal there says of its unit. */
export async function unitInJournal({ journal }: Pick<Context, 'journal'>): Promise<Unit | undefined> {
  const [first] = await journal.read(1, { most: 1 });
  if (!first) return undefined;
  const entry = seen(first);
  const body = entry.kind === 'unit.created' ? entry.body : { title: first.entry.unit, invented: false };
  return { id: first.entry.unit, title: body.title, invented: body.invented };
}

async function begin(context: Context, wanted: Unit, by: string): Promise<Unit> {
  const there = (await findUnit(context.records)) ?? (await unitInJournal(context));
  // Nor is a demonstration made of a unit that is real.
  if (there && (there.id !== wanted.id || (wanted.invented && !there.invented)))
    throw new Refusal('other-unit-there', { expected: there.id });
  if (!(await unitInJournal(context)))
    await writeOwn(context.journal, {
      unit: wanted.id,
      device: SERVER_DEVICE,
      kind: 'unit.created',
      at: context.clock(),
      by,
      body: { title: wanted.title, invented: wanted.invented },
    });
  return there ?? wanted;
}

interface Entered {
  readonly lead: Account;
  /** The first of occupational health, where nobody was of it before. */
  readonly health: Account | undefined;
}

/** The unit and its people in the records. */
async function enter(sql: Sql, unit: Unit, people: readonly NewAccount[], now: Date): Promise<Entered> {
  if (!(await findUnit(sql))) await addUnit(sql, unit, now);
  const isFirst = !(await wasAnyOfHealth(sql));
  const made: Account[] = [];
  for (const person of people) {
    const account = await addAccount(sql, person, now);
    if (!account) throw new Refusal('name-taken');
    made.push(account);
  }
  return {
    lead: made[0]!,
    health: isFirst ? made.find(({ role }) => role === 'occupational-health') : undefined,
  };
}

async function make(context: Context, wanted: Unit, people: readonly Person[]): Promise<Made> {
  const person = newId('p');
  const accounts: NewAccount[] = [];
  for (const { name, role, password } of people)
    accounts.push({ name, role, password: await keep(password), firstPassword: false });
  const unit = await begin(context, wanted, person);
  const [lead, ...others] = accounts;
  const now = context.clock();
  const entered = await context.records.write((sql) =>
    enter(sql, unit, [{ ...lead!, person }, ...others], now),
  );
  context.setup.code = undefined;
  const { lead: account, health } = entered;
  if (health) await letFirstIn(context, health, { unit: unit.id, by: account, now });
  return { unit, account, people };
}

/** One press: the invented unit, with somebody of each role. The lead comes first. */
export async function makeDemo(context: Context): Promise<Made> {
  const roles = ['lead', ...ROLES.filter((role) => role !== 'lead')] as const;
  const people = roles.map((role) => ({ name: role, role, password: newPassword() }));
  return make(context, DEMO, people);
}

export async function makeUnit(
  context: Context,
  wanted: Extract<BodyOf<'create-unit'>, { demo: false }>,
): Promise<Made> {
  const { id, title, name, password } = wanted;
  if (!isStrong(password, name, id)) throw new Refusal('weak-password');
  const made = await make(context, { id, title, invented: false }, [{ name, role: 'lead', password }]);
  return { ...made, people: [] };
}
