// Many callers, few trips to the disk, and each caller told of its own entries alone.
import { expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { JournalError } from '../../src/journal/problems.ts';
import { gathered } from '../../src/server/gather.ts';
import { problemOf, verdictOf } from '../journal/contract.ts';
import { device, notes } from '../journal/samples.ts';

/** A store whose appends take a moment and are counted. */
function counted() {
  const store = memoryStore();
  const sizes: number[] = [];
  const append = async (entries: readonly Entry[]) => {
    sizes.push(entries.length);
    await new Promise((resolve) => setImmediate(resolve));
    return store.append(entries);
  };
  return { store, sizes, append: gathered(append) };
}

test('what comes at once goes together, and everybody gets their own', async () => {
  const { store, sizes, append } = counted();
  const batches = Array.from({ length: 40 }, (_, index) => notes(1 + (index % 3), device(`tablet-${index}`)));
  const answers = await Promise.all(batches.map((entries) => append(entries)));
  expect(sizes.length).toBeLessThan(5);
  for (const [index, answer] of answers.entries())
    expect(answer.map(({ hash }) => hash)).toEqual(batches[index]!.map(({ hash }) => hash));
  expect((await verdictOf(store)).flaws).toEqual([]);
});

test('one refusal among many is that one’s alone', async () => {
  const { store, append } = counted();
  const good = Array.from({ length: 10 }, (_, index) => notes(2, device(`tablet-${index}`)));
  const [, gap] = notes(2, device('tablet-late'));
  const answers = await Promise.all([
    ...good.map((one) => problemOf(append(one))),
    problemOf(append([gap!])),
  ]);
  expect(answers.slice(0, 10)).toEqual(good.map(() => undefined));
  expect(answers[10]).toMatchObject({ code: 'gap', index: 0, device: 'tablet-late' });
  expect((await store.head()).number).toBe(20);
});

test('the same batch twice at once is stored once and acknowledged twice', async () => {
  const { store, append } = counted();
  const entries = notes(5);
  const [one, two] = await Promise.all([append(entries), append(entries)]);
  expect(one).toEqual(two);
  expect((await store.head()).number).toBe(5);
});

test('a store that fails fails everybody who waited for it, without trying each', async () => {
  let tries = 0;
  const append = gathered(async () => {
    tries += 1;
    return Promise.reject(new JournalError({ code: 'busy', detail: 'held' }));
  });
  const problems = await Promise.all(
    [1, 2, 3].map((one) => problemOf(append(notes(1, device(`tablet-${one}`))))),
  );
  expect(problems.map((problem) => problem?.code)).toEqual(['busy', 'busy', 'busy']);
  expect(tries).toBeLessThan(3);
});

test('a great many do not go in one transaction', async () => {
  const { sizes, append } = counted();
  await Promise.all(Array.from({ length: 30 }, (_, index) => append(notes(100, device(`tablet-${index}`)))));
  expect(Math.max(...sizes)).toBeLessThanOrEqual(1000);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(3000);
});
