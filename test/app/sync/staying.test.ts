// What stays on a device that has joined: what was recorded under its name from before, and nothing that the server has or
// that still waits to be sent; taken out whole.
import { expect, test } from 'vitest';
import { linesOf, stayingIn, unsentIn } from '../../../src/app/sync/staying.ts';
import { memoryStore } from '../../../src/journal/adapters/memory.ts';
import { device } from '../../journal/samples.ts';

test('what was recorded before joining stays, and is taken out whole', async () => {
  const store = memoryStore();
  const [before, now, other] = [device('d-old'), device('d-new'), device('d-other')];
  const old = [before.write('exit.started'), before.write('note.added')];
  await store.append([
    ...old,
    other.write('exit.started'),
    now.write('exit.started'),
    now.write('note.added'),
  ]);
  const all = await store.read(1, { most: 100 });
  // The server has what the other tablet sent, and the first of this one.
  const runs = [
    ['d-other', 1, 1],
    ['d-new', 1, 1],
  ] as const;
  const staying = stayingIn(all, { device: 'd-new', runs });
  expect(staying.map(({ entry }) => entry)).toEqual(old);
  const lines = linesOf(staying).trimEnd().split('\n');
  expect(lines.map((line) => (JSON.parse(line) as { body: unknown }).body)).toEqual(
    old.map(({ body }) => body),
  );
  // Where it loses its place, what the server has not goes on with it, if it goes on under its name.
  expect(unsentIn(all, { device: 'd-new', acknowledged: 1 }).map(({ entry }) => entry.number)).toEqual([2]);
  // Before it joins, everything stays.
  expect(stayingIn(all, { device: '', runs: [] })).toHaveLength(all.length);
});
