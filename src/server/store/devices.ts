// Devices of the unit, and the codes with which they join. A code is used up by the one statement that claims it, so that
// two tablets never get one device.
import type { Role } from '../../api/roles.ts';
import { fingerprint, newToken } from '../secrets.ts';
import type { Sql } from './sql.ts';

export interface Device {
  readonly id: string;
  readonly label: string;
  readonly role: Role;
  readonly pairedAt: string;
  readonly revokedAt: string | null;
  readonly seenAt: string | null;
  /** Its clock minus the server's, in milliseconds, when it last said. */
  readonly clockOffset: number | null;
  /** The offset that the journal notes last. */
  readonly notedOffset: number | null;
  /** Whether the journal says that it was revoked. */
  readonly revocationNoted: boolean;
}

interface Raw {
  readonly id: string;
  readonly label: string;
  readonly role: string;
  readonly paired_at: string;
  readonly revoked_at: string | null;
  readonly seen_at: string | null;
  /** PostgreSQL gives whole numbers of this size as text. */
  readonly clock_offset: number | string | null;
  readonly noted_offset: number | string | null;
  readonly revocation_noted: number;
}

const COLUMNS =
  'id, label, role, paired_at, revoked_at, seen_at, clock_offset, noted_offset, revocation_noted';

const wholeOrNull = (value: number | string | null): number | null => (value === null ? null : Number(value));

const deviceOf = (raw: Raw): Device => ({
  id: raw.id,
  label: raw.label,
  role: raw.role as Role,
  pairedAt: raw.paired_at,
  revokedAt: raw.revoked_at,
  seenAt: raw.seen_at,
  clockOffset: wholeOrNull(raw.clock_offset),
  notedOffset: wholeOrNull(raw.noted_offset),
  revocationNoted: raw.revocation_noted !== 0,
});

export interface Offer {
  readonly device: string;
  readonly label: string;
  readonly role: Role;
  /** The person, by the journal's id, who made it. */
  readonly madeBy: string;
}

/** Open codes at once, at most: more would make guessing easier. */
const MOST_OPEN = 20;
const PAIRING_MS = 10 * 60_000;

/** When the code ends; undefined where too many are open. */
export async function addPairing(
  sql: Sql,
  code: string,
  offer: Offer,
  now: Date,
): Promise<string | undefined> {
  const at = now.toISOString();
  await sql.run('delete from @pairing where ends_at < ? or claimed_at is not null', at);
  const open = await sql.all('select code from @pairing');
  if (open.length >= MOST_OPEN) return undefined;
  const endsAt = new Date(now.getTime() + PAIRING_MS).toISOString();
  await sql.run(
    'insert into @pairing (code, device, label, role, made_by, ends_at) values (?, ?, ?, ?, ?, ?)',
    fingerprint(code),
    offer.device,
    offer.label,
    offer.role,
    offer.madeBy,
    endsAt,
  );
  return endsAt;
}

/** Uses a code up; undefined where it is wrong, used or too old. */
export async function claimPairing(sql: Sql, code: string, now: Date): Promise<Offer | undefined> {
  const at = now.toISOString();
  const claimed = await sql.run(
    'update @pairing set claimed_at = ? where code = ? and claimed_at is null and ends_at >= ?',
    at,
    fingerprint(code),
    at,
  );
  if (claimed !== 1) return undefined;
  const [row] = await sql.all<{ device: string; label: string; role: string; made_by: string }>(
    'select device, label, role, made_by from @pairing where code = ?',
    fingerprint(code),
  );
  return row && { device: row.device, label: row.label, role: row.role as Role, madeBy: row.made_by };
}

/** Codes that would let a device in again: void from now on. */
export const voidPairingsFor = (sql: Sql, device: string): Promise<number> =>
  sql.run('delete from @pairing where device = ?', device);

/** Codes that a person made, as the journal calls them. */
export const voidPairingsBy = (sql: Sql, person: string): Promise<number> =>
  sql.run('delete from @pairing where made_by = ?', person);

/** After a failure that was not the tablet's: the code may be used after all. */
export const unclaimPairing = (sql: Sql, code: string): Promise<number> =>
  sql.run('update @pairing set claimed_at = null where code = ?', fingerprint(code));

/** Lets a device in, or in again with a new token; the one before ends. Gives back the token. */
export async function admitDevice(sql: Sql, { device, label, role }: Offer, now: Date): Promise<string> {
  const token = newToken();
  await sql.run(
    `insert into @device (id, token, label, role, paired_at, revocation_noted) values (?, ?, ?, ?, ?, 0)
      on conflict (id) do update set token = excluded.token, label = excluded.label, role = excluded.role,
      paired_at = excluded.paired_at, revoked_at = null, revocation_noted = 0`,
    device,
    fingerprint(token),
    label,
    role,
    now.toISOString(),
  );
  return token;
}

export async function listDevices(sql: Pick<Sql, 'all'>): Promise<readonly Device[]> {
  return (await sql.all<Raw>(`select ${COLUMNS} from @device order by paired_at, id`)).map(deviceOf);
}

export async function findDevice(sql: Pick<Sql, 'all'>, id: string): Promise<Device | undefined> {
  const [row] = await sql.all<Raw>(`select ${COLUMNS} from @device where id = ?`, id);
  return row && deviceOf(row);
}

/** Also one that was revoked: it is told so. */
export async function deviceOfToken(sql: Pick<Sql, 'all'>, token: string): Promise<Device | undefined> {
  const [row] = await sql.all<Raw>(`select ${COLUMNS} from @device where token = ?`, fingerprint(token));
  return row && deviceOf(row);
}

export const revoke = (sql: Sql, device: string, now: Date): Promise<number> =>
  sql.run('update @device set revoked_at = ? where id = ? and revoked_at is null', now.toISOString(), device);

export const noteRevocation = (sql: Sql, device: string): Promise<number> =>
  sql.run('update @device set revocation_noted = 1 where id = ?', device);

export interface Sight {
  readonly at: string;
  readonly offset: number | null;
}

/** A device that said nothing of its clock keeps what it said before. */
export const setSeen = (sql: Sql, device: string, { at, offset }: Sight): Promise<number> =>
  sql.run(
    'update @device set seen_at = ?, clock_offset = coalesce(?, clock_offset) where id = ?',
    at,
    offset,
    device,
  );

export const noteOffset = (sql: Sql, device: string, offset: number): Promise<number> =>
  sql.run('update @device set noted_offset = ? where id = ?', offset, device);
