// Sending entries and reading them. The journal itself judges what an entry is (src/journal/admit.ts), so that its refusal
// names the entry; here stands only how many come at once.
import * as z from 'zod';
import { head, instant, time } from './common.ts';

/** Entries in one request, at most. */
export const MOST_ENTRIES = 500;

const entry = z.unknown().meta({
  id: 'Entry',
  type: 'object',
  description: 'An entry with its hash: docs/journal.md.',
  required: ['format', 'unit', 'device', 'number', 'kind', 'version', 'at', 'by', 'body', 'previous', 'hash'],
});

export const batch = z.strictObject({
  /** Of the device that sends them, in the order of their numbers. */
  entries: z.array(entry).max(MOST_ENTRIES),
  /** The device's clock when it sent this. */
  sentAt: instant.optional(),
});

export const acknowledged = z.strictObject({
  /** Those of the request, durably stored, in its order. */
  acknowledged: z.array(z.strictObject({ number: z.int().min(1), hash: z.string() })),
  /** Where the device's chain stands now. */
  head,
  time,
});

const wholeText = (most: number) =>
  z
    .string()
    .regex(/^\d{1,15}$/)
    .transform(Number)
    .pipe(z.int().min(1).max(most));

export const readQuery = z.strictObject({
  /** Cursor: the `next` of the answer before; 1 for the beginning. */
  from: wholeText(Number.MAX_SAFE_INTEGER).optional(),
  most: wholeText(MOST_ENTRIES).optional(),
  sentAt: instant.optional(),
});

export const page = z.strictObject({
  /** `at` is its place in what may be read here, from 1 without a gap. */
  entries: z.array(z.strictObject({ at: z.int().min(1), entry })),
  /** Where to read on: the same again until something is added. */
  next: z.int().min(1),
  /** Whether there is more already. */
  more: z.boolean(),
  time,
});
