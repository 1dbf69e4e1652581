// What several requests and answers are made of.
import * as z from 'zod';
import { instant, personId, slug } from '../../journal/kinds/values.ts';
import { HEALTH_ACCESS, ROLES } from '../roles.ts';

export { instant, slug };

export const role = z.enum(ROLES);

/**
 * Nothing that steers a terminal, breaks a line, turns text around or is not seen: names are shown in lists, and typed. Joiners
 * belong to words of some scripts, and U+FE0F to signs in colour.
 */
export const line = z
  .string()
  .trim()
  .min(1)
  .max(120)
  .regex(
    /^(?=.*[\p{L}\p{N}\p{P}\p{S}])(?:\u200c|\u200d|\ufe0f|[^\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}\p{Surrogate}\p{Default_Ignorable_Code_Point}])*$/u,
  );

export const label = line.max(80);

/** What somebody signs in with. Letters of any script; upper and lower case are the same name. */
export const loginName = line.max(64);

/** Length is judged when a password is chosen, not when it is asked for. */
export const password = z.string().min(1).max(256);

/** As it was typed: blanks, hyphens and small letters are put right. */
export const typedCode = z.string().min(1).max(40);

export const account = z
  .strictObject({
    id: slug,
    name: z.string(),
    /** Their id in the journal. */
    person: personId,
    role,
    disabled: z.boolean(),
    /** Whether they still have the password that they were given. */
    firstPassword: z.boolean(),
    /** Health records of staff: not by this role, not until somebody lets the account in, or let in. */
    health: z.enum(HEALTH_ACCESS),
  })
  .meta({ id: 'Account' });

export const unit = z
  .strictObject({
    id: slug,
    title: z.string(),
    /** True for the demonstration: nobody there exists. */
    invented: z.boolean(),
  })
  .meta({ id: 'Unit' });

export const time = z
  .strictObject({
    /** The server's clock. */
    now: instant,
    /** The device's clock minus the server's, in milliseconds, where the request said `sentAt`; else null. Half a round trip wrong. */
    offset: z.int().nullable(),
  })
  .meta({ id: 'Time', description: 'Recorded, and never used to change what a device wrote.' });

export const head = z
  .strictObject({ number: z.int().min(0), hash: z.string() })
  .meta({ id: 'Head', description: 'The last entry of a device that is stored; number 0 for none.' });

export const nothing = z.strictObject({});
