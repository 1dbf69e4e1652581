// A device whose clock is far off is noted in the journal, once for each time that it moved: its entries keep the times that
// it wrote, and whoever reads them later can see how far they were off.
import type { Context } from './context.ts';
import { SERVER_DEVICE, writeOwn } from './ownEntries.ts';
import { type Device, noteOffset } from './store/devices.ts';
import { findUnit } from './store/unit.ts';

/** The house's own choice: less does not change the order of two people's entries as they remember it. */
const FAR_MS = 30_000;

export async function noteClock(
  { records, journal }: Pick<Context, 'records' | 'journal'>,
  device: Device,
  offset: number | null,
  now: Date,
): Promise<void> {
  if (offset === null || Math.abs(offset - (device.notedOffset ?? 0)) < FAR_MS) return;
  const unit = await findUnit(records);
  if (!unit) return;
  // First the record: two requests at once then write it once at least, and seldom twice.
  await records.write((sql) => noteOffset(sql, device.id, offset));
  const way = offset > 0 ? 'ahead of' : 'behind';
  await writeOwn(journal, {
    unit: unit.id,
    device: SERVER_DEVICE,
    kind: 'note.added',
    at: now,
    by: null,
    body: {
      about: 'device',
      id: device.id,
      text: `The clock of this device is ${Math.round(Math.abs(offset) / 1000)} seconds ${way} the server's.`,
    },
  });
}
