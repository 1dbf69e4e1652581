// Health records of staff, for whoever of occupational health is let in: written and read, sealed in the journal under a chain of their own. Who
// reads whose and why is written before anything is shown: where that cannot be stored, nothing is shown.
import { MOST_RECORDS } from '../../api/shapes/health.ts';
import type { Accepted } from '../../journal/entry.ts';
import { LAST } from '../../journal/port.ts';
import { seen } from '../../journal/reading.ts';
import { type Call, type Context, type Handlers, personOf } from '../context.ts';
import type { HealthKeys } from '../health/keys.ts';
import { letIn } from '../health/lettingIn.ts';
import { seal, unseal } from '../health/seal.ts';
import { HEALTH_DEVICE, headOfDevice, LETTINGS_DEVICE, READS_DEVICE, writeOwn } from '../ownEntries.ts';
import { Refusal } from '../refusal.ts';
import { listHealthAccounts } from '../store/healthAccess.ts';
import { unitOf } from './session.ts';

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

type Opened = ReturnType<typeof opened>;

/** Throws where it cannot be stored. */
async function noteReading(
  call: Call<'read-health-records'>,
  unit: string,
  shown: readonly Opened[],
): Promise<void> {
  const { context, body, now } = call;
  const { id, person } = personOf(call);
  const people = body.person === undefined ? shown.map((one) => one.person) : [body.person];
  await writeOwn(context.journal, {
    unit,
    device: READS_DEVICE,
    kind: 'health.read',
    at: now,
    by: person,
    body: {
      account: id,
      people: [...new Set(people)],
      records: shown.map(({ number }) => number),
      why: body.why,
    },
  });
}

function readingOf(accepted: Accepted) {
  const entry = seen(accepted);
  if (entry.kind !== 'health.read') throw new Refusal('damaged');
  const { number, at, by, body } = entry;
  return { ...body, number, at, by };
}

function lettingOf(accepted: Accepted) {
  const entry = seen(accepted);
  if (entry.kind !== 'health.let-in') throw new Refusal('damaged');
  const { number, at, by, body } = entry;
  return { ...body, number, at, by };
}

/** Where to read a chain on after these rows, and whether there is more already. */
async function after({ journal }: Context, device: string, from: number, rows: readonly Accepted[]) {
  const next = (rows.at(-1)?.entry.number ?? from - 1) + 1;
  return { next, more: (await headOfDevice(journal, device)).number >= next };
}

type HealthRoute =
  | 'seal-health-record'
  | 'read-health-records'
  | 'list-health-readings'
  | 'list-health-accounts'
  | 'let-in-account';

export const healthRoutes: Pick<Handlers, HealthRoute> = {
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
    const { context, body } = call;
    const keys = keysOf(context);
    const unit = await unitOf(call);
    const { from = 1, most = MOST_RECORDS, person } = body;
    const rows = await context.journal.read(from, { device: HEALTH_DEVICE, most });
    const all = rows.map((row) => opened(row, unit.id, keys));
    const records = all.filter((one) => person === undefined || one.person === person);
    const place = await after(context, HEALTH_DEVICE, from, rows);
    await noteReading(call, unit.id, records);
    return { records, ...place };
  },

  'list-health-readings': async ({ context, query }) => {
    const { from = 1 } = query;
    const rows = await context.journal.read(from, { device: READS_DEVICE, most: MOST_RECORDS });
    return { readings: rows.map(readingOf), ...(await after(context, READS_DEVICE, from, rows)) };
  },

  'list-health-accounts': async ({ context }) => {
    const latest = { device: LETTINGS_DEVICE, backwards: true, most: MOST_RECORDS };
    const lettings = (await context.journal.read(LAST, latest)).map(lettingOf);
    return { accounts: [...(await listHealthAccounts(context.records))], lettings };
  },

  'let-in-account': async (call) => {
    const { context, params, body, now } = call;
    const unit = await unitOf(call);
    const by = personOf(call);
    await letIn(context, params.account, body.since, {
      unit: unit.id,
      how: 'occupational-health',
      by,
      now,
    });
    return {};
  },
};
