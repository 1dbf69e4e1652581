// The lead's list of who may sign in. Whatever changes an account ends its sessions and the codes it made; the last lead cannot be taken away.
import type { BodyOf } from '../../api/routes.ts';
import type { Handlers } from '../context.ts';
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
  setDisabled,
  setPassword,
  setRole,
} from '../store/accounts.ts';
import { voidPairingsBy } from '../store/devices.ts';
import type { Sql } from '../store/sql.ts';

const leads = ({ role, disabled }: Pick<Account, 'role' | 'disabled'>): boolean =>
  role === 'lead' && !disabled;

async function change(
  sql: Sql,
  id: string,
  { role, disabled }: BodyOf<'change-account'>,
  password: string | undefined,
): Promise<Account> {
  const found = await findById(sql, id);
  if (!found) throw new Refusal('not-found');
  const { account } = found;
  const changed = { ...account, role: role ?? account.role, disabled: disabled ?? account.disabled };
  if (leads(account) && !leads(changed) && !(await hasLead(sql, id))) throw new Refusal('last-lead');
  await setRole(sql, id, changed.role);
  await setDisabled(sql, id, changed.disabled);
  if (password !== undefined) await setPassword(sql, id, password, true);
  await endSessionsOf(sql, id);
  await voidPairingsBy(sql, account.person);
  return { ...changed, firstPassword: account.firstPassword || password !== undefined };
}

export const accountRoutes: Pick<Handlers, 'list-accounts' | 'create-account' | 'change-account'> = {
  'list-accounts': async ({ context }) => ({ accounts: [...(await listAccounts(context.records))] }),

  'create-account': async ({ context, body, now }) => {
    const password = newPassword();
    const kept = await keep(password);
    const account = await context.records.write((sql) =>
      addAccount(sql, { ...body, password: kept, firstPassword: true }, now),
    );
    if (!account) throw new Refusal('name-taken');
    return { account, password };
  },

  'change-account': async ({ context, params, body }) => {
    const password = body.newPassword ? newPassword() : undefined;
    const kept = password === undefined ? undefined : await keep(password);
    const account = await context.records.write((sql) => change(sql, params.account, body, kept));
    return { account, password: password ?? null };
  },
};
