// The browser's store over a simulated IndexedDB; test/browser/journal.spec.ts holds it to the same in a real browser.
import * as simulated from 'fake-indexeddb';
import { openIndexedDb } from '../../src/journal/adapters/indexedDb.ts';
import { journalContract } from './contract.ts';

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
