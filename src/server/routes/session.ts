// Signing in and out. A new session is begun at every sign-in, whatever token the browser came with, so that a token which
// somebody else put there is worth nothing.
import { isStrong } from '../../api/passwordRule.ts';
import type { Call, Handlers } from '../context.ts';
import { personOf } from '../context.ts';
import { counted } from '../limits.ts';
import { isRight, keep } from '../passwords.ts';
import { Refusal } from '../refusal.ts';
import {
  beginSession,
  endSession,
  endSessionsOf,
  findByName,
  findById,
  folded,
  setPassword,
} from '../store/accounts.ts';
import { findUnit, type Unit } from '../store/unit.ts';

export async function unitOf({ context }: Pick<Call<'sign-in'>, 'context'>): Promise<Unit> {
  const unit = await findUnit(context.records);
  if (!unit) throw new Refusal('not-found');
  return unit;
}

type SessionRoute = 'sign-in' | 'read-session' | 'change-password' | 'sign-out';

export const sessionRoutes: Pick<Handlers, SessionRoute> = {
  'sign-in': async (call) => {
    const { context, body, peer, now } = call;
    const name = folded(body.name);
    const forgive = await counted([
      [context.limits.address, peer],
      [context.limits.nameHere, `${name} ${peer}`],
      [context.limits.name, name],
    ]);
    const found = await findByName(context.records, body.name);
    const right = await isRight(body.password, found?.password);
    if (!found || !right || found.account.disabled) throw new Refusal('wrong-password');
    await forgive();
    const token = await context.records.write(async (sql) => {
      if (call.session !== undefined) await endSession(sql, call.session);
      return beginSession(sql, found.account.id, now);
    });
    call.setSession(token);
    return { unit: await unitOf(call), account: found.account };
  },

  'read-session': async (call) => ({ unit: await unitOf(call), account: personOf(call) }),

  'change-password': async (call) => {
    const { context, body, peer, now } = call;
    const account = personOf(call);
    const unit = await unitOf(call);
    const forgive = await counted([
      [context.limits.address, peer],
      [context.limits.name, account.id],
    ]);
    const kept = await findById(context.records, account.id);
    if (!(await isRight(body.old, kept?.password))) throw new Refusal('wrong-password');
    await forgive();
    if (body.new === body.old || !isStrong(body.new, account.name, unit.id))
      throw new Refusal('weak-password');
    const password = await keep(body.new);
    const token = await context.records.write(async (sql) => {
      await setPassword(sql, account.id, password, false);
      await endSessionsOf(sql, account.id);
      return beginSession(sql, account.id, now);
    });
    call.setSession(token);
    return { unit, account: { ...account, firstPassword: false } };
  },

  'sign-out': async ({ context, session, setSession }) => {
    if (session !== undefined) await context.records.write((sql) => endSession(sql, session));
    setSession(undefined);
    return {};
  },
};
