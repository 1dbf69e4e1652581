// The one journal of this browser as the page sees it. Other tabs tell each other when they have written.
import { useSyncExternalStore } from 'react';
import { openIndexedDb } from '../../journal/adapters/indexedDb.ts';
import { personIdFrom } from '../../versions/naming.ts';
import { roleHere } from '../sync/paired.ts';
import { type BookState, createBook } from './book.ts';
import { deviceId, keptIn, nameUnit, type Unit, unitOf } from './device.ts';

const kept = keptIn(() => window.localStorage);
const chance = (bytes: Uint8Array): Uint8Array => crypto.getRandomValues(bytes as Uint8Array<ArrayBuffer>);

export const DEVICE = deviceId(kept, chance);

/** Changed at every write: other tabs of this browser are told by their own store. */
const WRITTEN = 'doffline-journal-written';

/** Asks the browser not to throw the journal away when room is short; it may refuse. */
function askToKeep(): void {
  navigator.storage?.persist?.().catch(() => undefined);
}

export const book = createBook({
  open: async () => openIndexedDb(),
  device: DEVICE,
  unit: () => unitOf(kept)?.id ?? 'unit',
  role: roleHere,
  now: () => new Date(),
  written: () => {
    askToKeep();
    kept.set(WRITTEN, String(Date.now()));
  },
});

const refresh = (): void => {
  book.refresh().catch(() => undefined);
};
window.addEventListener('storage', ({ key }) => {
  if (key === WRITTEN) refresh();
});
refresh();

export const useBook = (): BookState => useSyncExternalStore(book.subscribe, book.state);

/** The unit's name as it was typed here; its id alone where the journal came without one. */
export function unitNamed({ unit }: BookState): Unit | undefined {
  const named = unitOf(kept);
  if (unit === undefined) return named;
  return named?.id === unit ? named : { id: unit, title: unit };
}

export const nameThisUnit = (title: string): Unit => nameUnit(kept, title);

export const newPersonId = (): string => personIdFrom(chance(new Uint8Array(10)));
