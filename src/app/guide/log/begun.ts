// What each exit that began here was made from, kept in a database of its own: it has to be on the disk before anything is
// recorded, because without it the recorded lines mean nothing. The browser's simpler store writes seconds later, and a
// tablet that dies in between has forgotten it.
import type { Mode, UnitSettings } from '../../../guide/index.ts';

/** What an exit was begun with. No names of people. */
export interface Begun {
  readonly text: string;
  readonly fileName: string;
  readonly mode: Mode;
  readonly unit: UnitSettings;
  readonly visit?: string;
}

const NAME = 'doffline-guide';
const TABLE = 'begun';
/** Where releases before this one kept it. */
const OLD = 'doffline-guide-exit-';

async function answerOf<Result>(request: IDBRequest<Result>): Promise<Result> {
  return new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('no answer')));
  });
}

async function open(): Promise<IDBDatabase> {
  const opening = indexedDB.open(NAME, 1);
  opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore(TABLE));
  return answerOf(opening);
}

/** Whether it is on the disk now; false where there is no room or no leave. */
export async function keepBegun(exit: string, begun: Begun): Promise<boolean> {
  try {
    const db = await open();
    const transaction = db.transaction(TABLE, 'readwrite', { durability: 'strict' });
    const done = new Promise<boolean>((resolve) => {
      transaction.addEventListener('complete', () => resolve(true));
      transaction.addEventListener('abort', () => resolve(false));
    });
    transaction.objectStore(TABLE).put(begun, exit);
    const isKept = await done;
    db.close();
    return isKept;
  } catch {
    return false;
  }
}

function fromBefore(exit: string): Begun | undefined {
  try {
    const text = window.localStorage.getItem(OLD + exit);
    return text === null ? undefined : (JSON.parse(text) as Begun);
  } catch {
    return undefined;
  }
}

export async function begunOf(exit: string): Promise<Begun | undefined> {
  try {
    const db = await open();
    const found = (await answerOf(db.transaction(TABLE).objectStore(TABLE).get(exit))) as Begun | undefined;
    db.close();
    return found ?? fromBefore(exit);
  } catch {
    return fromBefore(exit);
  }
}
