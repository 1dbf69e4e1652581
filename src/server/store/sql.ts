// The little of SQL that the server's own records need, the same over SQLite and PostgreSQL. `?` stands for a value, and
// `@name` for a table. Writing is one at a time, in transactions that are durable when they return.

export type Value = string | number | null;

export interface Sql {
  readonly all: <Row>(text: string, ...values: readonly Value[]) => Promise<readonly Row[]>;
  /** Gives back how many rows it changed. */
  readonly run: (text: string, ...values: readonly Value[]) => Promise<number>;
}

export interface Database {
  readonly all: Sql['all'];
  /** All or nothing. `work` must await nothing but the statements that it is given. */
  readonly write: <Result>(work: (sql: Sql) => Promise<Result>) => Promise<Result>;
  readonly close: () => Promise<void>;
}

/** One after the other, whatever fails. */
export function turns(): <Result>(work: () => Promise<Result>) => Promise<Result> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work, work);
    last = next.catch(() => undefined);
    return next;
  };
}
