// What must not be guessed: tokens, codes, first passwords. Of each only a hash is kept, so that who reads the database
// can neither sign in nor pair.
import { createHash, randomBytes, randomInt } from 'node:crypto';

/** No I, L, O, U, 0 or 1: nothing that is misread from a screen or spells a word by chance. */
const LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';

const drawn = (letters: string, count: number): string =>
  Array.from({ length: count }, () => letters[randomInt(letters.length)]).join('');

export const newToken = (): string => randomBytes(32).toString('base64url');

/** Eight letters and digits in two groups: about 39 bits, for minutes, with few tries (limits.ts). */
export const newCode = (): string => `${drawn(LETTERS, 4)}-${drawn(LETTERS, 4)}`;

/** A first password: about 78 bits, to be typed once. */
export const newPassword = (): string =>
  Array.from({ length: 4 }, () => drawn(LETTERS.toLowerCase(), 4)).join('-');

const SMALL = 'abcdefghjkmnpqrstvwxyz23456789';

/** An id that says nothing: `p-` for people, as the journal wants it. */
export const newId = (prefix: string): string => `${prefix}-${drawn(SMALL, 10)}`;

/** As somebody typed it: without blanks and hyphens, in capitals. */
export const readCode = (typed: string): string =>
  typed
    .toUpperCase()
    .replaceAll(/[^0-9A-Z]/g, '')
    .slice(0, 40);

/** For what has enough chance in it; passwords go through passwords.ts. */
export const fingerprint = (secret: string): string =>
  createHash('sha256').update(secret).digest('base64url');
