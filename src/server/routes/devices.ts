// Devices: a code that joins one, what it needs to write on, and taking it out again. The journal notes who joined and who
// was taken out; being taken out takes effect first, and is noted again until the journal has it.
import { renderSVG } from 'uqr';
import { type Call, type Context, deviceOf, type Handlers, personOf } from '../context.ts';
import { timeOf } from '../clock.ts';
import { counted } from '../limits.ts';
import { headOfDevice, SERVER_DEVICE, writeOwn } from '../ownEntries.ts';
import { Refusal } from '../refusal.ts';
import { newCode, newId, readCode } from '../secrets.ts';
import {
  addPairing,
  admitDevice,
  claimPairing,
  type Device,
  findDevice,
  listDevices,
  noteRevocation,
  type Offer,
  revoke,
  unclaimPairing,
  voidPairingsFor,
} from '../store/devices.ts';
import { unitOf } from './session.ts';

async function join(call: Call<'pair'>, offer: Offer): Promise<string> {
  const { context, now } = call;
  const unit = await unitOf(call);
  await writeOwn(context.journal, {
    unit: unit.id,
    device: SERVER_DEVICE,
    kind: 'device.paired',
    at: now,
    by: offer.madeBy,
    body: { device: offer.device, label: offer.label },
  });
  return context.records.write((sql) => admitDevice(sql, offer, now));
}

const secondsFrom = (now: Date, end: string): number => Math.round((Date.parse(end) - now.getTime()) / 1000);

async function stateOf(
  call: { readonly context: Context; readonly now: Date },
  { id, label, role }: Pick<Device, 'id' | 'label' | 'role'>,
  sentAt: string | undefined,
) {
  const { number, hash } = await headOfDevice(call.context.journal, id);
  const unit = await unitOf(call);
  return { unit, device: id, label, role, head: { number, hash }, time: timeOf(call.now, sentAt) };
}

type DeviceRoute = 'list-devices' | 'revoke-device' | 'offer-pairing' | 'pair' | 'read-device';

export const deviceRoutes: Pick<Handlers, DeviceRoute> = {
  'list-devices': async ({ context }) => {
    await context.sights.write();
    const all = await listDevices(context.records);
    return {
      devices: all.map(({ id, label, role, pairedAt, revokedAt, seenAt, clockOffset }) => ({
        id,
        label,
        role,
        pairedAt,
        revokedAt,
        seenAt,
        clockOffset,
      })),
    };
  },

  'offer-pairing': async (call) => {
    const { context, body, now } = call;
    const { label, role } = body;
    if (body.device !== undefined && !(await findDevice(context.records, body.device)))
      throw new Refusal('not-found');
    const device = body.device ?? newId('tablet');
    const code = newCode();
    const offer = { device, label, role, madeBy: personOf(call).person };
    const endsAt = await context.records.write((sql) => addPairing(sql, readCode(code), offer, now));
    if (endsAt === undefined) throw new Refusal('too-many-pairings', { after: 60 });
    const address = `${context.reach().address}/device#pair=${code}`;
    return { device, code, endsAt, seconds: secondsFrom(now, endsAt), address, qr: renderSVG(address) };
  },

  pair: async (call) => {
    const { context, body, peer, now } = call;
    const code = readCode(body.code);
    const forgive = await counted([
      [context.limits.address, peer],
      [context.limits.code, 'pair'],
    ]);
    const offer = await context.records.write((sql) => claimPairing(sql, code, now));
    if (!offer) throw new Refusal('code-wrong');
    await forgive();
    try {
      call.setDevice(await join(call, offer));
    } catch (error) {
      await context.records.write((sql) => unclaimPairing(sql, code)).catch(() => undefined);
      throw error;
    }
    return stateOf(call, { ...offer, id: offer.device }, body.sentAt);
  },

  'read-device': async (call) => {
    const device = deviceOf(call);
    const { sentAt } = call.query;
    const state = await stateOf(call, device, sentAt);
    call.context.sights.note(device, state.time.offset, call.now);
    // The same token again: browsers forget a cookie after some months.
    if (call.deviceToken !== undefined) call.setDevice(call.deviceToken);
    return state;
  },

  'revoke-device': async (call) => {
    const { context, params, body, now } = call;
    await context.records.write(async (sql) => {
      await revoke(sql, params.device, now);
      // A code that was made before, to pair it again, would bring it back.
      await voidPairingsFor(sql, params.device);
    });
    const device = await findDevice(context.records, params.device);
    if (!device) throw new Refusal('not-found');
    if (device.revocationNoted) return {};
    const unit = await unitOf(call);
    await writeOwn(context.journal, {
      unit: unit.id,
      device: SERVER_DEVICE,
      kind: 'device.revoked',
      at: now,
      by: personOf(call).person,
      body: { device: device.id, reason: body.reason },
    });
    await context.records.write((sql) => noteRevocation(sql, device.id));
    return {};
  },
};
