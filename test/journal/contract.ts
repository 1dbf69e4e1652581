// What every store must do, whatever it is made of. Each adapter's test runs this same suite over it.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { PlainObject } from '../../src/journal/canonical.ts';
import { type Entry, MOST_TEXT } from '../../src/journal/entry.ts';
import { pages, show } from '../../src/journal/fold.ts';
import { GENESIS, linkHash } from '../../src/journal/hash.ts';
import { LAST, type Store } from '../../src/journal/port.ts';
import { JournalError, type Problem } from '../../src/journal/problems.ts';
import { seen } from '../../src/journal/reading.ts';
import { verifier } from '../../src/journal/verify.ts';
import { roomNow, roomView } from '../../src/journal/views/room.ts';
import { BODIES, device, KIND_NAMES, notes, oneOfEach } from './samples.ts';

/** A place where a store can be opened again and again, as a restart or a second program does. */
export interface Place {
  readonly open: () => Promise<Store>;
  readonly remove: () => Promise<void>;
}

export async function problemOf(work: Promise<unknown>): Promise<Problem | undefined> {
  try {
    await work;
    return undefined;
  } catch (error) {
    if (error instanceof JournalError) return error.problem;
    throw error;
  }
}

export async function everything(store: Store): Promise<readonly Entry[]> {
  const all: Entry[] = [];
  for await (const page of pages(store, 1, 7)) all.push(...page.map(({ entry }) => entry));
  return all;
}

export async function verdictOf(store: Store, most = 1_000_000) {
  const { take, end } = verifier();
  for (const row of await store.rows(1, most)) take(row);
  return end(await store.head());
}

