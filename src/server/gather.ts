// One trip to the disk for all that came meanwhile. Forcing a commit takes as long for one entry as for a hundred, so while
// one is under way the next ones wait and go together. Each caller is still told of its own entries alone: where the whole
// is refused, each is tried by itself.
import type { Entry } from '../journal/entry.ts';
import type { Acknowledged, Store } from '../journal/port.ts';
import { isRefusal, JournalError } from '../journal/problems.ts';

interface Waiting {
  readonly entries: readonly Entry[];
  readonly resolve: (acknowledged: readonly Acknowledged[]) => void;
  readonly reject: (error: unknown) => void;
}

type Append = Store['append'];

/** Entries in one transaction, unless one caller alone brings more. */
const MOST = 1000;

/** The first of those that wait, as many as go together. */
function taken(waiting: Waiting[]): readonly Waiting[] {
  let [count, entries] = [0, 0];
  for (const one of waiting) {
    entries += one.entries.length;
    if (count > 0 && entries > MOST) break;
    count += 1;
  }
  return waiting.splice(0, count);
}

async function alone(append: Append, { entries, resolve, reject }: Waiting): Promise<void> {
  try {
    resolve(await append(entries));
  } catch (error) {
    reject(error);
  }
}

/** Refused because of one of them, or too much for a full disk: smaller parts may still be stored. */
const isForParts = (error: unknown): boolean =>
  error instanceof JournalError && (isRefusal(error.problem) || error.problem.code === 'full');

async function together(append: Append, all: readonly Waiting[]): Promise<void> {
  try {
    const acknowledged = await append(all.flatMap(({ entries }) => entries));
    let from = 0;
    for (const { entries, resolve } of all) {
      resolve(acknowledged.slice(from, from + entries.length));
      from += entries.length;
    }
  } catch (error) {
    if (!isForParts(error)) for (const { reject } of all) reject(error);
    else for (const one of all) await alone(append, one);
  }
}

/** `append` for many callers at once. */
export function gathered(append: Append): Append {
  const waiting: Waiting[] = [];
  let underWay = false;
  const work = async (): Promise<void> => {
    while (waiting.length > 0) {
      const all = taken(waiting);
      await (all.length === 1 ? alone(append, all[0]!) : together(append, all));
      // What came over the sockets meanwhile is read before the next trip.
      await new Promise((resolve) => setImmediate(resolve));
    }
    underWay = false;
  };
  return (entries) =>
    new Promise((resolve, reject) => {
      waiting.push({ entries, resolve, reject });
      if (underWay) return;
      underWay = true;
      setImmediate(() => void work());
    });
}
