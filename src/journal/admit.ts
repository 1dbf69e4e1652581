// Whether entries may be added, and as what: the one set of rules of all stores. A store reads where its chains stand,
// asks here, and writes the rows it gets back, all in one transaction of its own.
import { contentText, type Entry, faultInEntry, type Head, headOf, MOST_TEXT, type Row } from './entry.ts';
import { hashOfText, linkHash } from './hash.ts';
import type { Acknowledged, How } from './port.ts';
import { JournalError, type RefusalCode } from './problems.ts';
import { readBody } from './reading.ts';
import { isWithheld, MARK_FAULT } from './withheld.ts';

/** Numbers of one device that are asked about. */
export interface Asked {
  readonly device: string;
  readonly from: number;
  readonly to: number;
}

/** Where the chains stand. */
export interface Standing {
  /** The unit of the entries stored so far; undefined where there are none. */
  readonly unit: string | undefined;
  readonly head: Head;
  /** The last entry of each device that is asked about; `START` for a new one. */
  readonly devices: ReadonlyMap<string, Head>;
  /** The rows stored at the numbers asked about. */
  readonly stored: readonly Row[];
}

export interface Admitted {
  /** To be stored, in this order. */
  readonly rows: readonly Row[];
  readonly acknowledged: readonly Acknowledged[];
}

type Fault = readonly [code: RefusalCode, found: string, expected?: string];

const refuse = (entry: Entry, index: number, [code, found, expected = '']: Fault): never => {
  const { device, number } = entry;
  throw new JournalError({ code, index, device, number, found, expected });
};

function faultAlone(entry: Entry, { received = false }: How): Fault | undefined {
  const text = contentText(entry);
  if (text.length > MOST_TEXT) return ['too-large', String(text.length), String(MOST_TEXT)];
  const hash = hashOfText(text);
  const isMarked = isWithheld(entry);
  if (hash !== entry.hash && !(received && isMarked)) return ['hash-wrong', entry.hash, hash];
  if (isMarked && !received) return ['body-wrong', MARK_FAULT];
  const read = readBody(entry);
  return 'unread' in read && read.unread === 'body' ? ['body-wrong', read.why] : undefined;
}

/** Judges each entry alone, before any store is asked. Throws a refusal for the first that is wrong. */
export function checkAlone(entries: readonly Entry[], how: How = {}): void {
  for (const [index, entry] of entries.entries()) {
    const shape = faultInEntry(entry);
    if (shape !== undefined) {
      const { device, number } = (entry ?? {}) as Partial<Entry>;
      throw new JournalError({
        code: 'malformed',
        index,
        device: typeof device === 'string' ? device : '?',
        number: typeof number === 'number' ? number : 0,
        found: shape,
        expected: '',
      });
    }
    const fault = faultAlone(entry, how);
    if (fault) refuse(entry, index, fault);
  }
}

/** What a store must look up for these entries: for each device the numbers from its first to its last. */
export function askedOf(entries: readonly Entry[]): readonly Asked[] {
  const asked = new Map<string, Asked>();
  for (const { device, number } of entries) {
    const { from, to } = asked.get(device) ?? { from: number, to: number };
    asked.set(device, { device, from: Math.min(from, number), to: Math.max(to, number) });
  }
  return [...asked.values()];
}

const acknowledgement = ({ device, number, hash, unitNumber, unitHash }: Row): Acknowledged => ({
  device,
  number,
  hash,
  unitNumber,
  unitHash,
});

function nextRow(head: Head, entry: Entry): Row {
  const unitNumber = head.number + 1;
  return {
    unitNumber,
    device: entry.device,
    number: entry.number,
    hash: entry.hash,
    unitPrevious: head.hash,
    unitHash: linkHash(unitNumber, head.hash, entry.hash),
    text: contentText(entry),
  };
}

function faultInChain(entry: Entry, unit: string, last: Head): Fault | undefined {
  if (entry.unit !== unit) return ['other-unit', entry.unit, unit];
  if (entry.number !== last.number + 1) return ['gap', String(entry.number), String(last.number + 1)];
  return entry.previous === last.hash ? undefined : ['chain-broken', entry.previous, last.hash];
}

const keyOf = ({ device, number }: Pick<Row, 'device' | 'number'>): string => `${device}/${number}`;

/** The rows that these entries become. Throws a refusal for the first that breaks a chain. */
export function admit(standing: Standing, entries: readonly Entry[]): Admitted {
  const devices = new Map(standing.devices);
  const known = new Map(standing.stored.map((row) => [keyOf(row), row]));
  const rows: Row[] = [];
  let { head, unit } = standing;
  const acknowledged = entries.map((entry, index) => {
    const stored = known.get(keyOf(entry));
    if (stored && stored.hash !== entry.hash) refuse(entry, index, ['fork', entry.hash, stored.hash]);
    if (stored) return acknowledgement(stored);
    unit ??= entry.unit;
    const fault = faultInChain(entry, unit, devices.get(entry.device)!);
    if (fault) refuse(entry, index, fault);
    const row = nextRow(head, entry);
    rows.push(row);
    known.set(keyOf(row), row);
    devices.set(entry.device, headOf(entry));
    head = { number: row.unitNumber, hash: row.unitHash };
    return acknowledgement(row);
  });
  return { rows, acknowledged };
}
