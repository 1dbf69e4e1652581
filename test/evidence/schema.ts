// The strict shape of evidence/*.json. Lives with the tests: at run time nothing needs to check it again.
import { z } from 'zod';
import { evidenceStatuses, seenLevels } from '../../src/evidence/types.ts';

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+$/);
const sourceId = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
const sentence = z.string().regex(/^\S.*[.)]$/);

const value: z.ZodType = z.lazy(() =>
  z.union([z.number(), z.string().min(1), z.boolean(), z.array(value), z.record(z.string(), value)]),
);

const distribution = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('lognormal'),
    median: z.number().positive(),
    errorFactor: z.number().gt(1),
  }),
  z.strictObject({ kind: z.literal('beta'), alpha: z.number().positive(), beta: z.number().positive() }),
  z.strictObject({ kind: z.literal('fixed') }),
]);

export const recordSchema = z
  .strictObject({
    id,
    value: value.optional(),
    unit: z.string().min(1),
    distribution: distribution.optional(),
    basis: z.strictObject({ id, times: z.number().positive(), errorFactor: z.number().gt(1) }).optional(),
    sample: z
      .strictObject({ events: z.int().nonnegative(), trials: z.int().positive() })
      .refine((s) => s.events <= s.trials)
      .optional(),
    interval: z
      .strictObject({
        low: z.number(),
        high: z.number(),
        level: z.number().gt(0).lt(1),
        method: z.string().min(1),
      })
      .refine((interval) => interval.low < interval.high)
      .optional(),
    says: sentence,
    source: z.strictObject({ id: sourceId }),
    where: z.string().min(3),
    status: z.enum(evidenceStatuses),
    note: sentence.optional(),
  })
  .refine((r) => (r.value === undefined) === (r.basis !== undefined), 'own value or a basis, never both')
  .refine((r) => r.basis === undefined || r.distribution === undefined, 'a basis brings its distribution');

export const sourceSchema = z.strictObject({
  id: sourceId,
  title: z.string().min(5),
  body: z.string().min(2),
  authors: z.string().min(2),
  year: z.int().min(1950).max(2026).nullable(),
  doi: z
    .string()
    .regex(/^10\.\d{4,9}\/\S+$/)
    .optional(),
  url: z.url({ protocol: /^https?$/ }).optional(),
  seen: z.enum(seenLevels),
  part: sentence,
  note: sentence.optional(),
});
