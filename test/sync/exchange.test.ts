// Two devices and a server, with messages lost, doubled and delivered late, devices restarted at any moment and the server
// set back to a backup: every entry arrives once, in its device's order, and both devices tell the same account.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { Store } from '../../src/journal/port.ts';
import { accountOf } from '../../src/sync/account.ts';
import { type Ends, restored, take, writtenBy } from '../../src/sync/exchange.ts';
import { START_STATE, type SyncState } from '../../src/sync/state.ts';
import { heldBack, statusOf } from '../../src/sync/status.ts';
import { nextStep } from '../../src/sync/step.ts';
import { device as writer } from '../journal/samples.ts';
import { type BadWire, badWire, FAULTS, type Fault, type ModelServer, modelServer } from './model.ts';

const NAMES = ['tablet-1', 'tablet-2'] as const;

interface Side {
  readonly name: string;
  readonly store: Store;
  readonly ends: Ends;
  readonly line: BadWire;
  readonly write: (count: number) => Promise<void>;
  /** One step; a crash in it, or a restart, leaves what is stored and nothing else. */
  readonly step: (fault: Fault, crash?: boolean) => Promise<boolean>;
  readonly restart: () => Promise<void>;
  readonly state: () => SyncState;
}

function side(name: string, server: ModelServer, clock: { now: number }): Side {
  const store = memoryStore();
  const line = badWire(server.wireFor(name));
  let crash = false;
  const save: Store['snapshots']['save'] = async (snapshot) => {
    if (crash) throw new Error('the page is gone');
    return store.snapshots.save(snapshot);
  };
  const ends: Ends = {
    device: name,
    wire: line.wire,
    store: { append: store.append, read: store.read, snapshots: { load: store.snapshots.load, save } },
  };
  const pen = writer(name);
  let state = START_STATE;
  const restart = async (): Promise<void> => {
    state = await restored(ends);
  };
  return {
    name,
    store,
    ends,
    line,
    restart,
    state: () => state,
    write: async (count) => {
      const entries = Array.from({ length: count }, () => pen.write('exit.line-confirmed'));
      await store.append(entries);
    },
    step: async (fault, crashing = false) => {
      clock.now += 600_000;
      line.fault = fault;
      crash = crashing;
      const step = nextStep(state, await writtenBy(store, name), clock.now);
      if (step.do === 'wait') return false;
      try {
        state = await take(ends, state, step, { now: clock.now, chance: 0.5 });
      } catch {
        await restart();
      }
      crash = false;
      return true;
    },
  };
}

/** Steps without a fault until nothing is left to send or read. */
async function settle(sides: readonly Side[]): Promise<void> {
  for (let round = 0; round < 400; round += 1) {
    for (const one of sides) await one.step('none');
    const written = await Promise.all(sides.map(async ({ store, name }) => writtenBy(store, name)));
    const isDone = ({ state }: Side, index: number): boolean =>
      state().met && !state().more && state().acknowledged === written[index];
    if (sides.every(isDone) && round > 2 && sides.every((one) => one.state().next === sides[0]?.state().next))
      return;
  }
  throw new Error('never settled');
}

async function accounts(sides: readonly Side[]) {
  return Promise.all(
    sides.map(async ({ store, state }) => {
      const entries = (await store.read(1, { most: 10_000 })).map(({ entry }) => entry);
      return accountOf(entries, state().runs);
    }),
  );
}

/** Each device's numbers in the order of the server. */
const numbersOf = (entries: readonly Entry[], name: string): readonly number[] =>
  entries.filter(({ device }) => device === name).map(({ number }) => number);

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

async function agree(server: ModelServer, sides: readonly Side[]): Promise<void> {
  const there = await server.entries();
  for (const { store, name } of sides)
    expect(numbersOf(there, name)).toEqual(upTo(await writtenBy(store, name)));
  const [one, two] = await accounts(sides);
  expect(one).toEqual(two);
  expect(one?.map(({ entry }) => entry.hash)).toEqual(there.map(({ hash }) => hash));
  expect(one?.map(({ at }) => at)).toEqual(upTo(there.length));
}

