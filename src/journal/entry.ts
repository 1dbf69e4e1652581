// An entry: what one device recorded, and its place in that device's own chain. Nothing in it is ever changed; its hash
// covers all the rest. `Row` is how every store keeps it: the canonical text whose hash was taken, byte for byte, with
// its place in the unit's chain, which the store gives on acceptance.
import * as z from 'zod';
import { canonical, faultIn, isPlainObject, type Plain, type PlainObject } from './canonical.ts';
import { GENESIS, hashOfText } from './hash.ts';
import { instant, personId, plainObject, sha256Hex, slug } from './kinds/values.ts';

/** The form of what is around the body; not the body's version. */
const FORMAT = 1;

/** Longest canonical text of an entry, in UTF-16 code units: a procedure file fits, a film does not. */
export const MOST_TEXT = 256 * 1024;

const count = z.int().min(1);

/** An entry without its hash. A procedure file's text is the longest thing in a body. */
const contentShape = z.strictObject({
  format: z.literal(FORMAT),
  unit: slug,
  device: slug,
  /** From 1, without a gap, on this device. */
  number: count,
  kind: z
    .string()
    .max(64, { abort: true })
    .regex(/^[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*$/),
  /** Version of the kind's schema that the body was written by. */
  version: count,
  /** The device's clock: an instant in UTC with milliseconds. */
  at: instant,
  /** Who recorded it, by the staff list's id; null for what a device does by itself. */
  by: personId.nullable(),
  body: plainObject,
  /** Hash of the same device's entry before; 64 zeros for its first. */
  previous: sha256Hex,
});

const entryShape = contentShape.extend({ hash: sha256Hex });

export type Content = Readonly<z.infer<typeof contentShape>>;
export type Entry = Readonly<z.infer<typeof entryShape>>;

/** A place in a chain: number of its last entry and the hash there. */
export interface Head {
  readonly number: number;
  readonly hash: string;
}

/** A chain without an entry. */
export const START: Head = { number: 0, hash: GENESIS };

/** An entry with its place in the unit's chain. */
export interface Accepted {
  /** From 1, without a gap, in this store. */
  readonly unitNumber: number;
  readonly unitPrevious: string;
  /** `linkHash` of the three: place, predecessor, entry. */
  readonly unitHash: string;
  readonly entry: Entry;
}

/** As a store keeps it. `text` is the canonical text of the entry without its hash. */
export interface Row {
  readonly unitNumber: number;
  readonly device: string;
  readonly number: number;
  readonly hash: string;
  readonly unitPrevious: string;
  readonly unitHash: string;
  readonly text: string;
}

export const contentText = ({ hash: _hash, ...content }: Entry): string => canonical(content);

/** Why something is not an entry, whatever its hash says; undefined where it is one. */
export function faultInEntry(value: unknown): string | undefined {
  const fault = faultIn(value);
  if (fault !== undefined) return fault;
  const issue = entryShape.safeParse(value).error?.issues[0];
  return issue && `${issue.path.map(String).join('.')}: ${issue.message}`;
}

/** What a device adds to its chain. */
export interface Draft {
  readonly unit: string;
  readonly device: string;
  readonly kind: string;
  readonly version: number;
  readonly at: string;
  readonly by: string | null;
  readonly body: PlainObject;
}

/** The device's next entry, after `head` (`START` for its first). Throws on a body that is not plain. */
export function nextEntry(head: Head, draft: Draft): Entry {
  const fault = faultIn(draft.body);
  if (fault !== undefined) throw new TypeError(`the body of ${draft.kind} is not plain: ${fault}`);
  const content: Content = { format: FORMAT, ...draft, number: head.number + 1, previous: head.hash };
  return { ...content, hash: hashOfText(canonical(content)) };
}

export const headOf = ({ number, hash }: Head): Head => ({ number, hash });

/** What a row's text says, without judging it; undefined where it is no JSON object. */
export function contentOf({ text }: Pick<Row, 'text'>): Plain | undefined {
  try {
    return JSON.parse(text) as Plain;
  } catch {
    return undefined;
  }
}

/** Why the text of a row is not an entry's; undefined where it is. */
export const faultInContent = (content: unknown): string | undefined => {
  const issue = contentShape.safeParse(content).error?.issues[0];
  return issue && `${issue.path.map(String).join('.')}: ${issue.message}`;
};

const isText = (value: unknown): boolean => typeof value === 'string';
const isCount = (value: unknown): boolean => typeof value === 'number';

/**
 * Whether something has the fields of an entry. It was held to the whole schema before it was stored, and `verify` does so
 * again; reading a million must not.
 */
function looksLikeContent(value: unknown): value is Content {
  if (!isPlainObject(value)) return false;
  const { format, unit, device, number, kind, version, at, by, body, previous } = value;
  return (
    format === FORMAT &&
    [unit, device, kind, at, previous].every(isText) &&
    [number, version].every(isCount) &&
    (by === null || isText(by)) &&
    isPlainObject(body)
  );
}

/** A row as the entry that it keeps; undefined where its text cannot be read. Whether it was altered is for `verify`. */
export function acceptedOf(row: Row): Accepted | undefined {
  const content: unknown = contentOf(row);
  if (!looksLikeContent(content)) return undefined;
  const { unitNumber, unitPrevious, unitHash, hash } = row;
  return { unitNumber, unitPrevious, unitHash, entry: { ...content, hash } };
}
