// Who this device is in the journal, and which unit it writes for. Both are kept in the browser beside the journal: an id
// made once by chance, which says nothing of the machine, and the unit's id, chosen before the first entry.
import { deviceIdFrom, freeSlug } from '../../versions/naming.ts';

const DEVICE = 'doffline-device';
const UNIT = 'doffline-unit';

interface Kept {
  readonly get: (key: string) => string | undefined;
  readonly set: (key: string, value: string) => void;
}

/** The browser's own store; where it is refused, as long as the page lives. */
export function keptIn(storage: () => Storage): Kept {
  const held = new Map<string, string>();
  return {
    get: (key) => {
      try {
        return storage().getItem(key) ?? held.get(key);
      } catch {
        return held.get(key);
      }
    },
    set: (key, value) => {
      held.set(key, value);
      try {
        storage().setItem(key, value);
      } catch {
        // It holds as long as the page.
      }
    },
  };
}

const SLUG = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** This device's id, made where there is none yet. */
export function deviceId(kept: Kept, chance: (bytes: Uint8Array) => Uint8Array): string {
  const known = kept.get(DEVICE);
  if (known !== undefined && SLUG.test(known)) return known;
  const made = deviceIdFrom(chance(new Uint8Array(8)));
  kept.set(DEVICE, made);
  return made;
}

export interface Unit {
  readonly id: string;
  readonly title: string;
}

/** The unit that was named on this device. */
export function unitOf(kept: Kept): Unit | undefined {
  try {
    const { id, title } = JSON.parse(kept.get(UNIT) ?? '') as Partial<Unit>;
    return typeof id === 'string' && SLUG.test(id) && typeof title === 'string' ? { id, title } : undefined;
  } catch {
    return undefined;
  }
}

export function nameUnit(kept: Kept, title: string): Unit {
  const unit = { id: freeSlug(title, new Set(), 'unit'), title: title.trim() };
  kept.set(UNIT, JSON.stringify(unit));
  return unit;
}
