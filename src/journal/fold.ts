// Views are folds: a start, and what each entry makes of it. A snapshot is where a fold stood; it is used only for the
// same view, the same version of it, and the same chain, and what it saves is time, never truth.
import type { Plain } from './canonical.ts';
import { acceptedOf, type Accepted, type Row } from './entry.ts';
import type { KindName } from './kinds/index.ts';
import { type Journal, type Snapshot, type Snapshots, USUAL_PAGE } from './port.ts';
import { JournalError } from './problems.ts';
import { type Seen, seen } from './reading.ts';

export interface View<State> {
  readonly name: string;
  /** Raised whenever `next` or the state's form changes: older snapshots are then ignored. */
  readonly version: number;
  readonly start: State;
  /** The only kinds it looks at, so that others need not be read; all where this is absent. */
  readonly kinds?: readonly KindName[];
  /** Pure; an entry that the view does not care about gives back the same state. Never throws. */
  readonly next: (state: State, entry: Seen) => State;
}

/** Entries after `state`, which is the view's start where it is not given. */
export const fold = <State extends Plain>(
  view: View<State>,
  entries: readonly Accepted[],
  state: State = view.start,
): State => entries.reduce((before, accepted) => step(view, before, accepted), state);

/** What one entry makes of a view's state. */
export function step<State>(view: View<State>, state: State, accepted: Accepted): State {
  const looksAt: readonly string[] | undefined = view.kinds;
  return looksAt && !looksAt.includes(accepted.entry.kind) ? state : view.next(state, seen(accepted));
}

/** Entries from a number on, page after page, to the end. */
export async function* pages(
  journal: Pick<Journal, 'read'>,
  from = 1,
  most = USUAL_PAGE,
): AsyncGenerator<readonly Accepted[]> {
  let next = from;
  for (;;) {
    const page = await journal.read(next, { most });
    if (page.length > 0) yield page;
    if (page.length < most) return;
    next = page.at(-1)!.unitNumber + 1;
  }
}

/** Rows as entries; a row that cannot be read is an error, because a view without it would be wrong. */
export const readRows = (rows: readonly Row[]): readonly Accepted[] =>
  rows.map((row) => {
    const accepted = acceptedOf(row);
    if (!accepted)
      throw new JournalError({ code: 'damaged', detail: `entry ${row.unitNumber} cannot be read` });
    return accepted;
  });

/** The state of a snapshot as a database keeps it. One that cannot be read is said: views do without it, `verify` names it. */
export function readState(view: string, text: string): Plain {
  try {
    return JSON.parse(text) as Plain;
  } catch (error) {
    throw new JournalError({ code: 'damaged', detail: `the snapshot of ${view} cannot be read` }, error);
  }
}

export interface Shown<State> {
  readonly state: State;
  /** The unit's number that it stands at; 0 for an empty journal. */
  readonly unitNumber: number;
  /** From a snapshot at this number on, or from the beginning. */
  readonly since: number;
}

async function usable<State>(
  view: View<State>,
  journal: Pick<Journal, 'read'>,
  snapshot: Snapshot | undefined,
): Promise<Snapshot | undefined> {
  if (snapshot?.view !== view.name || snapshot.version !== view.version) return undefined;
  const [there] = await journal.read(snapshot.unitNumber, { most: 1 });
  return there?.unitNumber === snapshot.unitNumber && there.unitHash === snapshot.unitHash
    ? snapshot
    : undefined;
}

/** So many entries past its snapshot a view leaves a newer one. */
const SAVE_AFTER = 500;

/** A view as it stands now. Leaves a snapshot when the last one is far behind; where that fails, the next call is slower. */
export async function show<State extends Plain>(
  view: View<State>,
  { journal, snapshots }: { readonly journal: Pick<Journal, 'read'>; readonly snapshots: Snapshots },
): Promise<Shown<State>> {
  const kept = await snapshots.load(view.name).catch(() => undefined);
  const snapshot = await usable(view, journal, kept);
  const since = snapshot?.unitNumber ?? 0;
  let state = (snapshot?.state ?? view.start) as State;
  let last: Accepted | undefined;
  for await (const page of pages(journal, since + 1)) {
    state = fold(view, page, state);
    last = page.at(-1);
  }
  if (last && last.unitNumber - since >= SAVE_AFTER) {
    const { unitNumber, unitHash } = last;
    const { name, version } = view;
    await snapshots.save({ view: name, version, unitNumber, unitHash, state }).catch(() => undefined);
  }
  return { state, unitNumber: last?.unitNumber ?? since, since };
}
