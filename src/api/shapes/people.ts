// The unit's beginning, signing in, and accounts.
import * as z from 'zod';
import { account, line, loginName, password, role, slug, typedCode, unit } from './common.ts';

export const unitState = z.strictObject({
  /** Null until somebody creates it. */
  unit: unit.nullable(),
  /** Whether the server waits for the code that it showed when it started. */
  waitsForLead: z.boolean(),
  /** The journal's unit, where a journal is there without accounts: its id must be given again. */
  journalOf: slug.nullable(),
});

/** Either one's own unit with its first lead, or the invented one in one press. */
export const creation = z.discriminatedUnion('demo', [
  z.strictObject({
    demo: z.literal(false),
    code: typedCode,
    id: slug.max(40),
    title: line,
    name: loginName,
    password,
  }),
  z.strictObject({ demo: z.literal(true), code: typedCode }),
]);

export const created = z.strictObject({
  unit,
  account,
  /** Only for the demonstration: who may sign in, with passwords that are shown this once. */
  people: z.array(z.strictObject({ name: z.string(), role, password: z.string() })),
});

export const signIn = z.strictObject({ name: loginName, password });

export const session = z.strictObject({ unit, account });

export const passwordChange = z.strictObject({ old: password, new: password });

export const accounts = z.strictObject({ accounts: z.array(account) });

export const newAccount = z.strictObject({ name: loginName, role });

/** `password` is shown this once, and must be changed by its owner at the first sign-in. */
export const accountMade = z.strictObject({ account, password: z.string() });

export const accountChange = z.strictObject({
  role: role.optional(),
  disabled: z.boolean().optional(),
  newPassword: z.literal(true).optional(),
});

export const accountChanged = z.strictObject({ account, password: z.string().nullable() });

export const accountPath = z.strictObject({ account: slug });
