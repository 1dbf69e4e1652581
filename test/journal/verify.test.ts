// Whatever is done to one row or one place, verifying finds it and names the entry.
import { fc, test as property } from '@fast-check/vitest';
import { beforeAll, describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { canonical, type PlainObject } from '../../src/journal/canonical.ts';
import { type Head, type Row, START } from '../../src/journal/entry.ts';
import { hashOfText, linkHash } from '../../src/journal/hash.ts';
import { type FlawCode, verifier } from '../../src/journal/verify.ts';
import { device, notes, twentyEight } from './samples.ts';

let rows: readonly Row[];
let end: Head;

beforeAll(async () => {
  const store = memoryStore();
  await store.append(twentyEight());
  await store.append([...notes(3, device('third')), ...notes(3, device('fourth'))]);
  rows = await store.rows(1, 1000);
  end = await store.head();
});

function verdictOf(given: readonly Row[], noted = end, expected?: Head) {
  const one = verifier(expected);
  for (const row of given) one.take(row);
  return one.end(noted);
}

const codesAt = (given: readonly Row[], unitNumber: number): readonly FlawCode[] =>
  verdictOf(given)
    .flaws.filter((flaw) => flaw.unitNumber === unitNumber)
    .map(({ code }) => code);

const place = fc.nat().map((at) => at % 34);

test('an untouched journal has no flaw', () => {
  expect(rows).toHaveLength(34);
  expect(verdictOf(rows)).toEqual({ entries: 34, devices: 4, head: end, flaws: [], more: 0 });
  expect(verdictOf([], START)).toMatchObject({ entries: 0, flaws: [] });
});

describe('is found and named', () => {
  const COLUMNS = ['text', 'hash', 'device', 'unitPrevious', 'unitHash'] as const;

  property.prop([place, fc.constantFrom(...COLUMNS), fc.nat(), fc.integer({ min: 1, max: 255 })], {
    numRuns: 400,
  })('one byte altered anywhere', (at, column, where, change) => {
    const row = rows[at]!;
    const bytes = Buffer.from(row[column], 'utf8');
    bytes[where % bytes.length]! ^= change;
    const altered = bytes.toString('utf8');
    fc.pre(altered !== row[column]);
    const given = rows.with(at, { ...row, [column]: altered });
    expect(codesAt(given, row.unitNumber)).not.toEqual([]);
  });

  property.prop([place, fc.constantFrom('unitNumber', 'number'), fc.integer({ min: 1, max: 1000 })])(
    'a number altered',
    (at, column, change) => {
      const row = rows[at]!;
      const { flaws } = verdictOf(rows.with(at, { ...row, [column]: row[column] + change }));
      expect(flaws.map(({ unitNumber }) => unitNumber)).toContain(row.unitNumber);
    },
  );

  property.prop([place])('an entry that is gone, also the last', (at) => {
    const gone = rows[at]!;
    const given = rows.toSpliced(at, 1);
    expect(codesAt(given, gone.unitNumber)).toEqual([at === 33 ? 'end-missing' : 'missing']);
  });

  property.prop([place, place])('two entries in one another’s place', (one, other) => {
    fc.pre(one !== other);
    const swap = (a: Row, b: Row): Row => ({ ...b, unitNumber: a.unitNumber });
    const given = rows.with(one, swap(rows[one]!, rows[other]!)).with(other, swap(rows[other]!, rows[one]!));
    for (const at of [one, other]) expect(codesAt(given, rows[at]!.unitNumber)).toContain('link-altered');
  });

  property.prop([place, place])('two contents in one another’s place', (one, other) => {
    fc.pre(one !== other);
    const swap = (a: Row, b: Row): Row => ({ ...b, ...linksOf(a) });
    const linksOf = ({ unitNumber, unitPrevious, unitHash }: Row) => ({ unitNumber, unitPrevious, unitHash });
    const given = rows.with(one, swap(rows[one]!, rows[other]!)).with(other, swap(rows[other]!, rows[one]!));
    for (const at of [one, other]) expect(codesAt(given, rows[at]!.unitNumber)).toContain('link-altered');
  });

  property.prop([place])('an entry that stands there twice, in its place or at the end', (which) => {
    const row = rows[which]!;
    expect(codesAt(rows.toSpliced(which + 1, 0, row), row.unitNumber)).toEqual(
      expect.arrayContaining(['out-of-order', 'device-repeated']),
    );
    expect(codesAt([...rows, { ...row, unitNumber: 35 }], 35)).toEqual(
      expect.arrayContaining(['link-altered', 'device-repeated', 'end-unnoted']),
    );
  });

  test('what it should be', () => {
    const row = rows[4]!;
    const text = row.text.replace('p-9x2q', 'p-0000');
    const [flaw, ...more] = verdictOf(rows.with(4, { ...row, text })).flaws;
    expect(more).toEqual([]);
    expect(flaw).toMatchObject({
      code: 'altered',
      unitNumber: 5,
      device: row.device,
      number: row.number,
      expected: row.hash,
    });
  });

  test('an entry that was altered and hashed again', () => {
    const row = rows[10]!;
    const text = canonical({ ...(JSON.parse(row.text) as PlainObject), by: 'p-0000' });
    const hash = hashOfText(text);
    const unitHash = linkHash(row.unitNumber, row.unitPrevious, hash);
    const given = rows.with(10, { ...row, text, hash, unitHash });
    expect(codesAt(given, 11)).toEqual([]);
    expect(codesAt(given, 12)).toEqual(['link-broken']);
    expect(codesAt(given, 13)).toEqual(['device-broken']);
  });

  test('a chain that was written anew as a whole, by an end that was kept elsewhere', async () => {
    const store = memoryStore();
    await store.append([...notes(40)]);
    const others = await store.rows(1, 100);
    const anew = await store.head();
    expect(verdictOf(others, anew).flaws).toEqual([]);
    expect(verdictOf(others, anew, end).flaws).toMatchObject([
      { code: 'other-chain', unitNumber: end.number, expected: end.hash },
    ]);
    expect(verdictOf(rows, end, end).flaws).toEqual([]);
    const short = rows.slice(0, -1);
    const noted = { number: 33, hash: short.at(-1)!.unitHash };
    expect(verdictOf(short, noted).flaws).toEqual([]);
    expect(verdictOf(short, noted, end).flaws).toMatchObject([{ code: 'other-chain', found: 'no entry' }]);
  });

  test('thousands of flaws are counted, not all told', () => {
    const one = verifier();
    for (let index = 0; index < 1500; index += 1) one.take({ ...rows[0]!, text: 'x' });
    const { flaws, more } = one.end(START);
    expect(flaws).toHaveLength(1000);
    expect(more).toBeGreaterThan(500);
  });
});
