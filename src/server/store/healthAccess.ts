// Which accounts are let in to health records. The role is in the lead's gift, and so are first passwords: an account that came
// by either waits, until somebody who is in, or the machine, lets it in. `since` names the wait: a later one has another.
import { accountOf, type Account, ACCOUNT_COLUMNS, type RawAccount } from './accounts.ts';
import type { Sql } from './sql.ts';

export interface HealthAccount extends Account {
  /** Null where it was let in before that was noted. */
  readonly since: string | null;
}

type Read = Pick<Sql, 'all'>;

const HEALTH_COLUMNS = `${ACCOUNT_COLUMNS}, health_since`;

const healthOf = (raw: RawAccount & { readonly health_since: string | null }): HealthAccount => ({
  ...accountOf(raw),
  since: raw.health_since,
});

/** Whether any account was ever of occupational health: closed ones and those of another role now count too. */
export async function wasAnyOfHealth(sql: Read): Promise<boolean> {
  return (await sql.all("select id from @account where health <> 'never' limit 1")).length > 0;
}

/** Those of occupational health, closed ones too. */
export async function listHealthAccounts(sql: Read): Promise<readonly HealthAccount[]> {
  const rows = await sql.all<Parameters<typeof healthOf>[0]>(
    `select ${HEALTH_COLUMNS} from @account where role = 'occupational-health' order by folded`,
  );
  return rows.map(healthOf);
}

/** From now on it waits; also the mark of one that is of another role now. */
export const setWaiting = (sql: Sql, account: string, now: Date): Promise<number> =>
  sql.run("update @account set health = 'waits', health_since = ? where id = ?", now.toISOString(), account);

/** Lets in the account that waits since then. Gives back whether it still does: a lead may have changed it meanwhile. */
export async function setLetIn(sql: Sql, account: string, since: string, now: Date): Promise<boolean> {
  const changed = await sql.run(
    `update @account set health = 'in', health_since = ?
      where id = ? and health = 'waits' and health_since = ? and role = 'occupational-health' and disabled = 0`,
    now.toISOString(),
    account,
    since,
  );
  return changed > 0;
}
