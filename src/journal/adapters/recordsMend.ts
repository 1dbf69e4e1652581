// What is out stays out: a backup may hold a device as paired that the journal, or the records that are put aside for it, say was
// taken out since, or an account as let in to health records that waits since. Applied to restored records before they are in
// place. Where in doubt a device is out: it is paired again in a minute, and goes on where it was.
import { existsSync } from 'node:fs';
import { contentOf } from '../entry.ts';
import { guarded } from './sqliteFaults.ts';
import { type Db, openFile, openToRead } from './sqliteFile.ts';

const WAIT = 5000;

interface Paired {
  readonly id: string;
  readonly paired_at: string;
  readonly revoked_at: string | null;
}

interface Known {
  readonly devices: readonly Paired[];
  readonly disabled: readonly string[];
  /** Not let in to health records, or no longer. */
  readonly waiting: readonly string[];
}

const NOTHING: Known = { devices: [], disabled: [], waiting: [] };

interface Id {
  readonly id: string;
}

/** Records of earlier forms do not say who is let in. */
const tellsHealth = (db: Db): boolean =>
  (db.pragma('table_info(account)') as readonly { readonly name: string }[]).some(
    ({ name }) => name === 'health',
  );

const idsOf = (db: Db, where: string): readonly string[] =>
  (db.prepare(`select id from account where ${where}`).all() as readonly Id[]).map(({ id }) => id);

/** What the records that are there now say; nothing where they cannot be read. */
async function knownIn(file: string): Promise<Known> {
  if (!existsSync(file)) return NOTHING;
  try {
    const db = await openFile(file, WAIT);
    try {
      const devices = db.prepare('select id, paired_at, revoked_at from device').all() as Paired[];
      const waiting = tellsHealth(db) ? idsOf(db, "health <> 'in'") : [];
      return { devices, disabled: idsOf(db, 'disabled = 1'), waiting };
    } finally {
      db.close();
    }
  } catch {
    return NOTHING;
  }
}

/** Devices that the journal says are out, and since when. The server writes that in a chain called `server`. */
async function outInJournal(file: string): Promise<ReadonlyMap<string, string>> {
  const out = new Map<string, string>();
  const db = await openToRead(file, WAIT);
  try {
    const rows = guarded(() =>
      db.prepare("select text from entry where device = 'server' order by number").all(),
    ) as readonly { readonly text: string }[];
    for (const row of rows) {
      const { kind, at, body } = contentOf(row) as { kind: string; at: string; body: { device?: string } };
      if (kind === 'device.revoked') out.set(body.device ?? '', at);
      if (kind === 'device.paired') out.delete(body.device ?? '');
    }
    return out;
  } finally {
    db.close();
  }
}

/** Since when a device is out by what is known now; a later pairing took another secret, so the one in the backup is out too. */
function outSince({ paired_at }: Paired, now: Paired | undefined): string | undefined {
  if (now && now.revoked_at !== null && now.revoked_at > paired_at) return now.revoked_at;
  return now && now.paired_at > paired_at ? now.paired_at : undefined;
}

function takeOut(db: Db, inJournal: ReadonlyMap<string, string>, known: Known): number {
  const now = new Map(known.devices.map((one) => [one.id, one]));
  const inside = db.prepare('select id, paired_at, revoked_at from device where revoked_at is null').all();
  const revoke = db.prepare('update device set revoked_at = ?, revocation_noted = ? where id = ?');
  let count = 0;
  for (const device of inside as Paired[]) {
    const noted = inJournal.get(device.id);
    const since = noted ?? outSince(device, now.get(device.id));
    if (since === undefined) continue;
    revoke.run(since, noted === undefined ? 0 : 1, device.id);
    count += 1;
  }
  const disable = db.prepare('update account set disabled = 1 where id = ?');
  for (const id of known.disabled) disable.run(id);
  if (!tellsHealth(db)) return count;
  const wait = db.prepare(
    "update account set health = 'waits', health_since = ? where id = ? and health = 'in'",
  );
  for (const id of known.waiting) wait.run(new Date().toISOString(), id);
  return count;
}

/**
 * `records`: the restored ones, not yet in place; `journal`: what comes with them; `before`: where records may lie that are
 * put aside. Gives back how many devices it took out.
 */
export async function mended(records: string, journal: string, before: string): Promise<number> {
  const [inJournal, known] = [await outInJournal(journal), await knownIn(before)];
  const db = await openFile(records, WAIT);
  try {
    return guarded(() => {
      db.exec('begin immediate');
      const count = takeOut(db, inJournal, known);
      db.exec('commit');
      return count;
    });
  } finally {
    db.close();
  }
}
