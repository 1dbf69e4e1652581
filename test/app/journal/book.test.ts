// The page's journal over the adapter of the browser: what was acknowledged is there for a second page, two tabs of one
// device never break the chain, a store that fails is said and can be tried again, and nothing half is written.
import * as simulated from 'fake-indexeddb';
import { describe, expect, test } from 'vitest';
import { openIndexedDb } from '../../../src/journal/adapters/indexedDb.ts';
import { memoryStore } from '../../../src/journal/adapters/memory.ts';
import { audit } from '../../../src/journal/audit.ts';
import { hashOfText } from '../../../src/journal/hash.ts';
import type { Store } from '../../../src/journal/port.ts';
import { JournalError } from '../../../src/journal/problems.ts';
import { type Book, createBook, NoLonger, type ToWrite } from '../../../src/app/journal/book.ts';
import { deviceId, keptIn, nameUnit, unitOf } from '../../../src/app/journal/device.ts';

Object.assign(globalThis, simulated, { indexedDB: simulated.indexedDB });

const FILE = 'doffline: 1\n';
const VERSION = { procedure: 'suit', version: '1', content: hashOfText(FILE) } as const;
const DRAFTED: ToWrite = { kind: 'procedure.drafted', body: { ...VERSION, text: FILE } };
const SENT: ToWrite = { kind: 'procedure.sent-for-review', body: { ...VERSION, to: ['p-bbbb'] } };
const APPROVED: ToWrite = {
  kind: 'procedure.approved',
  body: { ...VERSION, people: ['p-bbbb'], on: '2026-11-25', reviewOn: '2027-11-25' },
};
const note = (text: string): ToWrite => ({ kind: 'note.added', body: { about: 'unit', id: 'u', text } });

const bookOver = (open: () => Promise<Store>, told: string[] = []): Book =>
  createBook({
    open,
    device: 'd-one',
    unit: () => 'larkmoor',
    now: () => new Date('2026-11-25T08:00:00.000Z'),
    written: () => told.push('written'),
  });

let names = 0;
const fresh = (): string => {
  names += 1;
  return `book-${names}`;
};

describe('writing', () => {
  test('is there for a second page, with an unbroken chain', async () => {
    const name = fresh();
    const told: string[] = [];
    const first = bookOver(async () => openIndexedDb(name), told);
    const acknowledged = await first.write({ by: 'p-aaaa', entries: [DRAFTED, SENT] });
    expect(acknowledged.map(({ unitNumber }) => unitNumber)).toEqual([1, 2]);
    expect(told).toEqual(['written']);
    expect(first.state()).toMatchObject({ is: 'ready', entries: 2, unit: 'larkmoor' });

    const second = bookOver(async () => openIndexedDb(name));
    expect(second.state().is).toBe('opening');
    await second.refresh();
    expect(second.state().versions).toEqual(first.state().versions);
    expect(second.state().texts).toEqual({ [VERSION.content]: FILE });
    const { flaws, entries } = await audit(await second.store(), {});
    expect([flaws, entries]).toEqual([[], 2]);
  });

  test('by two tabs of one device at once keeps one chain, and loses nothing', async () => {
    const name = fresh();
    const tabs = [bookOver(async () => openIndexedDb(name)), bookOver(async () => openIndexedDb(name))];
    await Promise.all(
      ['a', 'b', 'c', 'd', 'e', 'f'].map(async (text, at) =>
        tabs[at % 2]!.write({ by: 'p-aaaa', entries: [note(text), note(`${text}2`)] }),
      ),
    );
    const { flaws, entries } = await audit(await tabs[0]!.store(), {});
    expect([flaws, entries]).toEqual([[], 12]);
  });

  test('what no longer fits is not written', async () => {
    const name = fresh();
    const [one, other] = [
      bookOver(async () => openIndexedDb(name)),
      bookOver(async () => openIndexedDb(name)),
    ];
    await one.write({ by: 'p-aaaa', entries: [DRAFTED, SENT] });
    await other.refresh();
    await one.write({ by: 'p-bbbb', entries: [APPROVED] });
    const inReview = {
      fits: (state: ReturnType<Book['state']>) => state.versions.procedures.suit?.['1']?.stage === 'review',
    };
    await expect(other.write({ by: 'p-cccc', entries: [APPROVED], ...inReview })).rejects.toBeInstanceOf(
      NoLonger,
    );
    expect(other.state().entries).toBe(3);
    expect(other.state().versions.conflicts).toEqual([]);
  });

  test('all or none: one body that its kind refuses, and nothing is stored', async () => {
    const one = bookOver(async () => Promise.resolve(memoryStore()));
    const wrong = { ...SENT, body: { ...SENT.body, to: [] } } as ToWrite;
    await expect(one.write({ by: 'p-aaaa', entries: [DRAFTED, wrong] })).rejects.toBeInstanceOf(JournalError);
    await one.refresh();
    expect(one.state().entries).toBe(0);
  });
});

describe('a store that fails', () => {
  test('is said, and opened again at the next try', async () => {
    let down = true;
    const store = memoryStore();
    const one = bookOver(async () => {
      if (down) throw new JournalError({ code: 'unavailable', detail: 'closed' });
      return Promise.resolve(store);
    });
    await one.refresh();
    expect(one.state()).toMatchObject({ is: 'failed' });
    expect(one.state().why).toContain('cannot be reached');
    await expect(one.write({ by: 'p-aaaa', entries: [DRAFTED] })).rejects.toBeInstanceOf(JournalError);
    down = false;
    await one.refresh();
    expect(one.state()).toMatchObject({ is: 'ready', why: '' });
    expect(await one.write({ by: 'p-aaaa', entries: [DRAFTED] })).toHaveLength(1);
  });
});

describe('device and unit', () => {
  const storage = (): Storage => {
    const held = new Map<string, string>();
    return {
      getItem: (key: string) => held.get(key) ?? null,
      setItem: (key: string, value: string) => void held.set(key, value),
    } as Storage;
  };
  const chance = (bytes: Uint8Array): Uint8Array => bytes.map((_, at) => at * 7);

  test('the id is made once, and made anew where it is none', () => {
    const one = storage();
    const kept = keptIn(() => one);
    const id = deviceId(kept, chance);
    expect(id).toMatch(/^d-[a-z0-9]{8}$/);
    expect(
      deviceId(
        keptIn(() => one),
        () => new Uint8Array(8),
      ),
    ).toBe(id);
    one.setItem('doffline-device', 'Not An Id');
    expect(
      deviceId(
        keptIn(() => one),
        chance,
      ),
    ).toBe(id);
  });

  test('a browser that refuses its store has an id as long as the page lives', () => {
    const kept = keptIn(() => {
      throw new Error('refused');
    });
    expect(deviceId(kept, chance)).toBe(deviceId(kept, () => new Uint8Array(8)));
    expect(unitOf(kept)).toBeUndefined();
    nameUnit(kept, 'Larkmoor General Hospital (invented)');
    expect(unitOf(kept)).toEqual({
      id: 'larkmoor-general-hospital-invented',
      title: 'Larkmoor General Hospital (invented)',
    });
  });
});
