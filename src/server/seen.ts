// When each device was last there, and how its clock stood: gathered, and written together every few seconds, because an
// acknowledgement must not wait for what is only nice to know. What was not written when a server dies is lost, and is
// known again a minute later.
import type { Log } from './log.ts';
import { toldError } from './log.ts';
import { type Device, setSeen, type Sight } from './store/devices.ts';
import type { Database } from './store/sql.ts';

export interface Sights {
  readonly note: (device: Device, offset: number | null, now: Date) => void;
  /** Writes what was noted. Never fails: what cannot be written is told to the log and forgotten. */
  readonly write: () => Promise<void>;
}

const WRITE_MS = 3000;
/** How exact it is. */
const EXACT_MS = 60_000;

/** Whether the records know it already, nearly enough. */
const isOld = ({ seenAt, clockOffset }: Device, offset: number | null, now: Date): boolean =>
  seenAt !== null &&
  now.getTime() - Date.parse(seenAt) < EXACT_MS &&
  (offset === null || clockOffset !== null);

export function sightsIn(records: Database, log: Log): Sights {
  const noted = new Map<string, Sight>();
  let timer: NodeJS.Timeout | undefined;
  const write = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    const all = [...noted];
    noted.clear();
    if (all.length === 0) return;
    try {
      await records.write(async (sql) => {
        for (const [device, sight] of all) await setSeen(sql, device, sight);
      });
    } catch (error) {
      log.warn(toldError(error), 'when devices were seen could not be noted');
    }
  };
  return {
    note: (device, offset, now) => {
      if (isOld(device, offset, now)) return;
      noted.set(device.id, { at: now.toISOString(), offset: offset ?? noted.get(device.id)?.offset ?? null });
      timer ??= setTimeout(() => void write(), WRITE_MS).unref();
    },
    write,
  };
}
