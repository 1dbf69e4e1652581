// Whether an exit is under way on this device, from the journal: a new version is not loaded then, whatever tab it runs in.
import type { Accepted } from '../../journal/entry.ts';
import { openIndexedDb } from '../../journal/adapters/indexedDb.ts';
import { LAST, type Store } from '../../journal/port.ts';
import { type Seen, seen } from '../../journal/reading.ts';

/** Nothing recorded for so long: it was left and never ended, and holds nothing up. The house's own choice. */
const LEFT_AFTER_MS = 12 * 3_600_000;
/** An exit is a few hundred lines; one that is under way is among the last of them. */
const LOOKED_AT = 1000;

/** The exit that an entry belongs to; undefined where it is no line of one. */
function exitOf(entry: Seen): string | undefined {
  if (entry.kind === 'unknown' || !entry.kind.startsWith('exit.')) return undefined;
  return 'exit' in entry.body ? (entry.body.exit ?? undefined) : undefined;
}

/** An exit that these entries leave open; undefined where there is none. */
export function openExit(entries: readonly Accepted[], now: Date): string | undefined {
  const all = entries.map(seen);
  const ended = new Set(all.filter(({ kind }) => kind === 'exit.ended').map(exitOf));
  const late = all.filter(({ at }) => now.getTime() - Date.parse(at) <= LEFT_AFTER_MS);
  return late.map(exitOf).find((exit) => exit !== undefined && !ended.has(exit));
}

/** Entries of other devices do not count: theirs are other people's exits. */
export async function exitUnderWay(device: string | null): Promise<boolean> {
  let store: Store | undefined;
  try {
    store = await openIndexedDb();
    if (device === null) return false;
    const latest = await store.read(LAST, { device, backwards: true, most: LOOKED_AT });
    return openExit(latest, new Date()) !== undefined;
  } catch {
    // A journal that cannot be read says nothing of an exit; loading the page anew may mend it.
    return false;
  } finally {
    await store?.close();
  }
}