/** `lasts` is false for a store that ends with its program: what needs a second opening is then not asked. */
export function journalContract(name: string, place: () => Promise<Place>, lasts = true): void {
  describe(`the journal's contract: ${name}`, () => {
    let here: Place;
    let store: Store;
    beforeEach(async () => {
      here = await place();
      store = await here.open();
    });
    afterEach(async () => {
      await store.close();
      await here.remove();
    });

    test('an empty journal reads as empty', async () => {
      expect(await store.read(1)).toEqual([]);
      expect(await store.read(LAST, { backwards: true, most: 1 })).toEqual([]);
      expect(await store.append([])).toEqual([]);
      expect(await verdictOf(store)).toMatchObject({ entries: 0, flaws: [] });
    });

    test('entries of every kind come back as they were given, in the order of the unit', async () => {
      const entries = oneOfEach();
      const acknowledged = await store.append(entries);
      expect(acknowledged.map(({ unitNumber }) => unitNumber)).toEqual(entries.map((_, index) => index + 1));
      expect(acknowledged.map(({ hash }) => hash)).toEqual(entries.map(({ hash }) => hash));
      expect(await everything(store)).toEqual(entries);
      const back = (await store.read(1)).map(seen);
      expect(back.map(({ kind }) => kind)).toEqual(KIND_NAMES);
      expect(back.map(({ body }) => body)).toEqual(KIND_NAMES.map((kind) => BODIES[kind]));
      expect(await verdictOf(store)).toMatchObject({ entries: entries.length, devices: 2, flaws: [] });
    });

    test('the unit is chained: place, predecessor, entry', async () => {
      await store.append(notes(3));
      let before = GENESIS;
      for (const { unitNumber, unitPrevious, unitHash, entry } of await store.read(1)) {
        expect(unitPrevious).toBe(before);
        expect(unitHash).toBe(linkHash(unitNumber, before, entry.hash));
        before = unitHash;
      }
      expect(await store.head()).toEqual({ number: 3, hash: before });
    });

    test('reads from a number, so many, backwards, one device alone', async () => {
      const desk = device('desk');
      const tablet = device('tablet-1');
      for (let turn = 0; turn < 5; turn += 1) {
        await store.append(notes(1, desk));
        await store.append(notes(1, tablet));
      }
      const numbers = async (...range: Parameters<Store['read']>): Promise<readonly string[]> =>
        (await store.read(...range)).map(
          ({ unitNumber, entry }) => `${unitNumber} ${entry.device} ${entry.number}`,
        );
      expect(await numbers(9)).toEqual(['9 desk 5', '10 tablet-1 5']);
      expect(await numbers(2, { most: 2 })).toEqual(['2 tablet-1 1', '3 desk 2']);
      expect(await numbers(LAST, { backwards: true, most: 2 })).toEqual(['10 tablet-1 5', '9 desk 5']);
      expect(await numbers(3, { backwards: true })).toEqual(['3 desk 2', '2 tablet-1 1', '1 desk 1']);
      expect(await numbers(4, { device: 'tablet-1' })).toEqual(['8 tablet-1 4', '10 tablet-1 5']);
      expect(await numbers(LAST, { device: 'desk', backwards: true, most: 1 })).toEqual(['9 desk 5']);
      expect(await numbers(1, { device: 'nobody' })).toEqual([]);
      expect(await numbers(11)).toEqual([]);
    });

    test('the same again is acknowledged again and stored once', async () => {
      const entries = notes(4);
      const first = await store.append(entries.slice(0, 3));
      expect(await store.append(entries.slice(1, 3))).toEqual(first.slice(1));
      const second = await store.append(entries);
      expect(second.slice(0, 3)).toEqual(first);
      expect(await store.append([entries[3]!, entries[3]!])).toEqual([second[3], second[3]]);
      expect(await everything(store)).toEqual(entries);
    });

    describe('refuses, says which entry and why, and stores nothing of the call', () => {
      const refused = async (entries: readonly Entry[], problem: object): Promise<void> => {
        const before = await everything(store);
        expect(await problemOf(store.append(entries))).toMatchObject(problem);
        expect(await everything(store)).toEqual(before);
      };

      test('a fork: the same number of a device with another content', async () => {
        const [first, second] = notes(2) as [Entry, Entry];
        await store.append([first, second]);
        const other = device('desk', undefined, { number: 1, hash: first.hash });
        const fork = other.write('note.added');
        await refused([fork], {
          code: 'fork',
          device: 'desk',
          number: 2,
          found: fork.hash,
          expected: second.hash,
        });
      });

      test('a fork within one call', async () => {
        const [first, second] = notes(2) as [Entry, Entry];
        const fork = device('desk', undefined, { number: 1, hash: first.hash }).write('room.entered');
        await refused([first, second, fork], { code: 'fork', index: 2, expected: second.hash });
      });

      test('a gap', async () => {
        const [first, second, third] = notes(3) as [Entry, Entry, Entry];
        await refused([second], { code: 'gap', number: 2, found: '2', expected: '1' });
        await store.append([first]);
        await refused([third], { code: 'gap', index: 0, number: 3, found: '3', expected: '2' });
      });

      test('a broken chain', async () => {
        const [first] = notes(1) as [Entry];
        await store.append([first]);
        const astray = device('desk', undefined, { number: 1, hash: 'f'.repeat(64) }).write('exit.resumed');
        await refused([astray], { code: 'chain-broken', found: 'f'.repeat(64), expected: first.hash });
      });

      test('an entry whose content is not that of its hash', async () => {
        const [first, second] = notes(2) as [Entry, Entry];
        const altered = { ...second, body: { ...second.body, text: 'something else' } };
        await refused([first, altered], { code: 'hash-wrong', index: 1, found: second.hash });
      });

      test('a body that its kind does not allow, with a name or without an id', async () => {
        const named = { ...BODIES['room.entered'], person: 'Jane Roe' };
        await refused([device('desk').writeAny('room.entered', named)], { code: 'body-wrong' });
        const more = { ...BODIES['room.entered'], name: 'Jane Roe' };
        await refused([device('desk').writeAny('room.entered', more)], { code: 'body-wrong' });
        const open = { ...BODIES['health.sealed'], sealed: 'fever since Monday: 38.5' };
        await refused([device('desk').writeAny('health.sealed', open)], { code: 'body-wrong' });
      });

      test('what its device marked as withheld itself, in any version, with the right hash', async () => {
        const kind = 'exit.question-answered';
        const marked = device('desk').write(kind, { ...BODIES[kind], answer: 'withheld' });
        await refused([marked], { code: 'body-wrong', index: 0, number: 1 });
        const [first] = notes(1) as [Entry];
        const later = device('desk', undefined, first).writeAny(kind, { answer: 'withheld', more: 1 }, 9);
        await refused([first, later], { code: 'body-wrong', index: 1, number: 2 });
      });

      test('another unit', async () => {
        await store.append(notes(1));
        const [other] = notes(1, device('tablet-1', 'elsewhere')) as [Entry];
        await refused([other], { code: 'other-unit', found: 'elsewhere', expected: 'larkmoor-isolation' });
      });

      test('what is too large to keep', async () => {
        const long = device('desk').writeAny('from.later', { text: 'x'.repeat(MOST_TEXT) });
        await refused([long], { code: 'too-large', expected: String(MOST_TEXT) });
      });

      test.each([
        ['nothing', undefined],
        ['a fraction in its body', { body: { x: 0.5 } }],
        ['a time without a zone', { at: '2026-11-25 08:00' }],
        ['a name in place of an id', { by: 'Jane Roe' }],
        ['number 0', { number: 0 }],
        ['a field more', { extra: 1 }],
      ])('what is no entry: %s', async (_, change) => {
        const [entry] = notes(1) as [Entry];
        const wrong = change === undefined ? undefined : { ...entry, ...change };
        await refused([wrong as unknown as Entry], { code: 'malformed', index: 0 });
      });
    });

    test('what this release does not know is kept, and shown as unknown', async () => {
      const desk = device('desk');
      const body: PlainObject = { any: ['thing', 1, null, { deep: true }], ﬀ: 'é\u0000\u2028' };
      const entries = [desk.writeAny('from.later', body, 3), desk.writeAny('room.left', body, 99)];
      await store.append(entries);
      expect(await everything(store)).toEqual(entries);
      expect((await store.read(1)).map(seen)).toMatchObject([
        { kind: 'unknown', written: 'from.later', unread: 'kind', version: 3, body },
        { kind: 'unknown', written: 'room.left', unread: 'version', version: 99, body },
      ]);
    });

    const lasting = lasts ? test : undefined;
    lasting?.('two openers of one place write one chain', async () => {
      const other = await here.open();
      const desk = device('desk');
      const tablet = device('tablet-1');
      for (let turn = 0; turn < 6; turn += 1) {
        await Promise.all([store.append(notes(3, desk)), other.append(notes(2, tablet))]);
      }
      await other.close();
      expect(await verdictOf(store)).toMatchObject({ entries: 30, devices: 2, flaws: [] });
    });

    test('the same entries given twice at once are stored once', async () => {
      const entries = notes(20);
      const [one, two] = await Promise.all([store.append(entries), store.append(entries)]);
      expect(one).toEqual(two);
      expect(await verdictOf(store)).toMatchObject({ entries: 20, flaws: [] });
    });

    lasting?.('all is there when it is opened again, and the chain goes on', async () => {
      const desk = device('desk');
      const first = notes(5, desk);
      await store.append(first);
      await store.close();
      store = await here.open();
      const second = notes(5, desk);
      await store.append(second);
      expect(await everything(store)).toEqual([...first, ...second]);
      expect(await verdictOf(store)).toMatchObject({ entries: 10, flaws: [] });
    });

    test('a view goes on from its snapshot, and a stale or foreign one is ignored', async () => {
      const desk = device('desk');
      await store.append([desk.write('room.entered')]);
      await store.append(notes(600, desk));
      const stand = () => show(roomView, { journal: store, snapshots: store.snapshots });
      const fresh = await stand();
      expect(fresh).toMatchObject({ unitNumber: 601, since: 0 });
      expect(roomNow(fresh.state).inside).toMatchObject([{ person: 'p-3k7m', room: 'red-1' }]);
      expect(await stand()).toEqual({ ...fresh, since: 601 });

      const kept = (await store.snapshots.load('room'))!;
      const lie = { inside: {}, ended: {} };
      for (const wrong of [
        { ...kept, version: kept.version + 1, state: lie },
        { ...kept, unitHash: 'f'.repeat(64), state: lie },
        { ...kept, unitNumber: 600, state: lie },
        { ...kept, unitNumber: 5000, state: lie },
      ]) {
        await store.snapshots.save(wrong);
        expect((await stand()).state).toEqual(fresh.state);
      }
      await store.append([desk.write('room.left')]);
      expect(roomNow((await stand()).state).inside).toEqual([]);
    });
  });
}
