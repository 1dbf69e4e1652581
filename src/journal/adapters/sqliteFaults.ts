// What SQLite and the file system say when something fails, as the journal's own failures.
import { type FailureCode, JournalError } from '../problems.ts';

/** SQLite's primary result codes (sqlite.org/rescode.html); an extended one has its primary in the lowest eight bits. */
const BY_RESULT: ReadonlyMap<number, FailureCode> = new Map([
  [5, 'busy'],
  [6, 'busy'],
  [8, 'read-only'],
  [11, 'damaged'],
  [13, 'full'],
  [26, 'damaged'],
]);

const BY_SYSTEM: Readonly<Record<string, FailureCode>> = {
  ENOSPC: 'full',
  EDQUOT: 'full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
};

function codeOf(error: unknown): FailureCode {
  const { rawCode, code } = error as { readonly rawCode?: unknown; readonly code?: unknown };
  const known = typeof rawCode === 'number' ? BY_RESULT.get(rawCode & 0xff) : BY_SYSTEM[String(code)];
  return known ?? 'unavailable';
}

/** The database's or the system's error as a JournalError; one of ours stays as it is. */
export function sqliteError(error: unknown): JournalError {
  if (error instanceof JournalError) return error;
  if (!(error instanceof Error))
    return new JournalError({ code: 'unavailable', detail: String(error) }, error);
  return new JournalError({ code: codeOf(error), detail: error.message }, error);
}

/** Runs work on the database; what it throws is a JournalError. */
export function guarded<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw sqliteError(error);
  }
}