const at = fc.integer({ min: 0, max: 1 });
const event = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant('write' as const), at, count: fc.integer({ min: 1, max: 5 }) }),
  },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('step' as const),
      at,
      fault: fc.constantFrom(...FAULTS),
      crash: fc.integer({ min: 0, max: 9 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('late' as const), at }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('restart' as const), at }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('server writes' as const) }) },
);
const setBack = fc.record({ do: fc.constant('restore' as const), share: fc.integer({ min: 0, max: 100 }) });

type Event =
  | (typeof event extends fc.Arbitrary<infer T> ? T : never)
  | (typeof setBack extends fc.Arbitrary<infer T> ? T : never);

async function play(events: readonly Event[]) {
  const server = modelServer();
  const clock = { now: 0 };
  const sides = NAMES.map((name) => side(name, server, clock));
  const own = writer('server');
  for (const one of events) {
    if (one.do === 'server writes') await server.append([own.write('note.added')]);
    else if (one.do === 'restore')
      await server.restore(Math.floor(((await server.entries()).length * one.share) / 100));
    else {
      const here = sides[one.at]!;
      if (one.do === 'write') await here.write(one.count);
      if (one.do === 'step') await here.step(one.fault, one.crash === 0);
      if (one.do === 'late') await here.line.deliverLate();
      if (one.do === 'restart') await here.restart();
    }
  }
  await settle(sides);
  return { server, sides };
}

describe('whatever happens to the messages', () => {
  test('every entry arrives once, in its device’s order, and both tell the same', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(event, { maxLength: 60 }), async (events) => {
        const { server, sides } = await play(events);
        await agree(server, sides);
      }),
      { numRuns: 250 },
    );
  });

  test('also when the server is set back to a backup', async () => {
    const quiet = event.filter((one) => one.do !== 'server writes');
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.oneof({ weight: 9, arbitrary: quiet }, { weight: 1, arbitrary: setBack }), {
          maxLength: 60,
        }),
        async (events) => {
          const { server, sides } = await play(events);
          const there = await server.entries();
          for (const { store, name } of sides)
            expect(numbersOf(there, name)).toEqual(upTo(await writtenBy(store, name)));
          const [one, two] = await accounts(sides);
          expect(one).toEqual(two);
        },
      ),
      { numRuns: 150 },
    );
  });
});

test('a page that starts while the server is away counts what the server has not acknowledged, and nothing else', async () => {
  const server = modelServer();
  const clock = { now: 0 };
  const [one, two] = NAMES.map((name) => side(name, server, clock)) as [Side, Side];
  await one.write(35);
  await settle([one, two]);
  await one.write(3);
  await one.restart();
  await one.step('request');
  const status = statusOf(one.state(), await writtenBy(one.store, one.name));
  expect(status).toEqual({ is: 'waiting', count: 3, reached: false });
  expect(heldBack(status)).toBe(3);
  await settle([one, two]);
  expect(heldBack(statusOf(one.state(), 38))).toBe(0);
});

test('it holds what the server acknowledged though nothing was read back behind it', async () => {
  const server = modelServer();
  const one = side('tablet-1', server, { now: 0 });
  await one.write(4);
  await one.step('none');
  await one.step('none');
  expect(one.state().acknowledged).toBe(4);
  await one.restart();
  expect(one.state()).toMatchObject({ acknowledged: 4, runs: [], met: false });
});

test('a backup that has grown past what was read is noticed, and read from the beginning', async () => {
  const server = modelServer();
  const clock = { now: 0 };
  const sides = NAMES.map((name) => side(name, server, clock));
  const [one, two] = sides as [Side, Side];
  await one.write(3);
  await settle(sides);
  await two.write(2);
  await settle(sides);
  // The backup is empty; the second device is the first to send again, and then sends more than there was.
  await server.restore(0);
  await two.write(9);
  for (let step = 0; step < 20; step += 1) await two.step('none');
  await settle(sides);
  await agree(server, sides);
});
