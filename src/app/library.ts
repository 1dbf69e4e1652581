// The procedures that come with the program, read at build time, and the one that was opened from this machine. An opened
// file stays in this browser tab, unless somebody has the server set a paper of it.
import { useSyncExternalStore } from 'react';
import type { PaperRequest } from '../api/shapes/papers.ts';
import type { Question } from './check/result.ts';
import { headOf, type Head } from './model/head.ts';

const FILES = import.meta.glob<string>('../../procedures/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

export interface Entry extends Head {
  readonly id: string;
  readonly fileName: string;
  readonly text: string;
  readonly opened: boolean;
  /** Of a version in the journal: what it is, as 'approved, in force'. */
  readonly stage?: string;
  /** The same for a paper; without it nothing is recorded of the file. */
  readonly approval?: Approval;
}

/** What the journal says of a file, as a paper takes it. */
export type Approval = NonNullable<PaperRequest['stage']>;

const baseName = (path: string): string => path.split('/').at(-1) ?? path;

function entryOf(fileName: string, text: string, opened: boolean): Entry {
  const id = opened ? OPENED_ID : fileName.replace(/\.yaml$/, '');
  return { id, fileName, text, opened, ...headOf(text) };
}

export const OPENED_ID = 'opened';

const rank = (entry: Entry): number => (entry.invented ? 0 : 2) + (entry.kind === 'doffing' ? 0 : 1);

/** The invented unit's first, doffings before donnings. */
export const LIBRARY: readonly Entry[] = Object.entries(FILES)
  .map(([path, text]) => entryOf(baseName(path), text, false))
  .toSorted((a, b) => rank(a) - rank(b) || a.id.localeCompare(b.id));

const KEPT = 'doffline-opened';
const listeners = new Set<() => void>();
let opened: Entry | undefined = restored();

function restored(): Entry | undefined {
  try {
    const kept = sessionStorage.getItem(KEPT);
    if (kept === null) return undefined;
    const { fileName, text } = JSON.parse(kept) as { fileName: string; text: string };
    return entryOf(fileName, text, true);
  } catch {
    return undefined;
  }
}

/** Takes a file's text in; a reload of this tab keeps it, closing the tab forgets it. */
export function openText(fileName: string, text: string): void {
  opened = entryOf(fileName, text, true);
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ fileName, text }));
  } catch {
    // Too large or not allowed: the file is open all the same, a reload forgets it.
  }
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useOpened = (): Entry | undefined => useSyncExternalStore(subscribe, () => opened);

let versions: readonly Entry[] = [];

/** Versions of the unit's procedures, as they stand in the journal now. */
export function offerVersions(
  all: readonly {
    readonly id: string;
    readonly fileName: string;
    readonly text: string;
    readonly stage: string;
    readonly approval: Approval;
  }[],
): void {
  const known = new Map(versions.map((entry) => [entry.id, entry]));
  versions = all.map(({ id, fileName, text, stage, approval }) => {
    const entry = known.get(id) ?? { ...entryOf(fileName, text, false), id };
    return entry.stage === stage ? entry : { ...entry, stage, approval };
  });
  for (const listener of listeners) listener();
}

export const useVersionEntries = (): readonly Entry[] => useSyncExternalStore(subscribe, () => versions);

/** The entry with this id, of the library, of the unit's versions or opened. */
export function useEntry(id: string): Entry | undefined {
  const own = useOpened();
  const ofUnit = useVersionEntries();
  return id === OPENED_ID ? own : [...LIBRARY, ...ofUnit].find((entry) => entry.id === id);
}

/** The text of the donning that a doffing names, where the library has it. */
export const donningFor = (named: string | undefined): string | undefined =>
  LIBRARY.find(({ kind, fileName, id }) => kind === 'donning' && (fileName === named || id === named))?.text;

/** What to ask the worker: the text, and the donning that it names where the library has it. */
export function questionFor({ text, fileName, donning }: Entry): Question {
  const undone = donningFor(donning);
  return undone === undefined ? { text, fileName } : { text, fileName, donning: undone };
}
