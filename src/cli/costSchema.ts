// The shape of `doffline cost --json`: schema/cost-1.json is made of it, and costReport.ts fills it.
import { z } from 'zod';
import { agent, diagnostic, status, stepNumber } from './reportSchema.ts';

export const COST_FORMAT = 'cost-1';

const grounds = z.array(z.string()).describe('Ids of the evidence it rests on.');

export const quantity = z.object({
  unit: z.enum(['piece', 'wipe', 'use', 'mat']),
  count: z.int().min(0),
  pairs: z.int().min(0).nullable().describe('Whole pairs, of an item that comes in pairs; null for others.'),
  singles: z.int().min(0).nullable().describe('Pieces left over, of an item that comes in pairs.'),
});

export const spell = z.object({
  seconds: z.number().min(0),
  interval: z.tuple([z.number(), z.number()]).describe('90 % interval from the uncertainty of the times.'),
  status,
});

const item = z.object({
  item: z.string(),
  name: z.string(),
  singleUse: z.boolean(),
  needed: quantity.describe(
    'Worn at the start or put on in the run: discarded, reprocessed and left on together.',
  ),
  opened: quantity.describe('Put on fresh in the run.'),
  discarded: quantity.describe('Single use, taken off in the run.'),
  reprocessed: quantity.describe('Taken off to be used again.'),
  leftOn: quantity.describe('Still worn at the end.'),
});

const use = z.object({
  kind: z.enum(['wipe', 'product', 'mat']),
  product: z.string().nullable(),
  name: z.string(),
  quantity,
  millilitres: z
    .number()
    .nullable()
    .describe('null where it is no liquid, or where there is no figure: see `volumeKnown`.'),
  volumeKnown: z.boolean().nullable().describe('null where it is no liquid.'),
  evidence: grounds,
  status,
});

const person = z.object({
  person: z.string(),
  role: z.enum(['wearer', 'observer', 'assistant']),
  handsOn: spell.describe('In steps that the person does, helps with or has done to them.'),
  tiedUp: spell.describe('Kept from other work.'),
  steps: z.tuple([stepNumber, stepNumber]).nullable().describe('First and last step that needs the person.'),
});

const pricedLine = z.object({
  name: z.string(),
  key: z.string().describe('Its name in a price list.'),
  by: z.enum(['piece', 'reprocessing', 'litre', 'use']),
  amount: z.number(),
  price: z.number().nullable(),
  sum: z.number().nullable().describe('null where the list has no price.'),
});

const record = z.object({ id: z.string(), says: z.string(), source: z.string(), status });

export const costReport = z
  .object({
    format: z.literal(COST_FORMAT),
    version: z.string(),
    file: z.string(),
    status: z.union([z.literal(0), z.literal(2)]),
    procedure: z
      .object({
        title: z.string(),
        kind: z.enum(['doffing', 'donning']),
        version: z.string(),
        invented: z.boolean(),
        steps: z.int(),
        agents: z.array(agent),
      })
      .nullable(),
    runs: z.int().min(1).describe('Runs a day. Every other figure is of one run: multiply.'),
    run: spell.nullable(),
    items: z.array(item),
    uses: z.array(use),
    people: z.array(person),
    waste: z
      .object({
        pieces: z.int().min(0),
        litres: z.null().describe('No published figure per item or run.'),
        kilograms: z.null().describe('No published figure per item or run.'),
        evidence: grounds,
      })
      .nullable(),
    prices: z
      .object({
        currency: z.string(),
        lines: z.array(pricedLine),
        total: z.number().describe('Of one run, of what has a price.'),
        unpriced: z.array(z.string()),
      })
      .nullable()
      .describe('null without a price list: there is no default price.'),
    evidence: z.array(record).describe('Every record that the figures rest on.'),
    diagnostics: z.array(diagnostic),
    cautions: z.array(z.string()),
  })
  .describe('What `doffline cost --json FILE` prints.');

export type CostReport = z.infer<typeof costReport>;

/** JSON Schema (draft 2020-12) of the report. */
export const costJsonSchema = (): unknown => z.toJSONSchema(costReport);
