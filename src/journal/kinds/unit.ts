// Bodies of what concerns the unit as a whole: its beginning, its devices, the languages it trusts, notes.
import * as z from 'zod';
import { code, day, freeText, personId, sha256Hex, slug, whole } from './values.ts';

export const unitCreated = z.strictObject({ title: freeText, invented: z.boolean() });

export const devicePaired = z.strictObject({ device: slug, label: freeText });

export const deviceRevoked = z.strictObject({ device: slug, reason: freeText });

/** Somebody of the staff as a device knows them: a role and initials of their own choosing, never a name. The latest holds. */
export const staffListed = z.strictObject({
  person: personId,
  role: freeText.max(60),
  initials: z.string().regex(/^\p{Lu}{1,4}$/u),
});

/** `wording` is the hash of the sentences that were read. */
export const languageSignedOff = z.strictObject({
  language: z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/),
  wording: sha256Hex,
  on: day,
});

/** A day at most. */
const seconds = whole.min(1).max(86_400).nullable();

/** Times of a product as its label says, in seconds; null where it says none. `label`: which label that is. */
export const productTime = z.strictObject({
  product: code,
  contactSeconds: seconds,
  rubSeconds: seconds,
  drySeconds: seconds,
  label: freeText.max(200),
});

const ABOUT = ['unit', 'procedure', 'exit', 'visit', 'device', 'entry'] as const;

/** `id` names the thing; of an entry, its hash. */
export const noteAdded = z.strictObject({
  about: z.enum(ABOUT),
  id: z.union([slug, sha256Hex]),
  text: freeText,
});

/** Why health records are read. Chosen, never typed, so that nothing of anybody's health comes to stand in the open. */
export const READING_REASONS = [
  'follow-up',
  'exposure',
  'fit-for-work',
  'asked-by-person',
  'record-put-right',
  'review-of-records',
] as const;

const MOST_READ = 200;

/**
 * Somebody reads health records: with which account, whose, and which numbers in the chain of sealed records. Written before they
 * are shown. `people` may name somebody who has none: that was asked for too.
 */
export const healthRead = z.strictObject({
  account: slug,
  people: z.array(personId).max(MOST_READ),
  records: z.array(z.int().min(1)).max(MOST_READ),
  why: z.enum(READING_REASONS),
});

/** The unit's first account of occupational health; let in by somebody who is; by whoever runs the server's machine. */
export const LETTING_WAYS = ['first', 'occupational-health', 'machine'] as const;

/**
 * An account is let in to health records: which and whose, how, and with which account whoever did it was signed in (null on the
 * machine). For the first, that is the lead who made it. Written before it takes effect.
 */
export const healthLetIn = z.strictObject({
  account: slug,
  person: personId,
  how: z.enum(LETTING_WAYS),
  byAccount: slug.nullable(),
});

/**
 * A person's health, closed to everybody who has not the key: neither whose nor what it is stands in the open. The bytes
 * are base64url; `key` names the key, `nonce` and `sealed` are the cipher's.
 */
export const healthSealed = z.strictObject({
  cipher: z.enum(['aes-256-gcm', 'xchacha20-poly1305']),
  key: slug,
  nonce: z.base64url().min(16).max(64),
  sealed: z.base64url().min(24).max(65_536),
});
