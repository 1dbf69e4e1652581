// Entries that the server writes itself: the unit's beginning, devices, clocks, sealed records. It has a chain like any
// device. Several servers on one database may write it at once; who comes second writes again after the first.
import type { PlainObject } from '../journal/canonical.ts';
import { headOf, nextEntry, START } from '../journal/entry.ts';
import { type Acknowledged, LAST, type Store } from '../journal/port.ts';
import { isRefusal, JournalError } from '../journal/problems.ts';
import type { KindName } from '../journal/kinds/index.ts';
import { KINDS } from '../journal/kinds/index.ts';
import { versionOf } from '../journal/kinds/kind.ts';

/** The server's chain in the open. */
export const SERVER_DEVICE = 'server';
/** The chain of sealed records alone, so that what is hidden leaves no gap in another. */
export const HEALTH_DEVICE = 'server-health';
/** The chain of who read them: apart, so that the numbers of records stay without a gap. */
export const READS_DEVICE = 'server-reads';
/** The chain of who was let in to them: apart for the same reason. */
export const LETTINGS_DEVICE = 'server-lettings';
/** Chains that only occupational health is told of. */
export const HIDDEN_DEVICES: readonly string[] = [HEALTH_DEVICE, READS_DEVICE, LETTINGS_DEVICE];

export interface OwnEntry {
  readonly unit: string;
  readonly device: typeof SERVER_DEVICE | typeof HEALTH_DEVICE | typeof READS_DEVICE | typeof LETTINGS_DEVICE;
  readonly kind: KindName;
  readonly at: Date;
  readonly by: string | null;
  readonly body: PlainObject;
}

const TRIES = 5;

const lost = (error: unknown): boolean =>
  error instanceof JournalError &&
  isRefusal(error.problem) &&
  ['fork', 'gap', 'chain-broken'].includes(error.problem.code);

/** Where a device's chain stands in the journal. */
export async function headOfDevice(journal: Pick<Store, 'read'>, device: string) {
  const [last] = await journal.read(LAST, { device, backwards: true, most: 1 });
  return last ? headOf(last.entry) : START;
}

export async function writeOwn(
  journal: Pick<Store, 'read' | 'append'>,
  entry: OwnEntry,
  tries = TRIES,
): Promise<Acknowledged> {
  const { kind, at, device, ...rest } = entry;
  const head = await headOfDevice(journal, device);
  const draft = { ...rest, device, kind, version: versionOf(KINDS[kind]), at: at.toISOString() };
  try {
    const [acknowledged] = await journal.append([nextEntry(head, draft)]);
    return acknowledged!;
  } catch (error) {
    if (!lost(error) || tries <= 1) throw error;
    return writeOwn(journal, entry, tries - 1);
  }
}
