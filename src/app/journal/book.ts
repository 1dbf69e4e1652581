// The journal as the page works with it: opened once, folded as it grows, written to entry by entry. An entry is in the store
// before anything is said of it; where another tab wrote in between, the entry is made anew behind that one.
import type { Plain } from '../../journal/canonical.ts';
import type { Accepted, Head } from '../../journal/entry.ts';
import { headOf, nextEntry, START } from '../../journal/entry.ts';
import { fold, pages, type View } from '../../journal/fold.ts';
import type { Role } from '../../api/roles.ts';
import { type Bodies, type KindName, KINDS } from '../../journal/kinds/index.ts';
import { versionOf } from '../../journal/kinds/kind.ts';
import { type Acknowledged, LAST, type Store } from '../../journal/port.ts';
import { JournalError } from '../../journal/problems.ts';
import { type TimesState, timesView } from '../../journal/views/times.ts';
import { type VersionsState, versionsView } from '../../journal/views/versions.ts';
import { type LanguagesState, languagesView } from '../../versions/languages.ts';
import { type StaffState, staffView } from '../../versions/staff.ts';
import { type TextsState, textsView } from '../../versions/texts.ts';
import { barOf, NotOfRole } from './roleLimit.ts';

export interface BookState {
  readonly is: 'opening' | 'ready' | 'failed';
  /** Why it failed. */
  readonly why: string;
  /** How many entries there are. */
  readonly entries: number;
  /** The unit that all entries belong to; undefined while there is none. */
  readonly unit: string | undefined;
  readonly versions: VersionsState;
  readonly staff: StaffState;
  readonly texts: TextsState;
  readonly languages: LanguagesState;
  readonly times: TimesState;
}

export type ToWrite = {
  readonly [Name in KindName]: { readonly kind: Name; readonly body: Bodies[Name] };
}[KindName];

export interface Writing {
  /** Who writes, by the staff list's id. */
  readonly by: string;
  /** All of them or none. */
  readonly entries: readonly ToWrite[];
  /** Whether they still fit what the journal says now; asked once more just before they are written. */
  readonly fits?: (state: BookState) => boolean;
}

export interface Book {
  readonly state: () => BookState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Opens the store where it is not open yet, and takes in what was written since. Never throws: see the state. */
  readonly refresh: () => Promise<void>;
  /**
   * Returns when the entries are stored. Throws a JournalError, a NoLonger where they do not fit any more, or a NotOfRole where
   * one of them is not this device's to write.
   */
  readonly write: (writing: Writing) => Promise<readonly Acknowledged[]>;
  /** The store itself, to verify and export. */
  readonly store: () => Promise<Store>;
}

export interface BookSettings {
  readonly open: () => Promise<Store>;
  readonly device: string;
  /** The unit's id for a journal without an entry. */
  readonly unit: () => string;
  /** What this device is paired as, now; undefined on a device alone. */
  readonly role?: () => Role | undefined;
  readonly now: () => Date;
  /** Told after something was written here. */
  readonly written: () => void;
}

/** Somebody else's entry came first, and what was to be written makes no sense behind it. */
export class NoLonger extends Error {
  override readonly name = 'NoLonger';

  constructor() {
    super('Something else was written meanwhile. Look at it again before you go on.');
  }
}

const NOTHING: BookState = {
  is: 'opening',
  why: '',
  entries: 0,
  unit: undefined,
  versions: versionsView.start,
  staff: staffView.start,
  texts: textsView.start,
  languages: languagesView.start,
  times: timesView.start,
};

const step = <State extends Plain>(view: View<State>, page: readonly Accepted[], state: State): State =>
  fold(view, page, state);

function taken(state: BookState, page: readonly Accepted[]): BookState {
  return {
    ...state,
    entries: page.at(-1)?.unitNumber ?? state.entries,
    unit: state.unit ?? page[0]?.entry.unit,
    versions: step(versionsView, page, state.versions),
    staff: step(staffView, page, state.staff),
    texts: step(textsView, page, state.texts),
    languages: step(languagesView, page, state.languages),
    times: step(timesView, page, state.times),
  };
}

/** How often an entry is made anew because another tab of this browser was quicker. */
const TRIES = 5;
const QUICKER: ReadonlySet<string> = new Set(['fork', 'gap', 'chain-broken']);

const wasQuicker = (error: unknown): boolean =>
  error instanceof JournalError && QUICKER.has(error.problem.code);

export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function headBy(store: Store, device: string): Promise<Head> {
  const [last] = await store.read(LAST, { device, backwards: true, most: 1 });
  return last ? headOf(last.entry) : START;
}

export function createBook(settings: BookSettings): Book {
  const { open, device, now } = settings;
  let state = NOTHING;
  let opened: Promise<Store> | undefined;
  /** One thing after the other. */
  let last: Promise<unknown> = Promise.resolve();
  const listeners = new Set<() => void>();

  const set = (next: BookState): void => {
    if (next === state) return;
    state = next;
    for (const listener of listeners) listener();
  };

  const store = async (): Promise<Store> => {
    opened ??= open();
    try {
      return await opened;
    } catch (error) {
      opened = undefined;
      throw error;
    }
  };

  const takeIn = async (): Promise<void> => {
    let next = state;
    for await (const page of pages(await store(), state.entries + 1)) next = taken(next, page);
    set(next.is === 'ready' && next === state ? state : { ...next, is: 'ready', why: '' });
  };

  const refuseOthers = (entries: readonly ToWrite[]): void => {
    const role = settings.role?.();
    const bar = entries.map(({ kind }) => barOf(role, kind)).find((why) => why !== undefined);
    if (bar !== undefined) throw new NotOfRole(bar);
  };

  const append = async ({ by, entries, fits }: Writing): Promise<readonly Acknowledged[]> => {
    refuseOthers(entries);
    const [to, unit] = [await store(), state.unit ?? settings.unit()];
    await takeIn();
    if (fits && !fits(state)) throw new NoLonger();
    const at = now().toISOString();
    let head = await headBy(to, device);
    const made = entries.map(({ kind, body }) => {
      const version = versionOf(KINDS[kind]);
      const entry = nextEntry(head, { unit, device, kind, version, at, by, body });
      head = headOf(entry);
      return entry;
    });
    return to.append(made);
  };

  const write = async (writing: Writing): Promise<readonly Acknowledged[]> => {
    for (let tried = 1; ; tried += 1) {
      try {
        const acknowledged = await append(writing);
        await takeIn();
        settings.written();
        return acknowledged;
      } catch (error) {
        if (!wasQuicker(error) || tried >= TRIES) throw error;
      }
    }
  };

  const after = async <Result>(work: () => Promise<Result>): Promise<Result> => {
    const result = last.then(work, work);
    last = result.catch(() => undefined);
    return result;
  };

  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    refresh: async () =>
      after(async () => {
        try {
          await takeIn();
        } catch (error) {
          set({ ...state, is: 'failed', why: reasonOf(error) });
        }
      }),
    write: async (writing) => after(async () => write(writing)),
    store,
  };
}
