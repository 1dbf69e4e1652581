// The chain's hash: SHA-256 over canonical text in UTF-8, written as 64 hexadecimal digits. A JavaScript implementation,
// because pages at an address without https have no crypto.subtle, and an exit must be recorded there too.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonical } from './canonical.ts';

/** What the first entry names as its predecessor. */
export const GENESIS = '0'.repeat(64);

export const hashOfBytes = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

export const hashOfText = (text: string): string => hashOfBytes(utf8ToBytes(text));

/** Hash of a link of the unit's chain: the entry's place, what stands before it, and the entry. */
export const linkHash = (number: number, previous: string, entry: string): string =>
  hashOfText(canonical({ entry, number, previous }));
