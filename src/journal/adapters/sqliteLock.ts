// One writer at a time, over all programs on the machine. SQLite would let them take turns by itself, but the one that the
// package brings (3.45.1) has the WAL-reset fault of all versions before 3.51.3: two connections that write and copy the log
// at the same instant can lose commits. So whoever writes or copies the log holds this lock, a second file that SQLite locks
// and never writes to; the system frees it when its holder dies. https://sqlite.org/wal.html#walresetbug
import type { Db } from './sqliteFile.ts';
import { guarded } from './sqliteFaults.ts';

export interface Lock {
  readonly hold: <Result>(work: () => Result) => Result;
  readonly close: () => void;
}

export const lockFileOf = (file: string): string => `${file}.lock`;

/** Is there while journal and records are exchanged for a backup's: who finds it finds halves of two. */
export const restoringOf = (file: string): string => `${file}.restoring`;

/** Throws `busy` where another program holds it too long. */
export function lockOn(db: Db): Lock {
  return {
    hold: (work) => {
      guarded(() => db.exec('begin exclusive'));
      try {
        return work();
      } finally {
        db.exec('rollback');
      }
    },
    close: () => db.close(),
  };
}
