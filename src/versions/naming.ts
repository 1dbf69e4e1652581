// Names that the journal asks for, made from what people type: an id for a procedure and a unit, the next version, an id
// for somebody of the staff. Pure: chance and what is taken already come in.

import { LONGEST } from '../domain/lengths.ts';

/** Longest id that the journal keeps, less room for a number behind it. */
const MOST = 56;

/** 'Suit doffing, ward 3' is 'suit-doffing-ward-3'; empty where no letter of it can be written in ASCII. */
export const slugOf = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, MOST)
    .replaceAll(/^-+|-+$/g, '');

/** The same, with a number behind it where it is taken. */
export function freeSlug(text: string, taken: ReadonlySet<string>, otherwise: string): string {
  const slug = slugOf(text) || otherwise;
  if (!taken.has(slug)) return slug;
  let number = 2;
  while (taken.has(`${slug}-${number}`)) number += 1;
  return `${slug}-${number}`;
}

/** Longest name of a version that the file takes and the journal keeps. */
export const MOST_VERSION = LONGEST.version;

/** '2' after '1', 'v4' after 'v3', '1.3' after '1.2'; the first of them that is not taken. */
export function nextVersion(version: string, taken: ReadonlySet<string>): string {
  const [, head = '', digits] = /^(.*?)(\d+)$/.exec(version) ?? [];
  const [start, from] =
    digits === undefined ? [`${version.slice(0, MOST_VERSION - 6)}.`, 1] : [head, Number(digits)];
  let number = from + 1;
  while (taken.has(`${start}${number}`)) number += 1;
  return `${start}${number}`;
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz234567';

/** An id of the staff list from chance bytes; says nothing of whose it is. */
export const personIdFrom = (bytes: Uint8Array): string =>
  `p-${[...bytes].map((byte) => LETTERS[byte % LETTERS.length]).join('')}`;

/** An id of a device from chance bytes. */
export const deviceIdFrom = (bytes: Uint8Array): string =>
  `d-${[...bytes].map((byte) => LETTERS[byte % LETTERS.length]).join('')}`;
