// Closing and opening a health record: AES-256-GCM with a random nonce, bound to its unit and key, so that a sealed body
// put elsewhere does not open. Its length is rounded up: a long record must not be told from a short one too easily.
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import { healthRecord, type HealthRecord } from '../../api/shapes/health.ts';
import { canonical, faultIn } from '../../journal/canonical.ts';
import type { Bodies } from '../../journal/kinds/index.ts';
import { Refusal } from '../refusal.ts';
import type { HealthKeys } from './keys.ts';

const CIPHER = 'aes-256-gcm';
const NONCE = 12;
const TAG = 16;
const STEP = 512;
/** Of the open text; sealed and written as base64url it still fits the journal's field. */
const MOST = 47 * 1024;

type Sealed = Bodies['health.sealed'];

const bound = (unit: string, key: string): Buffer => Buffer.from(`doffline health.sealed 1 ${unit} ${key}`);

/** Blanks at the end change nothing for who reads JSON. */
function padded(text: string): Buffer {
  const bytes = Buffer.from(text);
  return Buffer.concat([bytes, Buffer.alloc((STEP - (bytes.length % STEP)) % STEP, ' ')]);
}

/** Refuses what has no canonical form, or is too long. */
export function seal(record: HealthRecord, unit: string, { first, keys }: HealthKeys): Sealed {
  if (faultIn(record) !== undefined) throw new Refusal('malformed');
  const open = padded(canonical(record));
  if (open.length > MOST) throw new Refusal('too-large');
  const nonce = randomBytes(NONCE);
  const cipher = createCipheriv(CIPHER, keys.get(first)!, nonce).setAAD(bound(unit, first));
  const closed = Buffer.concat([cipher.update(open), cipher.final(), cipher.getAuthTag()]);
  return {
    cipher: CIPHER,
    key: first,
    nonce: nonce.toString('base64url'),
    sealed: closed.toString('base64url'),
  };
}

/** Refuses a record whose key is not there; one that does not open with its key is damaged. */
export function unseal(sealed: Sealed, unit: string, { keys }: HealthKeys): HealthRecord {
  const key = keys.get(sealed.key);
  if (!key || sealed.cipher !== CIPHER) throw new Refusal('health-key-unknown');
  const bytes = Buffer.from(sealed.sealed, 'base64url');
  try {
    const decipher = createDecipheriv(CIPHER, key, Buffer.from(sealed.nonce, 'base64url'));
    decipher.setAAD(bound(unit, sealed.key)).setAuthTag(bytes.subarray(-TAG));
    const open = Buffer.concat([decipher.update(bytes.subarray(0, -TAG)), decipher.final()]);
    return healthRecord.parse(JSON.parse(open.toString('utf8')));
  } catch (error) {
    throw new Refusal('damaged', {}, error);
  }
}
