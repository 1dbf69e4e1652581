// Bodies of a live exit or a drill, line by line as it is read aloud. A line is a number of the script, a step the id in
// the procedure. Nothing here says that somebody is clean: only what was shown, answered, seen and not seen.
import * as z from 'zod';
import { code, freeText, personId, plainObject, sha256Hex, slug, versionName, whole } from './values.ts';

const exit = { exit: slug };
const line = { ...exit, line: whole, step: code };

export const exitStartedFirst = z.strictObject({
  ...exit,
  drill: z.boolean(),
  procedure: slug,
  version: versionName,
  content: sha256Hex,
  agent: code,
  room: slug,
  wearer: personId,
  observer: personId,
  assistants: z.array(personId).max(8),
});

/** `kind`: what the procedure that is read aloud does; null: not recorded. */
export const exitStarted = exitStartedFirst.extend({ kind: z.enum(['doffing', 'donning']).nullable() });

export const startedFrom = (first: z.infer<typeof exitStartedFirst>): z.infer<typeof exitStarted> => ({
  ...first,
  kind: null,
});

export const lineShown = z.strictObject(line);

const MEANS = ['key', 'pedal', 'touch', 'other'] as const;
export const lineConfirmed = z.strictObject({ ...line, means: z.enum(MEANS) });

/** The observer could not see whether it was done as written. */
export const notSeen = z.strictObject(line);

/** A slip of the step's technique, and the surfaces touched where the observer named them. */
export const slipRecorded = z.strictObject({
  ...line,
  slip: code,
  surfaces: z.array(code).max(50),
  text: freeText.nullable(),
});

/** `choices` are ids of the ways on in the order of their rank; `continuation` the one worked out, as it was offered. */
export const continuationOffered = z.strictObject({
  ...exit,
  offer: slug,
  step: code,
  choices: z.array(code).min(1).max(20),
  continuation: plainObject,
});

/** `choice` null: none of them, the observer went on another way. */
export const continuationAnswered = z.strictObject({
  ...exit,
  offer: slug,
  choice: code.nullable(),
  text: freeText.nullable(),
});

export const exitStopped = z.strictObject({ ...line, text: freeText.nullable() });

export const exitResumed = z.strictObject(line);

export const timerStarted = z.strictObject({ ...exit, timer: slug, step: code, seconds: whole });

export const timerEnded = z.strictObject({
  ...exit,
  timer: slug,
  how: z.enum(['elapsed', 'cut-short', 'cancelled']),
  seconds: whole,
});

export const handedOver = z.strictObject({
  ...line,
  role: z.enum(['observer', 'assistant']),
  from: personId,
  to: personId,
});

/** `deviations` counts what was seen; 0 reads 'no deviation seen'. */
export const exitEnded = z.strictObject({
  ...exit,
  how: z.enum(['finished', 'broken-off']),
  deviations: whole,
  linesNotSeen: whole,
});

export const questionAnsweredFirst = z.strictObject({ ...exit, question: slug, answer: code });

/** `salt`: drawn at random, so that nobody who has the entry's hash can try the few answers against it (withheld.ts). */
export const questionAnswered = questionAnsweredFirst.extend({
  salt: z
    .string()
    .regex(/^[0-9a-f]{32}$/)
    .nullable(),
});

type FirstAnswer = z.infer<typeof questionAnsweredFirst>;

export const answeredFrom = (first: FirstAnswer): z.infer<typeof questionAnswered> => ({
  ...first,
  salt: null,
});
