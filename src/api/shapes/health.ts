// Health records of staff, for occupational health alone. What is in `record` is theirs; here it is closed and opened whole.
import * as z from 'zod';
import { isPlainObject, type PlainObject } from '../../journal/canonical.ts';
import { LETTING_WAYS, READING_REASONS } from '../../journal/kinds/unit.ts';
import { personId } from '../../journal/kinds/values.ts';
import { account, instant, slug } from './common.ts';

/** Of one answer. */
export const MOST_RECORDS = 200;

const content = z
  .custom<PlainObject>(isPlainObject)
  .meta({ type: 'object', description: 'Integers, text, lists and objects, 16 deep; no fractions.' });

export const healthRecord = z.strictObject({
  /** Whose it is. */
  person: personId,
  /** What it is, as occupational health calls its forms, and the form's version. */
  form: slug,
  version: z.int().min(1),
  record: content,
});

export type HealthRecord = z.infer<typeof healthRecord>;

export const healthSealed = z.strictObject({ number: z.int().min(1), key: slug });

export const healthReading = z.strictObject({
  why: z.enum(READING_REASONS),
  /** Only this person's; everybody's where it is not said. */
  person: personId.optional(),
  /** Number of the first record to read; 1 for the beginning. */
  from: z.int().min(1).optional(),
  /** As many records at most, so that one can be read alone. */
  most: z.int().min(1).max(MOST_RECORDS).optional(),
});

export const readingsQuery = z.strictObject({
  /** Number of the first reading; 1 for the beginning. */
  from: z
    .string()
    .regex(/^\d{1,15}$/)
    .transform(Number)
    .pipe(z.int().min(1))
    .optional(),
});

export const healthRecords = z.strictObject({
  records: z.array(
    healthRecord.extend({
      number: z.int().min(1),
      at: instant,
      by: personId.nullable(),
      /** Name of the key that it was sealed with. */
      key: slug,
    }),
  ),
  next: z.int().min(1),
  more: z.boolean(),
});

export const readings = z.strictObject({
  readings: z.array(
    z.strictObject({
      number: z.int().min(1),
      at: instant,
      /** Who read, by the journal's id, and with which account. */
      by: personId.nullable(),
      account: slug,
      /** Whose records were shown, or asked for. */
      people: z.array(personId),
      /** Numbers of the records that were shown. */
      records: z.array(z.int().min(1)),
      why: z.enum(READING_REASONS),
    }),
  ),
  next: z.int().min(1),
  more: z.boolean(),
});

/** Since when the account waits, as the list says: an account that a lead changed since is not let in by an older look at it. */
export const lettingIn = z.strictObject({ since: instant });

export const healthAccounts = z.strictObject({
  /** Those of occupational health, closed ones too. */
  accounts: z.array(
    account.extend({
      /** Since when it waits or is let in; null where that was before it was noted. */
      since: instant.nullable(),
    }),
  ),
  /** Who was let in, the latest first; no more than one answer holds. */
  lettings: z.array(
    z.strictObject({
      number: z.int().min(1),
      at: instant,
      account: slug,
      person: personId,
      how: z.enum(LETTING_WAYS),
      /** Who did it, by the journal's id and account; null for whoever runs the server's machine. */
      by: personId.nullable(),
      byAccount: slug.nullable(),
    }),
  ),
});
