// Puts a backup in place of what is there, journal and server's records together. What was there is put aside, never overwritten.
// The exchange is several renames: a mark stands beside the journal for as long as they last, and nothing is opened to write
// while it does, so that a crash in between leaves no journal of one day beside the records of another.
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { emptyFile, recordsBeside, stripped } from './recordsFile.ts';
import { unpacked } from './recordsKept.ts';
import { mended } from './recordsMend.ts';
import { copyOf, force, forceFile, partOf } from './sqliteBackup.ts';
import { guarded } from './sqliteFaults.ts';
import { companions, openFile } from './sqliteFile.ts';
import { lockFileOf, lockOn, restoringOf } from './sqliteLock.ts';

const WAIT = 5000;

export interface Restored {
  /** Where what was there is kept now. */
  readonly aside: readonly string[];
  /** Devices of the restored records that were taken out since; undefined where the backup holds no records. */
  readonly takenOut: number | undefined;
}

const asideName = (file: string, count: number): string =>
  file.replace(/\.sqlite$/, `.replaced-${count}.sqlite`);

/** The first count under which none of the files has a name yet. */
function freeCount(files: readonly string[]): number {
  for (let count = 1; ; count += 1)
    if (!files.some((file) => existsSync(asideName(file, count)))) return count;
}

/** Puts a file aside with what belongs to it, a half done change of it too. */
function putAside(file: string, count: number): readonly string[] {
  if (!existsSync(file)) return [];
  const aside = asideName(file, count);
  const own = [...companions(file), `${file}-journal`].filter((name) => existsSync(name));
  for (const name of [...own, file]) renameSync(name, aside + name.slice(file.length));
  return [aside];
}

/** Exchanges each file for its part. */
function exchange(file: string, parts: ReadonlyMap<string, string>): readonly string[] {
  const mark = restoringOf(file);
  for (const part of parts.values()) force(part);
  if (!existsSync(mark)) emptyFile(mark);
  forceFile(mark);
  const files = [...parts.keys()];
  const count = freeCount([file, recordsBeside(file)]);
  const aside = files.flatMap((one) => putAside(one, count));
  for (const [one, part] of parts) renameSync(part, one);
  for (const one of files) forceFile(one);
  rmSync(mark);
  if (process.platform !== 'win32') force(dirname(file));
  return aside;
}

function madeFolder(file: string): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
}

/**
 * A backup as the journal in `file`, and its records beside it. A program that has either open is refused with `replaced`
 * at its next entry or question.
 */
export async function restoreSqlite(backup: string, file: string): Promise<Restored> {
  guarded(() => madeFolder(file));
  const lock = lockOn(await openFile(lockFileOf(file), WAIT));
  const records = recordsBeside(file);
  const [part, recordsPart] = [partOf(file), partOf(records)];
  try {
    await copyOf(backup, part);
    const hasRecords = await unpacked(part, recordsPart);
    if (hasRecords) await stripped(recordsPart);
    const takenOut = hasRecords ? await mended(recordsPart, part, records) : undefined;
    const parts = new Map([...(hasRecords ? [[records, recordsPart] as const] : []), [file, part] as const]);
    return { aside: guarded(() => lock.hold(() => exchange(file, parts))), takenOut };
  } finally {
    lock.close();
    for (const name of [part, recordsPart])
      for (const one of [name, `${name}-journal`, ...companions(name)]) rmSync(one, { force: true });
  }
}

/** What a restore would have to put aside, or to mix with. */
export const thereIn = (file: string): readonly string[] =>
  [file, recordsBeside(file), restoringOf(file)].filter((name) => existsSync(name));
