// Entries that were recorded here before this device joined its unit: they carry the name that it had then, which the server
// does not know, and so they stay here. They are told, and can be taken out whole; nothing deletes them.
import type { Accepted } from '../../journal/entry.ts';
import { exportLine } from '../../journal/export.ts';
import { pages } from '../../journal/fold.ts';
import type { Store } from '../../journal/port.ts';
import { placesIn, type Runs } from '../../sync/places.ts';

interface Known {
  /** The device's name now. */
  readonly device: string;
  /** Which entries have a place on the server. */
  readonly runs: Runs;
}

/** Of a device that has joined: those of no device that the server knows. */
export function stayingIn(entries: readonly Accepted[], { device, runs }: Known): readonly Accepted[] {
  const placeOf = placesIn(runs);
  return entries.filter(({ entry }) => entry.device !== device && placeOf(entry) === undefined);
}

/** Of a device that has lost its place: its own that the server has not. They go on with it, if it goes on under its name. */
export const unsentIn = (
  entries: readonly Accepted[],
  { device, acknowledged }: { readonly device: string; readonly acknowledged: number },
): readonly Accepted[] =>
  entries.filter(({ entry }) => entry.device === device && entry.number > acknowledged);

export async function everythingIn(store: Pick<Store, 'read'>): Promise<readonly Accepted[]> {
  const all: Accepted[] = [];
  for await (const page of pages(store)) all.push(...page);
  return all;
}

/** Whole, with what was typed: nobody else has them. */
export const linesOf = (entries: readonly Accepted[]): string =>
  entries.map((one) => `${exportLine(one, { text: true })}\n`).join('');
