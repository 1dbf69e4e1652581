// The keys of health records, from the environment alone: `name:key` with 32 random bytes in base64, several with commas.
// The first seals; all open, so that a key is changed by putting a new one before the old. A key is never logged nor kept.
import { createSecretKey, type KeyObject } from 'node:crypto';

export interface HealthKeys {
  readonly first: string;
  readonly keys: ReadonlyMap<string, KeyObject>;
}

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const BYTES = 32;

/** Says what is wrong without a word of the key. */
const wrong = (place: number, why: string): Error =>
  new Error(`DOFFLINE_HEALTH_KEY, key ${place}: ${why}. Write name:key, the key as 32 bytes in base64.`);

function readOne(text: string, place: number): readonly [string, KeyObject] {
  const split = text.indexOf(':');
  const name = text.slice(0, Math.max(0, split)).trim();
  if (!NAME.test(name) || name.length > 64)
    throw wrong(place, 'it has no name of small letters, digits and hyphens');
  const written = text.slice(split + 1).trim();
  const bytes = Buffer.from(written, 'base64');
  if (!/^[A-Za-z0-9+/_-]+={0,2}$/.test(written) || bytes.length !== BYTES)
    throw wrong(place, `it is not ${BYTES} bytes long`);
  return [name, createSecretKey(bytes)];
}

/** Undefined where the variable is not set. Throws where it cannot be read. */
export function readHealthKeys(text: string | undefined): HealthKeys | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  const read = text.split(',').map((one, index) => readOne(one, index + 1));
  const keys = new Map(read);
  if (keys.size !== read.length) throw wrong(read.length, 'two keys have the same name');
  return { first: read[0]![0], keys };
}
