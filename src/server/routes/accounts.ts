// The lead's list of who may sign in. Whatever changes an account ends its sessions and the codes it made; the last lead cannot be
// taken away; and what a lead does to an account of occupational health never opens health records to them.
import type { BodyOf } from '../../api/routes.ts';
import { type Call, type Handlers, personOf } from '../context.ts';
import { letFirstIn } from '../health/lettingIn.ts';
import { keep } from '../passwords.ts';
import { Refusal } from '../refusal.ts';
import { newPassword } from '../secrets.ts';
import {
  type Account,
  addAccount,
  endSessionsOf,
  findById,
  hasLead,
  listAccounts,
  type NewAccount,
  setDisabled,
  setPassword,
  setRole,
} from '../store/accounts.ts';
import { voidPairingsBy } from '../store/devices.ts';
import { setWaiting, wasAnyOfHealth } from '../store/healthAccess.ts';
import type { Sql } from '../store/sql.ts';
import { unitOf } from './session.ts';

const leads = ({ role, disabled }: Pick<Account, 'role' | 'disabled'>): boolean =>
  role === 'lead' && !disabled;

const isHealth = ({ role }: Pick<Account, 'role'>): boolean => role === 'occupational-health';

/** By a role, by being opened again or by a first password a lead could come in as somebody else. */
const mustWait = (before: Account, after: Account, isNewPassword: boolean): boolean =>
  (isHealth(before) || isHealth(after)) &&
  (before.role !== after.role || (before.disabled && !after.disabled) || isNewPassword);

interface Changed {
  readonly account: Account;
  /** Nobody was of occupational health before. */
  readonly isFirst: boolean;
}

async function change(
  sql: Sql,
  id: string,
  { role, disabled }: BodyOf<'change-account'>,
  password: string | undefined,
  now: Date,
): Promise<Changed> {
  const found = await findById(sql, id);
  if (!found) throw new Refusal('not-found');
  const { account } = found;
  const changed: Account = {
    ...account,
    role: role ?? account.role,
    disabled: disabled ?? account.disabled,
    firstPassword: account.firstPassword || password !== undefined,
  };
  if (leads(account) && !leads(changed) && !(await hasLead(sql, id))) throw new Refusal('last-lead');
  await setRole(sql, id, changed.role);
  await setDisabled(sql, id, changed.disabled);
  if (password !== undefined) await setPassword(sql, id, password, true);
  await endSessionsOf(sql, id);
  await voidPairingsBy(sql, account.person);
  if (!mustWait(account, changed, password !== undefined)) return { account: changed, isFirst: false };
  const isFirst = isHealth(changed) && !changed.disabled && !(await wasAnyOfHealth(sql));
  await setWaiting(sql, id, now);
  return { account: { ...changed, health: isHealth(changed) ? 'waits' : 'none' }, isFirst };
}

async function make(sql: Sql, wanted: NewAccount, now: Date): Promise<Changed | undefined> {
  const isFirst = isHealth(wanted) && !(await wasAnyOfHealth(sql));
  const account = await addAccount(sql, wanted, now);
  return account && { account, isFirst };
}

async function settled(call: Call<'create-account' | 'change-account'>, changed: Changed): Promise<Account> {
  if (!changed.isFirst) return changed.account;
  const { id: unit } = await unitOf(call);
  return letFirstIn(call.context, changed.account, { unit, by: personOf(call), now: call.now });
}

export const accountRoutes: Pick<Handlers, 'list-accounts' | 'create-account' | 'change-account'> = {
  'list-accounts': async ({ context }) => ({ accounts: [...(await listAccounts(context.records))] }),

  'create-account': async (call) => {
    const { context, body, now } = call;
    const password = newPassword();
    const kept = await keep(password);
    const made = await context.records.write((sql) =>
      make(sql, { ...body, password: kept, firstPassword: true }, now),
    );
    if (!made) throw new Refusal('name-taken');
    return { account: await settled(call, made), password };
  },

  'change-account': async (call) => {
    const { context, params, body, now } = call;
    const password = body.newPassword ? newPassword() : undefined;
    const kept = password === undefined ? undefined : await keep(password);
    const changed = await context.records.write((sql) => change(sql, params.account, body, kept, now));
    return { account: await settled(call, changed), password: password ?? null };
  },
};
