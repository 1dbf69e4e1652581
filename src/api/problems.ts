// What the server can refuse or fail at, as one table: the status, what the caller should do, and a sentence. Programs go
// by `todo`; the sentence is for people. Nothing that somebody sent is repeated in one.
import * as z from 'zod';

/** What the caller should do about it. */
export const TODOS = [
  /** The request itself is wrong: sending it again changes nothing. */
  'mend-request',
  'sign-in',
  'change-password',
  /** Show the sign-in or pairing of this device to the lead. */
  'pair-again',
  /** Somebody else must do or allow it. */
  'ask-lead',
  /** Somebody of occupational health who is let in must let this account in. */
  'ask-occupational-health',
  /** Send the device's entries from number `expected` on. */
  'send-from-expected',
  /** Keep what is on the device, send nothing more, show it to the lead: two histories claim one place. */
  'keep-and-tell-lead',
  /** Read the unit's entries again from the beginning: the journal is not the one that was read before. */
  'read-from-start',
  /** The same request again, after `after` seconds. */
  'retry-later',
  /** The same request again, once somebody has mended the server. */
  'tell-administrator',
] as const;
export type Todo = (typeof TODOS)[number];

interface Row {
  readonly status: 400 | 401 | 403 | 404 | 408 | 409 | 413 | 415 | 421 | 422 | 429 | 500 | 503;
  readonly todo: Todo;
  readonly says: string;
}

const row = (status: Row['status'], todo: Todo, says: string): Row => ({ status, todo, says });

