// Health records of staff: written and read by occupational health alone, sealed in the journal under a chain of their own.
import type { Accepted } from '../../journal/entry.ts';
import { seen } from '../../journal/reading.ts';
import { type Context, type Handlers, personOf } from '../context.ts';
import type { HealthKeys } from '../health/keys.ts';
import { seal, unseal } from '../health/seal.ts';
import { HEALTH_DEVICE, headOfDevice, writeOwn } from '../ownEntries.ts';
import { Refusal } from '../refusal.ts';
import { unitOf } from './session.ts';

const PAGE = 200;

function keysOf({ healthKeys }: Context): HealthKeys {
  if (!healthKeys) throw new Refusal('health-key-missing');
  return healthKeys;
}

function opened(accepted: Accepted, unit: string, keys: HealthKeys) {
  const entry = seen(accepted);
  if (entry.kind !== 'health.sealed') throw new Refusal('damaged');
  const { number, at, by, body } = entry;
  return { ...unseal(body, unit, keys), number, at, by, key: body.key };
}

export const healthRoutes: Pick<Handlers, 'seal-health-record' | 'read-health-records'> = {
  'seal-health-record': async (call) => {
    const { context, body, now } = call;
    const keys = keysOf(context);
    const unit = await unitOf(call);
    const sealed = seal(body, unit.id, keys);
    const { number } = await writeOwn(context.journal, {
      unit: unit.id,
      device: HEALTH_DEVICE,
      kind: 'health.sealed',
      at: now,
      by: personOf(call).person,
      body: sealed,
    });
    return { number, key: sealed.key };
  },

  'read-health-records': async (call) => {
    const { context, query } = call;
    const keys = keysOf(context);
    const unit = await unitOf(call);
    const { from = 1 } = query;
    const rows = await context.journal.read(from, { device: HEALTH_DEVICE, most: PAGE });
    const records = rows.map((row) => opened(row, unit.id, keys));
    const last = await headOfDevice(context.journal, HEALTH_DEVICE);
    const next = (records.at(-1)?.number ?? from - 1) + 1;
    return { records, next, more: last.number >= next };
  },
};
