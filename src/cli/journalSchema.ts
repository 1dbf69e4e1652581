// The shape of `doffline journal verify --json`: schema/journal-verify-1.json is made of it.
import { z } from 'zod';
import { FLAWS } from '../journal/verify.ts';

export const JOURNAL_FORMAT = 'journal-verify-1';

const head = z.object({
  number: z.int().min(0).describe('The last entry’s number in the unit’s chain; 0 for an empty journal.'),
  hash: z.string().describe('The unit’s hash there.'),
});

const flaw = z.object({
  code: z.enum(FLAWS),
  unitNumber: z.int().min(0).describe('Number of the entry in the unit’s chain.'),
  device: z.string().describe('Empty where the entry itself is missing.'),
  number: z.int().min(0).describe('Number of the entry on its device.'),
  found: z.string(),
  expected: z.string(),
  sentence: z.string(),
});

export const journalReport = z.object({
  format: z.literal(JOURNAL_FORMAT),
  version: z.string(),
  status: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  place: z.string(),
  entries: z.int().min(0),
  devices: z.int().min(0),
  head,
  flaws: z.array(flaw).describe('The first thousand.'),
  more: z.int().min(0).describe('Flaws beyond those.'),
  damage: z.array(z.string()).describe('What the database says of its own damage.'),
  falseSnapshots: z.array(z.string()).describe('Views whose snapshot is not what the entries make.'),
  problem: z.string().nullable().describe('Why there is nothing to verify.'),
});

export type JournalReport = z.infer<typeof journalReport>;

export const journalJsonSchema = (): object => z.toJSONSchema(journalReport);
