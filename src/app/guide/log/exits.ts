// The exits and drills of this journal, by id: which are open, where each begins among the entries, and its entries in order.
import type { GuideEntry } from '../../../guide/index.ts';
import { pages, type View } from '../../../journal/fold.ts';
import type { Journal } from '../../../journal/port.ts';
import { type Seen, seen } from '../../../journal/reading.ts';

export type ExitHead = {
  readonly exit: string;
  readonly drill: boolean;
  readonly procedure: string;
  readonly version: string;
  readonly content: string;
  readonly room: string;
  readonly wearer: string;
  readonly observer: string;
  readonly at: string;
  /** The unit's number of its first entry. */
  readonly from: number;
  readonly ended: string | null;
};

export type ExitsState = Readonly<Record<string, ExitHead>>;

function begun(state: ExitsState, entry: Extract<Seen, { kind: 'exit.started' }>): ExitsState {
  const { exit, drill, procedure, version, content, room, wearer, observer } = entry.body;
  if (Object.hasOwn(state, exit)) return state;
  const head = { exit, drill, procedure, version, content, room, wearer, observer };
  return { ...state, [exit]: { ...head, at: entry.at, from: entry.unitNumber, ended: null } };
}

export const exitsView: View<ExitsState> = {
  name: 'exits',
  version: 1,
  start: {},
  next: (state, entry) => {
    if (entry.kind === 'exit.started') return begun(state, entry);
    if (entry.kind !== 'exit.ended' && entry.kind !== 'exit.handed-over') return state;
    const head = Object.hasOwn(state, entry.body.exit) ? state[entry.body.exit] : undefined;
    if (!head) return state;
    const change = entry.kind === 'exit.ended' ? { ended: entry.body.how } : { observer: entry.body.to };
    return { ...state, [head.exit]: { ...head, ...change } };
  },
};

/** Those that go on, the latest first. */
export const openExits = (state: ExitsState): readonly ExitHead[] =>
  Object.values(state)
    .filter(({ ended }) => ended === null)
    .toSorted((a, b) => b.from - a.from);

/** An entry of an exit as the guide recorded it. */
export type Recorded = Pick<GuideEntry, 'kind' | 'body' | 'at' | 'by'>;

const ROOM: readonly string[] = ['room.entered', 'room.left'];

function belongs(entry: Seen, exit: string, visit: string): boolean {
  const body = entry.body as Readonly<Record<string, unknown>>;
  if (entry.kind === 'note.added') return body.about === 'exit' && body.id === exit;
  if (ROOM.includes(entry.kind)) return body.visit === visit;
  return body.exit === exit;
}

/** In the order of the journal. `visit` is the wearer's visit to the room, where it has an id of its own. */
export async function entriesOf(
  journal: Pick<Journal, 'read'>,
  { exit, from }: Pick<ExitHead, 'exit' | 'from'>,
  visit = exit,
): Promise<readonly Recorded[]> {
  const found: Recorded[] = [];
  for await (const page of pages(journal, from))
    for (const entry of page.map(seen))
      if (entry.kind !== 'unknown' && belongs(entry, exit, visit)) {
        const { kind, body, at, by } = entry;
        found.push({ kind, body, at, by } as unknown as Recorded);
      }
  return found;
}
