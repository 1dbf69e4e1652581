// The shape of `doffline check --json`, once: the types that report.ts fills follow from it, schema/check-1.json is made
// of it, and docs/command-line.md describes it. A change that an existing reader cannot read needs a new number.
import { z } from 'zod';
import { FINDING_KINDS } from '../check/finding.ts';

export const CHECK_FORMAT = 'check-1';
export const CHECKS_FORMAT = 'checks-1';

export const severity = z.enum(['error', 'note']);
export const agent = z.enum(['enveloped', 'non-enveloped']);
export const status = z
  .enum(['published', 'common practice', 'memory', 'judgement'])
  .describe('How far a number may be trusted: the weakest of all that it rests on.');
export const stepNumber = z
  .int()
  .min(0)
  .describe('Number of a step, from 1; 0 is the start, before the first step.');
export const chance = z
  .number()
  .min(0)
  .max(1)
  .describe('A chance from 0 to 1: a relative guide, see its status.');
export const barriers = z
  .int()
  .min(0)
  .nullable()
  .describe('Slips and circumstances that it takes at least; 0 is an open route, null: no route found.');
const count = z.string().regex(/^\d+$/).describe('A whole number of any size.');

const step = z.object({
  number: stepNumber,
  id: z.string(),
  line: z.int().min(1).nullable().describe('Line of the file.'),
  who: z.string(),
  role: z.enum(['wearer', 'observer', 'assistant']),
  action: z.string(),
  sentence: z.string().describe('The step as it is read aloud.'),
  ownWording: z.boolean().describe("Whether the sentence is the unit's own (docs/languages.md)."),
  note: z.string().nullable(),
});

const procedure = z.object({
  title: z.string(),
  kind: z.enum(['doffing', 'donning']),
  version: z.string(),
  invented: z.boolean(),
  hash: z.string().describe('First part of every replay id; changes with the procedure.'),
  agents: z.array(agent).describe('Agents it was checked against.'),
  steps: z.array(step),
});

const event = z.object({
  key: z.string(),
  slip: z.string(),
  kind: z.enum(['slip', 'circumstance']),
  step: stepNumber,
  sentence: z.string(),
  visible: z.boolean().describe('Whether an observer standing by could see it happen.'),
  evidence: z.string().describe('Id of the evidence that its chance rests on.'),
  status,
});

const link = z.object({
  sentence: z.string(),
  step: stepNumber,
  from: z.string().nullable(),
  to: z.string().nullable(),
  events: z.array(z.string()).describe('Keys of the events it takes; empty when it always happens.'),
});

export const measure = z.object({
  impossible: z.int(),
  open: z.object({ mucosa: z.int(), skin: z.int(), clothesAndShoes: z.int(), cleanSide: z.int() }),
  chance: z.object({ mucosa: chance, skin: chance, clothesAndShoes: chance, cleanSide: chance }),
  departures: z.int(),
  seconds: z.number(),
  status,
});

const edit = z
  .looseObject({ do: z.enum(['insert', 'remove', 'move', 'replace']) })
  .describe(
    'Numbers count steps from 1: `at` the step before which to insert, or which to remove or replace; `from`, `to` of a move.',
  );

const mend = z.object({
  sentence: z.string(),
  edit,
  changes: z.array(z.string()).describe('What it changes, in words.'),
  barriers: z.object({ before: barriers, after: barriers }).nullable(),
  before: measure,
  after: measure,
  gone: z.array(z.string()),
  added: z.array(z.string()),
  newSlips: z
    .array(z.object({ event: z.string(), surface: z.string() }))
    .describe(
      'Slips and circumstances that alone reach a protected surface only once the edit is made; a redesign can open routes.',
    ),
});

const evidence = z.object({ id: z.string(), says: z.string(), source: z.string(), status });

const accepted = z.object({ reason: z.string(), by: z.string(), date: z.string(), review: z.string() });

const finding = z.object({
  code: z.string(),
  severity,
  kind: z.enum(FINDING_KINDS),
  title: z.string(),
  message: z.string(),
  ownWording: z.boolean().describe("Whether the sentence is the unit's own (docs/languages.md)."),
  steps: z.array(stepNumber).describe('The first is where to look.'),
  surface: z.string().nullable(),
  surfaces: z.array(z.string()),
  agent: agent.nullable().describe('null: the same against every agent.'),
  events: z.array(event),
  route: z.array(link),
  mends: z.array(mend).describe('Edits that were tried and help.'),
  tried: z.int().nullable().describe('How many edits were tried for it; null where none is.'),
  evidence: z.array(evidence),
  replay: z.string().nullable().describe('Id for `doffline replay`.'),
  accepted: accepted.nullable(),
});

const combination = z.object({
  events: z.array(z.string()),
  sentences: z.array(z.string()),
  chance,
  replay: z.string(),
});

const surface = z.object({
  surface: z.string(),
  name: z.string(),
  class: z.enum(['mucosa', 'skin', 'clothes', 'shoes', 'clean-side', 'equipment', 'fixture']),
  agent,
  barriers,
  barriersAtEnd: barriers,
  combinations: z
    .array(combination)
    .describe('The smallest first; combinationCount says how many there are.'),
  combinationCount: count,
  combinationsByOrder: z.record(z.string(), count),
  chance,
  interval: z.tuple([chance, chance]).describe('90 % interval from the uncertainty of the chances of slips.'),
  status,
  importance: z.array(
    z.object({ event: z.string(), sentence: z.string(), birnbaum: z.number(), fussellVesely: z.number() }),
  ),
});

export const diagnostic = z.object({
  file: z.string(),
  line: z.int().min(1),
  column: z.int().min(1),
  endLine: z.int().min(1),
  endColumn: z.int().min(1),
  severity,
  code: z.string(),
  wrong: z.string(),
  mend: z.string(),
});

export const checkReport = z
  .object({
    format: z.literal(CHECK_FORMAT),
    version: z.string().describe('Version of the program.'),
    file: z.string(),
    status: z.union([z.literal(0), z.literal(1), z.literal(2)]).describe('Exit status for this file.'),
    procedure: procedure.nullable().describe('null when the file has errors.'),
    findings: z.array(finding),
    surfaces: z.array(surface).describe('Every protected surface that the procedure can touch.'),
    measures: z.array(z.object({ agent, measure })),
    diagnostics: z.array(diagnostic),
    limits: z
      .array(
        z.object({
          code: z.enum(['exact', 'mends', 'variants']),
          agent: agent.nullable().describe('null: against every agent.'),
          sentence: z.string(),
        }),
      )
      .describe('What was not worked out, or not all of it; empty for procedures of a usual size.'),
    cautions: z.array(z.string()),
    language: z.string().describe('BCP 47 tag of every sentence here but those of `diagnostics`.'),
    review: z
      .array(z.string())
      .describe('How far the wording may be trusted: in its language, and in English.'),
  })
  .describe('What `doffline check --json FILE` prints.');

export type CheckReport = z.infer<typeof checkReport>;
export type FindingReport = CheckReport['findings'][number];

/** Several files: one object each, in the order they were named. */
export const checksReport = z.object({
  format: z.literal(CHECKS_FORMAT),
  version: z.string(),
  results: z.array(checkReport),
});

/** JSON Schema (draft 2020-12) of one file's report. */
export const checkJsonSchema = (): unknown => z.toJSONSchema(checkReport);
