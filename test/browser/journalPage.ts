// The journal's parts put within reach of the tests in a real browser; bundled by journal.spec.ts into a page of its own.
import { openIndexedDb } from '../../src/journal/adapters/indexedDb.ts';
import { type Entry, nextEntry } from '../../src/journal/entry.ts';
import { pages, show } from '../../src/journal/fold.ts';
import type { Store } from '../../src/journal/port.ts';
import { JournalError, type Problem } from '../../src/journal/problems.ts';
import { verifier } from '../../src/journal/verify.ts';
import { roomNow, roomView } from '../../src/journal/views/room.ts';
import { device, notes, oneOfEach } from '../journal/samples.ts';

async function problemOf(work: Promise<unknown>): Promise<Problem | undefined> {
  try {
    await work;
    return undefined;
  } catch (error) {
    if (error instanceof JournalError) return error.problem;
    throw error;
  }
}

async function everything(store: Store): Promise<readonly Entry[]> {
  const all: Entry[] = [];
  for await (const page of pages(store, 1, 50)) all.push(...page.map(({ entry }) => entry));
  return all;
}

async function verdictOf(store: Store) {
  const { take, end } = verifier();
  for (const row of await store.rows(1, 100_000)) take(row);
  return end(await store.head());
}

const parts = {
  device,
  everything,
  nextEntry,
  notes,
  oneOfEach,
  openIndexedDb,
  problemOf,
  roomNow,
  roomView,
  show,
  verdictOf,
};

export type JournalParts = typeof parts;

Object.assign(globalThis, { journal: parts });
