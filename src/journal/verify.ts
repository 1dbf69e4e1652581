// Verifies rows one after the other, in the order of their unit's numbers: each is held to its own hash, to the row before
// and to its device's entry before. A row is judged by what its neighbours say, so one alteration is one finding and not
// a thousand. It cannot see an end that was cut off together with the note of the last entry; a number and hash kept
// elsewhere (on paper) can: `expected`.
import { contentOf, type Content, faultInContent, type Head, type Row, START } from './entry.ts';
import { hashOfText, linkHash } from './hash.ts';
import { readBody } from './reading.ts';
import { isWithheld, MARK_FAULT } from './withheld.ts';

export const FLAWS = [
  'missing',
  'out-of-order',
  'altered',
  'unreadable',
  'mislabelled',
  'link-altered',
  'link-broken',
  'device-missing',
  'device-repeated',
  'device-broken',
  'other-unit',
  'body-wrong',
  'end-missing',
  'end-unnoted',
  'other-chain',
] as const;
export type FlawCode = (typeof FLAWS)[number];

export interface Flaw {
  readonly code: FlawCode;
  /** The entry's number in the unit's chain, by its place. */
  readonly unitNumber: number;
  /** Empty where the entry itself is missing. */
  readonly device: string;
  readonly number: number;
  readonly found: string;
  readonly expected: string;
}

export interface Verdict {
  readonly entries: number;
  readonly devices: number;
  /** Where the chain ends. */
  readonly head: Head;
  readonly flaws: readonly Flaw[];
  /** Further flaws, beyond those that are told one by one. */
  readonly more: number;
}

export interface Verifier {
  readonly take: (row: Row) => void;
  /** `noted` is what the store says of its end. */
  readonly end: (noted: Head) => Verdict;
}

/** So many flaws are told one by one. */
const MOST_FLAWS = 1000;

interface Found {
  readonly code: FlawCode;
  readonly found: string;
  readonly expected: string;
  /** Of the entry that is wrong, where it is not the row at hand. */
  readonly at?: { readonly unitNumber: number; readonly device: string; readonly number: number };
}

const flaw = (code: FlawCode, found: string, expected: string): Found => ({ code, found, expected });

/** Which device's entry a row is: by its text where that is as it was, otherwise by its label. */
interface Place {
  readonly device: string;
  readonly number: number;
}

function flawsInLink(row: Row, last: Row | undefined): readonly Found[] {
  const before = last ? { number: last.unitNumber, hash: last.unitHash } : START;
  const { unitNumber, unitPrevious, unitHash, hash } = row;
  const next = before.number + 1;
  const found: Found[] = [];
  if (unitNumber > next) {
    const until = `nothing before number ${unitNumber}`;
    const at = { unitNumber: next, device: '', number: 0 };
    found.push({ ...flaw('missing', until, `entry ${next}, with hash ${row.unitPrevious} last`), at });
  }
  if (unitNumber < next) found.push(flaw('out-of-order', `number ${unitNumber}`, `number ${next}`));
  const own = linkHash(unitNumber, unitPrevious, hash);
  if (own !== unitHash) found.push(flaw('link-altered', unitHash, own));
  if (unitNumber === next && unitPrevious !== before.hash)
    found.push(flaw('link-broken', unitPrevious, before.hash));
  return found;
}

function flawsInDevice({ device, number }: Place, row: Row, previous: string, last: Head): readonly Found[] {
  const next = last.number + 1;
  if (number > next) {
    const at = { unitNumber: row.unitNumber, device, number: next };
    return [{ ...flaw('device-missing', `its number ${number}`, `its number ${next}`), at }];
  }
  if (number < next) return [flaw('device-repeated', `its number ${number}`, `its number ${next}`)];
  return previous === last.hash ? [] : [flaw('device-broken', previous, last.hash)];
}

function flawsInText(row: Row, content: Content): readonly Found[] {
  const read = readBody(content);
  const written = `${content.device}, ${content.number}`;
  const kept = `${row.device}, ${row.number}`;
  return [
    ...(kept === written ? [] : [flaw('mislabelled', kept, written)]),
    ...('unread' in read && read.unread === 'body'
      ? [flaw('body-wrong', read.why, `a body of ${content.kind}`)]
      : []),
  ];
}

