// The unit that this server is for: one, once.
import type { Sql } from './sql.ts';

export interface Unit {
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
}

export async function findUnit(sql: Pick<Sql, 'all'>): Promise<Unit | undefined> {
  const [row] = await sql.all<{ id: string; title: string; invented: number }>(
    'select id, title, invented from @unit',
  );
  return row && { id: row.id, title: row.title, invented: row.invented !== 0 };
}

export const addUnit = (sql: Sql, { id, title, invented }: Unit, now: Date): Promise<number> =>
  sql.run(
    'insert into @unit (id, title, invented, created_at) values (?, ?, ?, ?)',
    id,
    title,
    invented ? 1 : 0,
    now.toISOString(),
  );
