// A server for tests of what devices exchange with it: the same journal rules and refusals as the real one, which
// test/sync/server.test.ts holds beside it, over a wire that loses, doubles and delays what goes through it.
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { headOf, START } from '../../src/journal/entry.ts';
import { LAST, type Store } from '../../src/journal/port.ts';
import { isRefusal, JournalError } from '../../src/journal/problems.ts';
import type { Answer, Wire } from '../../src/sync/exchange.ts';

const PAGE = 3;

export interface ModelServer {
  readonly wireFor: (device: string) => Wire;
  readonly entries: () => Promise<readonly Entry[]>;
  readonly append: (entries: readonly Entry[]) => Promise<unknown>;
  /** A backup with only the first so many entries takes the journal's place. */
  readonly restore: (count: number) => Promise<void>;
}

const TODO = { gap: 'send-from-expected' } as const;

async function guarded<Body>(work: () => Promise<Body>): Promise<Answer<Body>> {
  try {
    return { is: 'answer', body: await work() };
  } catch (error) {
    if (!(error instanceof JournalError) || !isRefusal(error.problem)) throw error;
    const { code, index, expected } = error.problem;
    if (code === 'too-large') throw error;
    const todo = code === 'gap' ? TODO.gap : 'keep-and-tell-lead';
    return { is: 'refused', problem: { code, todo, index, expected } };
  }
}

export function modelServer(): ModelServer {
  let store: Store = memoryStore();
  const time = { offset: 1500 };
  const all = async () => (await store.read(1, { most: 10_000 })).map(({ entry }) => entry);
  const headFor = async (device: string) => {
    const [last] = await store.read(LAST, { device, backwards: true, most: 1 });
    return last ? headOf(last.entry) : START;
  };
  return {
    entries: all,
    append: async (entries) => store.append(entries),
    restore: async (count) => {
      const kept = (await all()).slice(0, count);
      store = memoryStore();
      await store.append(kept);
    },
    wireFor: (device) => ({
      ask: async () => guarded(async () => ({ head: await headFor(device), time })),
      send: async (entries) =>
        guarded(async () => {
          await store.append(entries);
          return { head: await headFor(device), time };
        }),
      read: async (from) => {
        const rows = await store.read(from, { most: PAGE + 1 });
        const before = from > 1 ? await store.read(from - 1, { most: 1 }) : [];
        if (rows.length === 0 && from > 1 && before.length === 0)
          return { is: 'refused', problem: { code: 'cursor-ahead', todo: 'read-from-start' } };
        const entries = rows.slice(0, PAGE).map(({ unitNumber, entry }) => ({ at: unitNumber, entry }));
        return {
          is: 'answer',
          body: { entries, next: from + entries.length, more: rows.length > PAGE, time },
        };
      },
    }),
  };
}

export const FAULTS = ['none', 'request', 'answer', 'twice', 'late'] as const;
export type Fault = (typeof FAULTS)[number];

export interface BadWire {
  readonly wire: Wire;
  /** What the next call suffers. */
  fault: Fault;
  /** Carries out what was delayed, whatever came in between. */
  readonly deliverLate: () => Promise<void>;
}

export function badWire(good: Wire): BadWire {
  const late: (() => Promise<unknown>)[] = [];
  const through = async <Body>(call: () => Promise<Answer<Body>>): Promise<Answer<Body>> => {
    const { fault } = bad;
    bad.fault = 'none';
    if (fault === 'late') late.push(call);
    if (fault === 'late' || fault === 'request') return { is: 'lost' };
    const answer = await call();
    if (fault === 'answer') return { is: 'lost' };
    return fault === 'twice' ? call() : answer;
  };
  const bad: BadWire = {
    fault: 'none',
    wire: {
      ask: async () => through(good.ask),
      send: async (entries) => through(async () => good.send(entries)),
      read: async (from) => through(async () => good.read(from)),
    },
    deliverLate: async () => {
      await late.shift()?.();
    },
  };
  return bad;
}
