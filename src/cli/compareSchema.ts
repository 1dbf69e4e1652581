// The shape of `doffline compare --json`: schema/compare-1.json is made of it, and compareReport.ts fills it. `a` is the
// first file, `b` the second; every difference is `b` less `a`.
import { z } from 'zod';
import { HAPPENINGS } from '../compare/align.ts';
import { quantity, spell } from './costSchema.ts';
import { agent, barriers, chance, diagnostic, severity, status, stepNumber } from './reportSchema.ts';

export const COMPARE_FORMAT = 'compare-1';

const interval = z.tuple([z.number(), z.number()]).describe('90 % interval.');
const surfaceClass = z.enum(['mucosa', 'skin', 'clothes', 'shoes', 'clean-side', 'equipment', 'fixture']);

const side = z.object({
  file: z.string(),
  title: z.string(),
  kind: z.enum(['doffing', 'donning']),
  version: z.string(),
  invented: z.boolean(),
  hash: z.string(),
  steps: z.int(),
});

const stepRow = z.object({
  what: z.enum(HAPPENINGS),
  a: stepNumber.nullable().describe('Number in the first; null for a new step.'),
  b: stepNumber.nullable().describe('Number in the second; null for one left out.'),
  by: z.enum(['id', 'content', 'likeness']).nullable().describe('What the two were recognised by.'),
  changed: z.array(z.string()).describe('Fields that differ.'),
  sentence: z.string(),
});

const finding = z.object({
  code: z.string(),
  severity,
  kind: z.string(),
  title: z.string(),
  step: stepNumber,
  surface: z.string().nullable(),
  agent: agent.nullable(),
  noLongerOpen: z.boolean().describe('Stood open in the first, is one slip away in the second.'),
});

const figure = z.object({ chance, interval: z.tuple([chance, chance]) }).nullable();
const difference = z
  .object({
    chance: z.number(),
    interval: interval.describe('90 % interval of the difference; slips of one record share their draws.'),
    excludesZero: z.boolean(),
    sentence: z.string(),
  })
  .nullable()
  .describe('null where one of the two has no such surface.');

const surface = z.object({
  a: z.string().nullable().describe('Its id in the first; null: not there.'),
  b: z.string().nullable(),
  name: z.string(),
  class: surfaceClass,
  agent,
  barriersA: barriers,
  barriersB: barriers,
  chanceA: figure,
  chanceB: figure,
  difference,
  status,
});

const classRow = z.object({
  classes: z.array(surfaceClass),
  agent,
  chanceA: figure,
  chanceB: figure,
  difference,
  status,
});

const supply = z.object({
  name: z.string(),
  key: z.string(),
  a: quantity,
  b: quantity,
  millilitresA: z.number().nullable(),
  millilitresB: z.number().nullable(),
});

export const compareReport = z
  .object({
    format: z.literal(COMPARE_FORMAT),
    version: z.string(),
    status: z
      .union([z.literal(0), z.literal(1), z.literal(2)])
      .describe('0 the second has no error that the first has not, 1 it has, 2 something could not be read.'),
    a: side.nullable(),
    b: side.nullable(),
    agents: z.array(agent),
    steps: z.array(stepRow),
    findings: z.object({
      gone: z.array(finding),
      new: z.array(finding),
      newErrors: z.array(finding),
      kept: z.int().describe('How many both have.'),
    }),
    surfaces: z.array(surface),
    classes: z.array(classRow).describe('Of surfaces that both have.'),
    time: z
      .object({
        a: spell,
        b: spell,
        difference: z.object({
          seconds: z.number(),
          interval,
          excludesZero: z.boolean(),
          sentence: z.string(),
        }),
      })
      .nullable(),
    supplies: z.array(supply).describe('Everything that either needs for a run.'),
    incomparable: z.array(z.string()).describe('What only one of them has, in sentences.'),
    exact: z
      .boolean()
      .describe('False where one could not be worked out exactly: nothing is said of surfaces.'),
    diagnostics: z.array(diagnostic),
    cautions: z.array(z.string()),
  })
  .describe('What `doffline compare --json A B` prints.');

export type CompareReport = z.infer<typeof compareReport>;

/** JSON Schema (draft 2020-12) of the report. */
export const compareJsonSchema = (): unknown => z.toJSONSchema(compareReport);
