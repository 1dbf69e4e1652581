// The browser's store over a simulated IndexedDB; test/browser/journal.spec.ts holds it to the same in a real browser.
import * as simulated from 'fake-indexeddb';
import { openIndexedDb } from '../../src/journal/adapters/indexedDb.ts';
import { expect, test } from 'vitest';
import { withhold } from '../../src/journal/withheld.ts';
import { journalContract } from './contract.ts';
import { device } from './samples.ts';

Object.assign(globalThis, simulated, { indexedDB: simulated.indexedDB });
let count = 0;

journalContract('IndexedDB (simulated)', async () => {
  count += 1;
  const name = `journal-${count}`;
  return Promise.resolve({
    open: () => openIndexedDb(name),
    remove: async () => Promise.resolve(void simulated.indexedDB.deleteDatabase(name)),
  });
});

test('takes what was withheld from this device where the server handed it on, and nowhere else', async () => {
  const store = await openIndexedDb('withheld');
  const told = [withhold(device('tablet-1').write('exit.question-answered'))];
  await expect(store.append(told)).rejects.toMatchObject({ problem: { code: 'hash-wrong' } });
  await store.append(told, { received: true });
  expect((await store.read(1)).map(({ entry }) => entry)).toEqual(told);
  await store.close();
});
