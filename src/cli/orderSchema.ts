// The shape of `doffline order --json`: schema/order-1.json is made of it, and orderReport.ts fills it.
import { z } from 'zod';
import { CHOICE_KINDS, FIGURES, OUTCOMES } from '../order/index.ts';
import { STEP_CHANGES } from '../order/changes.ts';
import { REWRITINGS } from '../order/substitute.ts';
import { agent, diagnostic, measure, stepNumber } from './reportSchema.ts';

export const ORDER_FORMAT = 'order-1';

const difference = z.object({
  figure: z.enum(FIGURES).describe('The weightiest figure that differs.'),
  from: z.number(),
  to: z.number(),
});

const step = z.object({
  number: stepNumber,
  id: z.string(),
  who: z.string(),
  action: z.string(),
  sentence: z.string(),
  ownWording: z.boolean().describe("Whether the sentence is the unit's own (docs/languages.md)."),
});

const choice = z.object({
  kind: z.enum(CHOICE_KINDS),
  step: z.string().describe('Id of the step it is about.'),
  instead: z
    .string()
    .describe(
      'The alternative: id of the step that would go first, a technique, or `nobody`; empty: left out.',
    ),
  outcome: z.enum(OUTCOMES).describe('What the alternative comes to.'),
  difference: difference.nullable(),
  sentence: z.string(),
});

const found = z.object({
  title: z.string(),
  steps: z.array(step),
  text: z.string().describe('The whole procedure file, in canonical form.'),
});

const substitution = z.object({
  from: z.string(),
  to: z.string(),
  rewriting: z.enum(REWRITINGS),
  kept: z.boolean().describe('Nothing but time is worse than before.'),
  lost: z.array(difference),
  changes: z.array(z.object({ what: z.enum(STEP_CHANGES), step: z.string(), sentence: z.string() })),
  retraining: z.array(z.object({ person: z.string(), role: z.string(), steps: z.array(z.string()) })),
});

export const orderReport = z
  .object({
    format: z.literal(ORDER_FORMAT),
    version: z.string().describe('Version of the program.'),
    file: z.string(),
    language: z.string().describe('BCP 47 tag of every sentence here but those of `diagnostics`.'),
    review: z
      .array(z.string())
      .describe('How far the wording may be trusted: in its language, and in English.'),
    status: z.union([z.literal(0), z.literal(1), z.literal(2)]).describe('Exit status.'),
    agent: agent.nullable(),
    procedure: found.nullable().describe('null when the file has errors or has no order to search.'),
    before: measure.nullable().describe('Of the steps as given.'),
    after: measure.nullable(),
    kept: z.boolean().describe('The given steps stand: nothing admissible that is better was found.'),
    proved: z.boolean().describe('No admissible order is better on the measure.'),
    gap: difference
      .nullable()
      .describe('Where not proved: from what no admissible order is below, to what was found.'),
    lowerBound: measure.nullable().describe('No admissible order is below this.'),
    explored: z
      .object({ scenes: z.int(), tried: z.int(), dropped: z.int() })
      .nullable()
      .describe('Scenes in all; partial orders tried, and of these, cut off or dominated.'),
    free: z.boolean().describe('Departures from practice that the given steps do not make were admissible.'),
    choices: z.array(choice),
    substitution: substitution.nullable(),
    refusal: z.string().nullable().describe('Why there is no order to search.'),
    diagnostics: z.array(diagnostic),
    cautions: z.array(z.string()),
  })
  .describe('What `doffline order --json FILE` prints.');

export type OrderReport = z.infer<typeof orderReport>;

/** JSON Schema (draft 2020-12). */
export const orderJsonSchema = (): unknown => z.toJSONSchema(orderReport);
