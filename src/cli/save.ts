// Writing a file that somebody named, for every command that does: what is there stands unless asked for, only a plain file is ever
// written over, and nobody finds half a file.
import { lstat, rename, rm, writeFile } from 'node:fs/promises';
import { printable } from './io.ts';

/** Why nothing may be written there; undefined where it may. */
async function hindrance(file: string, force: boolean): Promise<string | undefined> {
  const there = await lstat(file).catch(() => undefined);
  if (!there) return undefined;
  if (!there.isFile()) return `${printable(file)} is there already and is no plain file. Name another one.`;
  return force ? undefined : `${printable(file)} is there already; --force overwrites it.`;
}

/** Beside it first, then renamed. */
async function put(file: string, content: string | Uint8Array): Promise<string | undefined> {
  const temporary = `${file}.${process.pid}.part`;
  try {
    await writeFile(temporary, content, { flag: 'wx' });
    await rename(temporary, file);
    return undefined;
  } catch {
    await rm(temporary, { force: true }).catch(() => undefined);
    return `${printable(file)} cannot be written. Is there such a folder, and room, and may you write there?`;
  }
}

/** Makes and writes it; what is wrong, in a sentence, where it was not. What `make` throws is for the caller. */
export async function save(
  file: string,
  force: boolean,
  make: () => string | Promise<Uint8Array>,
): Promise<string | undefined> {
  return (await hindrance(file, force)) ?? put(file, await make());
}