export const PROBLEMS = {
  'not-json': row(400, 'mend-request', 'The body is not JSON.'),
  'wrong-shape': row(400, 'mend-request', 'The request has not the form that is asked for.'),
  'wrong-type': row(415, 'mend-request', 'Send the body as application/json.'),
  'too-large': row(413, 'mend-request', 'The request is larger than is taken.'),
  'not-found': row(404, 'mend-request', 'There is nothing here.'),
  'wrong-host': row(
    421,
    'mend-request',
    'This server is not called that. Name it with --name when you start it.',
  ),
  'not-through-proxy': row(421, 'mend-request', 'This server is reached through its proxy.'),
  'foreign-page': row(403, 'mend-request', 'Another page asked for this, not this server’s own.'),
  'not-signed-in': row(401, 'sign-in', 'Sign in first.'),
  'wrong-password': row(401, 'sign-in', 'Name or password is wrong.'),
  'not-allowed': row(403, 'ask-lead', 'Your role may not do this.'),
  'first-password': row(403, 'change-password', 'Change the password that you were given first.'),
  'not-let-in': row(
    403,
    'ask-occupational-health',
    'This account is not let in to health records. Somebody of occupational health who is let in does that, or ./doffline account let-in.',
  ),
  'not-waiting': row(
    409,
    'mend-request',
    'This account does not wait to be let in, or was changed meanwhile. Load the list again.',
  ),
  'still-first-password': row(
    409,
    'mend-request',
    'This account still has the password that it was given. Its owner must choose an own one first.',
  ),
  'weak-password': row(
    422,
    'mend-request',
    'Take a longer password, and not one that holds the name or the unit.',
  ),
  'too-many': row(429, 'retry-later', 'Too many tries. Wait.'),
  'setup-code-wrong': row(
    403,
    'mend-request',
    'The code is not the one that the server showed when it started.',
  ),
  'already-created': row(409, 'sign-in', 'The unit is there already.'),
  'other-unit-there': row(
    409,
    'mend-request',
    'The journal there belongs to a unit with another id. Give that one.',
  ),
  'name-taken': row(409, 'mend-request', 'Somebody has this name already.'),
  'last-lead': row(409, 'mend-request', 'This is the last lead. Make another one first.'),
  'too-many-pairings': row(429, 'retry-later', 'Too many codes are open. Wait until some have ended.'),
  'code-wrong': row(403, 'ask-lead', 'The code is wrong, used or too old. Ask for a new one.'),
  'not-paired': row(401, 'pair-again', 'This device is not paired.'),
  'device-revoked': row(
    401,
    'ask-lead',
    'This device was taken out of the unit. Keep it, and show it to the lead.',
  ),
  'forged-device': row(
    403,
    'keep-and-tell-lead',
    'The entry names another device than the one that sent it.',
  ),
  'kind-not-allowed': row(403, 'ask-lead', 'A device of this role may not record this.'),
  malformed: row(422, 'keep-and-tell-lead', 'This is no entry.'),
  'entry-too-large': row(422, 'keep-and-tell-lead', 'The entry is larger than is kept.'),
  'hash-wrong': row(422, 'keep-and-tell-lead', 'The entry was altered: its hash is not that of its content.'),
  'body-wrong': row(422, 'keep-and-tell-lead', 'The entry’s body is not one of its kind.'),
  'other-unit': row(422, 'keep-and-tell-lead', 'The entry belongs to another unit.'),
  fork: row(409, 'keep-and-tell-lead', 'This number of the device is stored already with another content.'),
  gap: row(409, 'send-from-expected', 'An earlier entry of the device is missing.'),
  'chain-broken': row(
    409,
    'keep-and-tell-lead',
    'The entry does not follow on from the one stored before it.',
  ),
  'cursor-ahead': row(409, 'read-from-start', 'The journal is shorter than what was read: it was restored.'),
  full: row(503, 'tell-administrator', 'The disk is full. Make room; what was acknowledged is kept.'),
  'read-only': row(
    503,
    'tell-administrator',
    'The data may not be written to. Give the server the right to.',
  ),
  busy: row(503, 'retry-later', 'Another program holds the data. Try again.'),
  damaged: row(503, 'tell-administrator', 'The data is damaged. Verify it and restore a backup beside it.'),
  replaced: row(503, 'tell-administrator', 'The data was put in another’s place. Start the server again.'),
  'newer-format': row(503, 'tell-administrator', 'The data was written by a newer release. Install that.'),
  unavailable: row(503, 'retry-later', 'The data cannot be reached.'),
  'health-key-missing': row(
    503,
    'tell-administrator',
    'The server was started without DOFFLINE_HEALTH_KEY. Health records can be neither read nor written.',
  ),
  'health-key-unknown': row(
    503,
    'tell-administrator',
    'A record was sealed with a key that DOFFLINE_HEALTH_KEY does not hold. Add the older key to it.',
  ),
  'paper-unreadable': row(
    422,
    'mend-request',
    'What was sent cannot be printed: it has errors. Each is named with its line and column.',
  ),
  'paper-not-set': row(422, 'mend-request', 'This paper could not be set.'),
  'paper-too-slow': row(503, 'retry-later', 'This paper took longer than is allowed, and was given up.'),
  'papers-busy': row(503, 'retry-later', 'Too many papers are being set. Wait.'),
  'papers-missing': row(
    503,
    'tell-administrator',
    'This server cannot set papers: the program for it is not beside it.',
  ),
  fault: row(500, 'tell-administrator', 'The server made a mistake. What was acknowledged is kept.'),
} as const satisfies Readonly<Record<string, Row>>;

export type ProblemCode = keyof typeof PROBLEMS;
export const PROBLEM_CODES = Object.keys(PROBLEMS) as ProblemCode[];

/** A place in a text that was sent, and what is wrong there. */
const textFault = z.strictObject({
  file: z.enum(['procedure', 'donning', 'wording']),
  line: z.int().min(1),
  column: z.int().min(1),
  code: z.string(),
  wrong: z.string(),
  mend: z.string(),
});

export const problem = z
  .strictObject({
    code: z.enum(PROBLEM_CODES),
    todo: z.enum(TODOS),
    says: z.string(),
    /** The server's name for the request, also in its log. */
    request: z.string(),
    /** Where the request is wrong: names of fields, never their content. */
    where: z.array(z.string()).optional(),
    /** Place in the batch, from 0, of the entry that was refused; nothing of the batch was stored. */
    index: z.int().min(0).optional(),
    device: z.string().optional(),
    number: z.int().min(0).optional(),
    found: z.string().optional(),
    expected: z.string().optional(),
    /** What is wrong with the texts of a paper; what was sent may be repeated in it, and is told nowhere else. */
    faults: z.array(textFault).optional(),
    /** Seconds to wait. */
    after: z.int().min(0).optional(),
  })
  .meta({ id: 'Problem', description: 'Why a request was refused, and what to do.' });

export type ApiProblem = z.infer<typeof problem>;
