// The journal over the wire. A device sends only its own entries, of kinds that its role may record; all else is the
// journal's own judgement. The answer comes when the entries are durable.
import { mayReadAnswers, mayRecord } from '../../api/access.ts';
import type { Entry } from '../../journal/entry.ts';
import { KINDS } from '../../journal/kinds/index.ts';
import { withhold } from '../../journal/withheld.ts';
import { timeOf } from '../clock.ts';
import { noteClock } from '../clockNote.ts';
import { type Context, deviceOf, type Handlers, type Who } from '../context.ts';
import { toldError } from '../log.ts';
import { headOfDevice } from '../ownEntries.ts';
import { Refusal } from '../refusal.ts';
import type { Device } from '../store/devices.ts';
import { type Page, visibleEntries } from '../visible.ts';

const USUAL = 200;

interface Claimed {
  readonly device?: unknown;
  readonly number?: unknown;
  readonly kind?: unknown;
}

function placeOf(index: number, { device, number }: Claimed) {
  return {
    index,
    ...(typeof device === 'string' ? { device: device.slice(0, 64) } : {}),
    ...(Number.isSafeInteger(number) && (number as number) >= 0 ? { number: number as number } : {}),
  };
}

/** Whose entries they are and of which kind; what is no entry at all the journal refuses. */
function checkClaims(entries: readonly unknown[], { id, role }: Device): void {
  for (const [index, entry] of entries.entries()) {
    if (typeof entry !== 'object' || entry === null) continue;
    const { device, number, kind }: Claimed = entry;
    if (typeof device === 'string' && device !== id)
      throw new Refusal('forged-device', placeOf(index, { device, number }));
    if (typeof kind === 'string' && !mayRecord(role, kind, Object.hasOwn(KINDS, kind)))
      throw new Refusal('kind-not-allowed', placeOf(index, { device, number }));
  }
}

/** A note in the journal for whoever reads it later must not undo that the entries are stored. */
async function noteQuietly(
  context: Context,
  device: Device,
  offset: number | null,
  now: Date,
): Promise<void> {
  try {
    await noteClock(context, device, offset, now);
  } catch (error) {
    context.log.warn(toldError(error), 'a device’s clock could not be noted');
  }
}

const readers = new WeakMap<object, (from: number, most: number) => Promise<Page>>();

function readerOf({ journal }: Context) {
  const reader = readers.get(journal) ?? visibleEntries(journal);
  readers.set(journal, reader);
  return reader;
}

/** What whoever asks is told of an entry. A device's own comes back whole: it may have lost it. */
function toldTo(who: Who): (entry: Entry) => Entry {
  if (who.is === 'nobody') return withhold;
  const { role } = who.is === 'person' ? who.account : who.device;
  if (mayReadAnswers(role)) return (entry) => entry;
  const own = who.is === 'device' ? who.device.id : undefined;
  return (entry) => (entry.device === own ? entry : withhold(entry));
}

export const entryRoutes: Pick<Handlers, 'append-entries' | 'read-entries'> = {
  'append-entries': async (call) => {
    const { context, body, now } = call;
    const device = deviceOf(call);
    const { entries, sentAt } = body;
    checkClaims(entries, device);
    const stored = await context.journal.append(entries as readonly Entry[]);
    context.metrics.entries(stored.length);
    const head = await headOfDevice(context.journal, device.id);
    const time = timeOf(now, sentAt);
    context.sights.note(device, time.offset, now);
    await noteQuietly(context, device, time.offset, now);
    return {
      acknowledged: stored.map((one) => ({ number: one.number, hash: one.hash })),
      head,
      time,
    };
  },

  'read-entries': async (call) => {
    const { context, query, now, who } = call;
    const { from = 1, most = USUAL, sentAt } = query;
    const read = readerOf(context);
    const { entries, more } = await read(from, most);
    if (entries.length === 0 && from > 1 && (await read(from - 1, 1)).entries.length === 0)
      throw new Refusal('cursor-ahead');
    const next = (entries.at(-1)?.at ?? from - 1) + 1;
    const told = toldTo(who);
    return {
      entries: entries.map(({ at, entry }) => ({ at, entry: told(entry) })),
      next,
      more,
      time: timeOf(now, sentAt),
    };
  },
};
