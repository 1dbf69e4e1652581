// Bodies of a procedure's life: draft, review, approval, retirement, departures accepted. `content` is the SHA-256 of the
// file's text, so that everybody means the same bytes; the text itself may travel along when it is drafted.
import * as z from 'zod';
import { hashOfText } from '../hash.ts';
import { code, day, freeText, personId, sha256Hex, slug, versionName } from './values.ts';

/** Longest procedure file, in UTF-16 code units. */
const MOST_FILE = 128 * 1024;

const version = { procedure: slug, version: versionName, content: sha256Hex };

export const procedureDrafted = z
  .strictObject({ ...version, text: z.string().min(1).max(MOST_FILE).nullable() })
  .refine(({ content, text }) => text === null || hashOfText(text) === content, {
    message: 'is not the hash of the text',
    path: ['content'],
  });

export const procedureSent = z.strictObject({ ...version, to: z.array(personId).min(1).max(50) });

/** The reviewer wants it changed first: it is a draft again. */
export const procedureSentBack = z.strictObject({ ...version, reason: freeText });

/** Who approved it, on which day they signed, and the day by which it must be looked at again. */
export const procedureApproved = z.strictObject({
  ...version,
  people: z.array(personId).min(1).max(50),
  on: day,
  reviewOn: day,
});

export const procedureRetired = z.strictObject({ ...version, reason: freeText });

/** A finding of the check that the unit lives with: its code, and where, if only there. */
export const departureAccepted = z.strictObject({
  ...version,
  finding: code,
  step: code.nullable(),
  surface: code.nullable(),
  reason: freeText,
  person: personId,
  reviewOn: day,
});