const looksWithheld = (content: unknown): boolean =>
  faultInContent(content) === undefined && isWithheld(content as Content);

/** The content where it can be read, and what is wrong with it alone. */
function readRow(
  row: Row,
  received: boolean,
): {
  readonly content?: Content;
  readonly place: Place;
  readonly flaws: readonly Found[];
} {
  const own = hashOfText(row.text);
  const content = contentOf(row);
  const isMarked = looksWithheld(content);
  const altered = own === row.hash || (received && isMarked) ? [] : [flaw('altered', own, row.hash)];
  const marked =
    isMarked && !received && altered.length === 0
      ? [flaw('body-wrong', MARK_FAULT, 'what was answered')]
      : [];
  const fault = content === undefined ? 'no JSON' : faultInContent(content);
  if (fault !== undefined) return { place: row, flaws: [...altered, flaw('unreadable', fault, 'an entry')] };
  const read = content as unknown as Content;
  const place = altered.length === 0 ? read : row;
  return { content: read, place, flaws: [...altered, ...marked, ...flawsInText(row, read)] };
}

function flawsAtEnd(last: Row | undefined, noted: Head): readonly Found[] {
  const end = last ? { number: last.unitNumber, hash: last.unitHash } : START;
  const told = ({ number, hash }: Head): string => `end at ${number}, hash ${hash}`;
  if (noted.number > end.number) {
    const at = { unitNumber: end.number + 1, device: '', number: 0 };
    return [{ ...flaw('end-missing', told(end), told(noted)), at }];
  }
  return noted.number === end.number && noted.hash === end.hash
    ? []
    : [flaw('end-unnoted', told(noted), told(end))];
}

const NOWHERE: Place = { device: '', number: 0 };

/** Gathers flaws, up to so many. */
function gatherer() {
  const flaws: Flaw[] = [];
  let more = 0;
  const tell = (unitNumber: number, { device, number }: Place, found: readonly Found[]): void => {
    for (const { code, found: was, expected, at } of found) {
      if (flaws.length === MOST_FLAWS) more += 1;
      else flaws.push({ code, ...(at ?? { unitNumber, device, number }), found: was, expected });
    }
  };
  return { tell, told: () => ({ flaws, more }) };
}

/**
 * Takes rows in the order of their unit's numbers, and says at the end what it found. Keeps no row but the last.
 * `expected` is a number and the unit's hash there that somebody kept elsewhere. `received`: a device's own copy, in which
 * the server may have withheld something (withheld.ts); such an entry is held to its chain alone.
 */
export function verifier(expected?: Head, received = false): Verifier {
  const { tell, told } = gatherer();
  const devices = new Map<string, Head>();
  let entries = 0;
  let unit: string | undefined;
  let last: Row | undefined;
  let met: string | undefined;
  const take = (row: Row): void => {
    const { content, place, flaws } = readRow(row, received);
    const before = devices.get(place.device) ?? START;
    unit ??= content?.unit;
    tell(row.unitNumber, place, [
      ...flaws,
      ...(content && content.unit !== unit ? [flaw('other-unit', content.unit, unit ?? '')] : []),
      ...flawsInLink(row, last),
      ...flawsInDevice(place, row, content?.previous ?? before.hash, before),
    ]);
    if (row.unitNumber === expected?.number) met = row.unitHash;
    devices.set(place.device, { number: place.number, hash: row.hash });
    entries += 1;
    last = row;
  };
  const end = (noted: Head): Verdict => {
    tell(last?.unitNumber ?? 0, last ?? NOWHERE, flawsAtEnd(last, noted));
    if (expected && met !== expected.hash)
      tell(expected.number, NOWHERE, [flaw('other-chain', met ?? 'no entry', expected.hash)]);
    const head = last ? { number: last.unitNumber, hash: last.unitHash } : START;
    return { entries, devices: devices.size, head, ...told() };
  };
  return { take, end };
}
