// Pairing tablets, and what becomes of them.
import * as z from 'zod';
import { freeText } from '../../journal/kinds/values.ts';
import { head, instant, label, role, slug, time, typedCode, unit } from './common.ts';

const device = z
  .strictObject({
    id: slug,
    label: z.string(),
    role,
    pairedAt: instant,
    revokedAt: instant.nullable(),
    seenAt: instant.nullable(),
    /** Its clock minus the server's when it last said, in milliseconds. */
    clockOffset: z.int().nullable(),
  })
  .meta({ id: 'Device' });

export const devices = z.strictObject({ devices: z.array(device) });

export const devicePath = z.strictObject({ device: slug });

/** `device`: one that was paired before and lost its pairing, so that its entries go on where they were. */
export const pairingOffer = z.strictObject({ label, role, device: slug.optional() });

export const pairing = z.strictObject({
  device: slug,
  /** To be typed on the tablet: eight letters and digits. */
  code: z.string(),
  endsAt: instant,
  /** How long it is good, whatever the clock says of whoever shows it. */
  seconds: z.int().min(0),
  /** Where the tablet goes, with the code behind the #, which browsers do not send. */
  address: z.string(),
  /** The address as a QR code: an SVG image. */
  qr: z.string(),
});

export const redemption = z.strictObject({ code: typedCode, sentAt: instant.optional() });

/** What a device needs to go on writing: its id, its role, and where its chain stands here. */
export const deviceState = z.strictObject({ unit, device: slug, label: z.string(), role, head, time });

export const deviceQuery = z.strictObject({ sentAt: instant.optional() });

/** `reason` stands in the journal. */
export const revocation = z.strictObject({ reason: freeText.max(300) });
