// Who may sign in, and who has. A session is a row that ends: by standing idle, by its age, or when it is taken away.
import type { HealthAccess, Role } from '../../api/roles.ts';
import { fingerprint, newId, newToken } from '../secrets.ts';
import type { Database, Sql } from './sql.ts';

export interface Account {
  readonly id: string;
  readonly name: string;
  readonly person: string;
  readonly role: Role;
  readonly disabled: boolean;
  readonly firstPassword: boolean;
  /** Of occupational health alone; healthAccess.ts changes it. */
  readonly health: HealthAccess;
}

export interface RawAccount {
  readonly id: string;
  readonly name: string;
  readonly person: string;
  readonly role: string;
  readonly password: string;
  readonly disabled: number;
  readonly first_password: number;
  readonly health: string;
}

/** Sessions end after so long without a request, and so long after they began. */
const IDLE_MS = 30 * 60_000;
const AGE_MS = 12 * 3_600_000;
/** How exact `seen_at` is: a write for every request would be too many. */
const SEEN_MS = 60_000;

const before = (now: Date, ms: number): string => new Date(now.getTime() - ms).toISOString();

/** Upper and lower case, and the ways to write one letter, are the same name. */
export const folded = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

/** Whoever is of occupational health no more keeps a mark of it in the records, and nothing else. */
const accessOf = ({ role, health }: RawAccount): HealthAccess => {
  if (role !== 'occupational-health') return 'none';
  return health === 'in' ? 'in' : 'waits';
};

export const accountOf = (raw: RawAccount): Account => ({
  id: raw.id,
  name: raw.name,
  person: raw.person,
  role: raw.role as Role,
  disabled: raw.disabled !== 0,
  firstPassword: raw.first_password !== 0,
  health: accessOf(raw),
});

export const ACCOUNT_COLUMNS = 'id, name, person, role, password, disabled, first_password, health';

export interface NewAccount {
  readonly name: string;
  readonly role: Role;
  /** As passwords.ts keeps it. */
  readonly password: string;
  readonly firstPassword: boolean;
  /** Where an entry names the person already. */
  readonly person?: string;
}

/** Undefined where the name is taken. One of occupational health waits to be let in. */
export async function addAccount(sql: Sql, wanted: NewAccount, now: Date): Promise<Account | undefined> {
  const { name, role, password, firstPassword } = wanted;
  const [taken] = await sql.all('select id from @account where folded = ?', folded(name));
  if (taken) return undefined;
  const made = {
    id: newId('a'),
    name,
    person: wanted.person ?? newId('p'),
    role,
    disabled: false,
    firstPassword,
    health: role === 'occupational-health' ? 'waits' : 'none',
  } as const;
  await sql.run(
    `insert into @account (id, folded, name, person, role, password, first_password, disabled, created_at, health, health_since)
      values (?, ?, ?, ?, ?, ?, ?, 0, ?, ?, ?)`,
    made.id,
    folded(name),
    name,
    made.person,
    role,
    password,
    firstPassword ? 1 : 0,
    now.toISOString(),
    made.health === 'waits' ? 'waits' : 'never',
    made.health === 'waits' ? now.toISOString() : null,
  );
  return made;
}

export async function listAccounts(sql: Pick<Sql, 'all'>): Promise<readonly Account[]> {
  return (await sql.all<RawAccount>(`select ${ACCOUNT_COLUMNS} from @account order by folded`)).map(
    accountOf,
  );
}

export async function findByName(
  sql: Pick<Sql, 'all'>,
  name: string,
): Promise<{ readonly account: Account; readonly password: string } | undefined> {
  const [row] = await sql.all<RawAccount>(
    `select ${ACCOUNT_COLUMNS} from @account where folded = ?`,
    folded(name),
  );
  return row && { account: accountOf(row), password: row.password };
}

export async function findById(
  sql: Pick<Sql, 'all'>,
  id: string,
): Promise<{ readonly account: Account; readonly password: string } | undefined> {
  const [row] = await sql.all<RawAccount>(`select ${ACCOUNT_COLUMNS} from @account where id = ?`, id);
  return row && { account: accountOf(row), password: row.password };
}

export async function hasLead(sql: Pick<Sql, 'all'>, except = ''): Promise<boolean> {
  const rows = await sql.all(
    "select id from @account where role = 'lead' and disabled = 0 and id <> ? limit 1",
    except,
  );
  return rows.length > 0;
}

export const endSessionsOf = (sql: Sql, account: string): Promise<number> =>
  sql.run('delete from @session where account = ?', account);

export const setPassword = (sql: Sql, account: string, password: string, first: boolean): Promise<number> =>
  sql.run(
    'update @account set password = ?, first_password = ? where id = ?',
    password,
    first ? 1 : 0,
    account,
  );

export const setRole = (sql: Sql, account: string, role: Role): Promise<number> =>
  sql.run('update @account set role = ? where id = ?', role, account);

export const setDisabled = (sql: Sql, account: string, disabled: boolean): Promise<number> =>
  sql.run('update @account set disabled = ? where id = ?', disabled ? 1 : 0, account);

/** A new session; those that have ended are cleared away with it. Gives back the token. */
export async function beginSession(sql: Sql, account: string, now: Date): Promise<string> {
  const token = newToken();
  const at = now.toISOString();
  await sql.run(
    'delete from @session where seen_at < ? or created_at < ?',
    before(now, IDLE_MS),
    before(now, AGE_MS),
  );
  await sql.run(
    'insert into @session (token, account, created_at, seen_at) values (?, ?, ?, ?)',
    fingerprint(token),
    account,
    at,
    at,
  );
  return token;
}

export const endSession = (sql: Sql, token: string): Promise<number> =>
  sql.run('delete from @session where token = ?', fingerprint(token));

/** The account of a session that has not ended; it lives on from now. */
export async function accountOfSession(
  database: Database,
  token: string,
  now: Date,
): Promise<Account | undefined> {
  const [row] = await database.all<RawAccount & { readonly seen_at: string }>(
    `select a.id, a.name, a.person, a.role, a.password, a.disabled, a.first_password, a.health, s.seen_at
      from @session s join @account a on a.id = s.account
      where s.token = ? and a.disabled = 0 and s.seen_at >= ? and s.created_at >= ?`,
    fingerprint(token),
    before(now, IDLE_MS),
    before(now, AGE_MS),
  );
  // Where that cannot be noted the session ends sooner; what was asked for is answered all the same.
  if (row && row.seen_at < before(now, SEEN_MS))
    await database
      .write(({ run }) =>
        run('update @session set seen_at = ? where token = ?', now.toISOString(), fingerprint(token)),
      )
      .catch(() => undefined);
  return row && accountOf(row);
}
