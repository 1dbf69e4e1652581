// Who asks, and whether they may: the one place where the table of access.ts is applied. A device that was taken out of the
// unit is told so, because its record must then be brought to the lead by hand.
import { ACCESS, type Access, type RouteName } from '../api/access.ts';
import type { Context, Who } from './context.ts';
import { Refusal } from './refusal.ts';
import { type Account, accountOfSession } from './store/accounts.ts';
import { type Device, deviceOfToken } from './store/devices.ts';

export interface Tokens {
  readonly session: string | undefined;
  readonly device: string | undefined;
}

interface Known {
  readonly account: Account | undefined;
  readonly device: Device | undefined;
}

async function knownBy(context: Context, tokens: Tokens, now: Date): Promise<Known> {
  const { records } = context;
  return {
    account: tokens.session === undefined ? undefined : await accountOfSession(records, tokens.session, now),
    device: tokens.device === undefined ? undefined : await deviceOfToken(records, tokens.device),
  };
}

function refused({ hidden, people }: Access, { account, device }: Known, tokens: Tokens): Refusal {
  const isIn = device !== undefined && device.revokedAt === null;
  // Also where somebody has signed in on it: what only devices may do is asked by the device.
  if (device && !isIn && people.length === 0) return new Refusal('device-revoked');
  if (account || isIn) return new Refusal(hidden ? 'not-found' : 'not-allowed');
  if (device) return new Refusal('device-revoked');
  return new Refusal(people.length > 0 && tokens.device === undefined ? 'not-signed-in' : 'not-paired');
}

/** Who it is, where they may; a refusal otherwise. */
export async function admitted(context: Context, name: RouteName, tokens: Tokens, now: Date): Promise<Who> {
  const access: Access = ACCESS[name];
  if (access.open) return { is: 'nobody' };
  const known = await knownBy(context, tokens, now);
  const { account, device } = known;
  // The device first: what it reads stays on it, whoever is signed in there for a while.
  if (device && device.revokedAt === null && access.devices.includes(device.role))
    return { is: 'device', device };
  if (account && access.people.includes(account.role)) {
    if (account.firstPassword && !access.early) throw new Refusal('first-password');
    if (access.letIn && account.health !== 'in') throw new Refusal('not-let-in');
    return { is: 'person', account };
  }
  throw refused(access, known, tokens);
}
