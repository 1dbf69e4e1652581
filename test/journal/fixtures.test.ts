// Journals written by earlier releases are read by this one: the files as those left them, never touched since. A release
// that changes a schema adds a fixture of its own and leaves the others as they are. The second has ways in of both versions,
// the third beginnings of exits.
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openSqlite, readSqlite } from '../../src/journal/adapters/sqlite.ts';
import { acceptedOf, type Row } from '../../src/journal/entry.ts';
import { fold } from '../../src/journal/fold.ts';
import type { Store } from '../../src/journal/port.ts';
import { seen } from '../../src/journal/reading.ts';
import { roomNow, roomView } from '../../src/journal/views/room.ts';
import { versionsView } from '../../src/journal/views/versions.ts';
import { verdictOf } from './contract.ts';
import { device, notes } from './samples.ts';

const FIXTURES = [
  {
    name: 'version-1',
    head: {
      number: 31,
      hash: 'f5e6be6e881d0be5035181561dab15570debfd39ff362e4ca82751bee8b4d5f4',
    },
    /** Numbers of entries of kinds that no release knew. */
    unknown: [29],
    inside: ['p-5t8w'],
    stages: { 'suit-doffing': { '1': 'retired' } },
    conflicts: ['wrong-stage'],
  },
  {
    name: 'version-2',
    head: {
      number: 37,
      hash: 'b0aa0d649f6964dda6eba457a37eef0bb82570115039ba1259805c80549f4431',
    },
    unknown: [],
    inside: ['p-5t8w', 'p-7c4v'],
    stages: { 'suit-doffing': { '1': 'retired' } },
    conflicts: ['wrong-stage', 'wrong-stage'],
  },
  {
    name: 'version-3',
    head: {
      number: 31,
      hash: '74bfc0a891d596a90a5860ad6f905ad6dea7a64de2ba9b7a7f51f1fbd03d1a69',
    },
    unknown: [],
    inside: ['p-5t8w', 'p-2d9h'],
    stages: { 'suit-doffing': { '1': 'approved' } },
    conflicts: ['never-changed', 'wrong-stage', 'wrong-stage'],
  },
] as const;

const folder = mkdtempSync(join(tmpdir(), 'journal-'));
afterAll(() => rmSync(folder, { recursive: true }));
const path = (name: string): string => join('test/journal/fixtures', name);

describe.each(FIXTURES)('$name', ({ name, head, unknown, inside, stages, conflicts: refused }) => {
  const withStore = async (work: (store: Store) => Promise<void>): Promise<void> => {
    const copy = join(folder, `${name}.sqlite`);
    copyFileSync(path(`${name}.sqlite`), copy);
    const store = await openSqlite(copy);
    try {
      await work(store);
    } finally {
      await store.close();
    }
  };

  test('verifies, with the end that it was left with, also without a right to write', async () => {
    const store = await readSqlite(path(`${name}.sqlite`));
    expect(await verdictOf(store)).toMatchObject({ head, flaws: [] });
    await store.close();
  });

  test('holds byte for byte the rows that were written down beside it', async () => {
    const lines = readFileSync(path(`${name}.jsonl`), 'utf8')
      .trimEnd()
      .split('\n');
    const rows = lines.map((line) => JSON.parse(line) as Row);
    await withStore(async (store) => expect(await store.rows(1, 1000)).toEqual(rows));
    expect(rows.map(acceptedOf)).not.toContain(undefined);
  });

  test('every kind that was known then is known now, and what was unknown is still shown', async () => {
    await withStore(async (store) => {
      const entries = (await store.read(1)).map(seen);
      expect(entries.flatMap(({ kind, unitNumber }) => (kind === 'unknown' ? [unitNumber] : []))).toEqual(
        unknown,
      );
    });
  });

  test('the views show what they showed', async () => {
    await withStore(async (store) => {
      const entries = await store.read(1);
      expect(roomNow(fold(roomView, entries)).inside.map(({ person }) => person)).toEqual(inside);
      const { procedures, conflicts } = fold(versionsView, entries);
      for (const [procedure, versions] of Object.entries<Readonly<Record<string, string>>>(stages))
        for (const [version, stage] of Object.entries(versions))
          expect(procedures[procedure]?.[version]?.stage).toBe(stage);
      expect(conflicts.map(({ code }) => code)).toEqual(refused);
    });
  });

  test('can be written on', async () => {
    await withStore(async (store) => {
      await store.append(notes(3, device('desk-2')));
      expect(await verdictOf(store)).toMatchObject({ entries: head.number + 3, flaws: [] });
    });
  });
});
