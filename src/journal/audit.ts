// Verifies a whole store while others may write to it: every row up to the end that was noted when it began, and every
// snapshot against the fold of the same entries. What the database says of its own damage comes along.
import { canonical, type Plain } from './canonical.ts';
import { acceptedOf, type Head, type Row } from './entry.ts';
import { step, type View } from './fold.ts';
import { LAST, type Snapshot, type Store } from './port.ts';
import { JournalError, sentenceOf } from './problems.ts';
import { type Verdict, verifier } from './verify.ts';
import { VIEWS } from './views/index.ts';

export interface Audit extends Verdict {
  /** What the store says of itself where it cannot be read or its own check fails. */
  readonly damage: readonly string[];
  /** Views whose snapshot is not what the entries make. */
  readonly falseSnapshots: readonly string[];
}

const PAGE = 2000;

/** Rows page after page, up to and with a number. */
export async function* rowsUpTo(store: Pick<Store, 'rows'>, last: number): AsyncGenerator<readonly Row[]> {
  for (let from = 1; from <= last; ) {
    const page = (await store.rows(from, PAGE)).filter(({ unitNumber }) => unitNumber <= last);
    if (page.length === 0) return;
    yield page;
    from = page.at(-1)!.unitNumber + 1;
  }
}

/** A view's snapshot; undefined where there is none, and where it cannot be read, which is told. */
async function loaded({ snapshots }: Store, view: string, unread: string[]): Promise<Snapshot | undefined> {
  try {
    return await snapshots.load(view);
  } catch (error) {
    if (!(error instanceof JournalError) || error.problem.code !== 'damaged') throw error;
    unread.push(view);
    return undefined;
  }
}

/** Follows one view along the entries and compares where its snapshot stands. */
function follower(view: View<Plain>, snapshot: Snapshot | undefined) {
  const asked = snapshot?.version === view.version ? snapshot : undefined;
  let state: Plain | undefined = view.start;
  let isFalse = false;
  return {
    view: view.name,
    take: (row: Row): void => {
      if (!asked || state === undefined || row.unitNumber > asked.unitNumber) return;
      const accepted = acceptedOf(row);
      state = accepted && step(view, state, accepted);
      if (row.unitNumber !== asked.unitNumber || row.unitHash !== asked.unitHash || state === undefined)
        return;
      isFalse = canonical(state) !== canonical(asked.state);
    },
    isFalse: () => isFalse,
  };
}

/**
 * How far to read. A row past the noted end is somebody's who went on writing, and then the end has moved by now; where it has
 * not, such rows were put there past the journal, and are read too.
 */
async function endOf(store: Store, noted: Head): Promise<number> {
  const [further] = await store.rows(noted.number + 1, 1);
  const now = await store.head();
  return further && now.number < further.unitNumber ? LAST : noted.number;
}

/**
 * `expected`: a number and the unit's hash there, kept elsewhere. `received`: a device's copy, in which something may be withheld.
 * `selfCheck`: the database's own findings.
 */
export async function audit(
  store: Store,
  {
    expected,
    received = false,
    selfCheck = () => [],
  }: { readonly expected?: Head; readonly received?: boolean; readonly selfCheck?: () => readonly string[] },
): Promise<Audit> {
  const noted = await store.head();
  const { take, end } = verifier(expected, received);
  const unread: string[] = [];
  const followers = await Promise.all(
    VIEWS.map(async (view) => follower(view, await loaded(store, view.name, unread))),
  );
  const damage: string[] = [];
  try {
    damage.push(...selfCheck());
    for await (const page of rowsUpTo(store, await endOf(store, noted))) {
      for (const row of page) {
        take(row);
        for (const one of followers) one.take(row);
      }
    }
  } catch (error) {
    if (!(error instanceof JournalError)) throw error;
    damage.push(sentenceOf(error.problem));
  }
  const untrue = followers.filter(({ isFalse }) => isFalse()).map(({ view }) => view);
  const falseSnapshots = [...unread, ...untrue];
  return { ...end(noted), damage, falseSnapshots };
}
