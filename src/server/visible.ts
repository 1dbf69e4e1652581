// The journal as everybody may read it: without sealed records, who read them and who was let in to them, and without a trace of either. Their chains are their own, so
// no device's chain has a gap; places are counted anew over what remains, so that none is missing there either; and the
// unit's chain, which would not fit, is not told.
import type { Accepted } from '../journal/entry.ts';
import { type Store, USUAL_PAGE } from '../journal/port.ts';
import { HIDDEN_DEVICES } from './ownEntries.ts';
import { turns } from './store/sql.ts';

type Readable = Pick<Store, 'read'>;

export interface Seen {
  /** From 1, without a gap. */
  readonly at: number;
  readonly entry: Accepted['entry'];
}

export interface Page {
  readonly entries: readonly Seen[];
  readonly more: boolean;
}

const isHidden = ({ entry }: Accepted): boolean =>
  HIDDEN_DEVICES.includes(entry.device) || entry.kind.startsWith('health.');

/** Rows asked for at once, and characters of entries in an answer: a tablet must be able to hold it, and the server many. */
const ROWS = 100;
const MOST_TEXT = 4 * 1024 * 1024;

/** Gathers entries until there are enough of them, or their text is. Some always fit: none is longer than its own limit. */
function gatherer(most: number) {
  const entries: Seen[] = [];
  let room = MOST_TEXT;
  let more = false;
  return {
    take: (seen: Seen): void => {
      room -= JSON.stringify(seen.entry).length;
      more ||= entries.length === most || room < 0;
      if (!more) entries.push(seen);
    },
    isFull: () => more,
    page: (): Page => ({ entries, more }),
  };
}

/** How many of the sorted numbers are at most `most`. */
function countUpTo(sorted: readonly number[], most: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The unit's number at or before which the entry at a visible place stands, as far as hidden ones are known. */
function unitNumberOf(hidden: readonly number[], at: number): number {
  let number = at;
  for (;;) {
    const next = at + countUpTo(hidden, number);
    if (next === number) return number;
    number = next;
  }
}

/** Where one chain's entries stand: remembered, and looked up anew when the journal is not the one it was (a restored backup). */
function placesOf(journal: Readable, device: string): () => Promise<readonly number[]> {
  let numbers: readonly number[] = [];
  const page = async (from: number, most: number): Promise<readonly number[]> =>
    (await journal.read(from, { device, most })).map(({ unitNumber }) => unitNumber);
  return async () => {
    const known = numbers.length;
    if (known > 0 && (await page(known, 1))[0] !== numbers[known - 1]) numbers = [];
    for (;;) {
      const further = await page(numbers.length + 1, USUAL_PAGE);
      if (further.length > 0) numbers = [...numbers, ...further];
      if (further.length < USUAL_PAGE) return numbers;
    }
  };
}

/** Where hidden entries stand, in order; worked out again where one was added. */
function hiddenIn(journal: Readable): () => Promise<readonly number[]> {
  const chains = HIDDEN_DEVICES.map((device) => placesOf(journal, device));
  const turn = turns();
  let before: readonly (readonly number[])[] = [];
  let all: readonly number[] = [];
  return () =>
    turn(async () => {
      const now: (readonly number[])[] = [];
      for (const chain of chains) now.push(await chain());
      if (now.some((numbers, index) => numbers !== before[index]))
        all = now.flat().toSorted((one, other) => one - other);
      before = now;
      return all;
    });
}

/** Reads so many entries from a visible place on; fewer where they are long. */
export function visibleEntries(journal: Readable): (from: number, most: number) => Promise<Page> {
  const hiddenNow = hiddenIn(journal);
  return async (from, most) => {
    const { take, isFull, page } = gatherer(most);
    const asked = Math.min(ROWS, most + 1);
    for (let number = unitNumberOf(await hiddenNow(), from); !isFull(); ) {
      const rows = await journal.read(number, { most: asked });
      // After the rows: what was hidden among them meanwhile is known then.
      const hidden = await hiddenNow();
      for (const row of rows) {
        const at = row.unitNumber - countUpTo(hidden, row.unitNumber);
        if (!isFull() && !isHidden(row) && at >= from) take({ at, entry: row.entry });
      }
      if (rows.length < asked) break;
      number = rows.at(-1)!.unitNumber + 1;
    }
    return page();
  };
}
