// One account of what was recorded, of all devices, the same on each of them: in the order of the unit's chain, as the server
// gave it, and behind that what has not arrived there yet. Each device's own clock is shown beside its entries; it never
// orders them.
import type { Entry } from '../journal/entry.ts';
import { placesIn, type Runs } from './places.ts';

export interface Told {
  /** The server's place; null while it has not got there, or this device has not read that it has. */
  readonly at: number | null;
  readonly entry: Entry;
}

const isLater = (a: Told, b: Told): number =>
  (a.at ?? Number.MAX_SAFE_INTEGER) - (b.at ?? Number.MAX_SAFE_INTEGER) ||
  (a.entry.device < b.entry.device ? -1 : Number(a.entry.device > b.entry.device)) ||
  a.entry.number - b.entry.number;

export function accountOf(entries: readonly Entry[], runs: Runs): readonly Told[] {
  const placeOf = placesIn(runs);
  return entries.map((entry) => ({ at: placeOf(entry) ?? null, entry })).toSorted(isLater);
}

/** The lines of one exit, and what was noted about it. */
export const isOfExit = ({ kind, body }: Entry, exit: string): boolean =>
  kind === 'note.added' ? body.about === 'exit' && body.id === exit : body.exit === exit;

/** What the server noted last about each device's clock; its own chain is called `server`. */
export function clockNotes(account: readonly Told[]): ReadonlyMap<string, string> {
  const notes = new Map<string, string>();
  for (const { entry } of account) {
    const { about, id, text } = entry.body;
    const isClock = entry.device === 'server' && entry.kind === 'note.added' && about === 'device';
    if (isClock && typeof id === 'string' && typeof text === 'string') notes.set(id, text);
  }
  return notes;
}
