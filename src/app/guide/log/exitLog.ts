// Where an exit's entries go: into the browser's journal, behind whatever this device wrote before, one call after the other.
// Each is stored once, however often it is handed over: the guide sends again what it was not told of, and a write that
// failed may have been stored after all. Where another tab of this browser has gone on with the same exit, nothing of this
// one's is stored: two tabs that record one exit would tell two stories.
import type { PlainObject } from '../../../journal/canonical.ts';
import { type Entry, type Head, headOf, nextEntry, START } from '../../../journal/entry.ts';
import { KINDS } from '../../../journal/kinds/index.ts';
import { versionOf } from '../../../journal/kinds/kind.ts';
import { LAST, type Store } from '../../../journal/port.ts';
import { JournalError } from '../../../journal/problems.ts';
import { isSalted } from '../../../journal/withheld.ts';
import type { GuideEntry } from '../../../guide/index.ts';

export interface ExitLog {
  /**
   * Returns when all of them are durable. Throws where the store fails; they may be handed over again. Throws too, and
   * tells `elsewhere`, where another tab has recorded something of their exit since this one read it.
   */
  readonly append: (entries: readonly GuideEntry[]) => Promise<void>;
  /** To be called before an exit's entries are read: whatever comes behind is another tab's, or was written here. */
  readonly mark: (exit: string) => Promise<void>;
}

export interface LogParts {
  readonly store: () => Promise<Pick<Store, 'append' | 'read'>>;
  readonly device: string;
  /** The unit's id for a journal without an entry. */
  readonly unit: () => string;
  /** Told after something was written. */
  readonly written: () => void;
  /** Told that another tab goes on with this exit. */
  readonly elsewhere: (exit: string) => void;
}

/** How often an entry is made anew because another tab of this browser was quicker. */
const TRIES = 5;
const QUICKER: ReadonlySet<string> = new Set(['fork', 'gap', 'chain-broken']);

const wasQuicker = (error: unknown): boolean =>
  error instanceof JournalError && QUICKER.has(error.problem.code);

type Reader = Pick<Store, 'read'>;

async function headBy(store: Reader, device: string): Promise<Head> {
  const [last] = await store.read(LAST, { device, backwards: true, most: 1 });
  return last ? headOf(last.entry) : START;
}

/** What the journal may hold: fields that are undefined are left out. */
const plain = (body: object): PlainObject => JSON.parse(JSON.stringify(body)) as PlainObject;

const SALT_BYTES = 16;

/** What keeps an answer from being guessed by its entry's hash. */
const salt = (): string =>
  [...crypto.getRandomValues(new Uint8Array(SALT_BYTES))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');

const bodyOf = ({ kind, body }: GuideEntry): PlainObject =>
  isSalted(kind) ? { ...plain(body), salt: salt() } : plain(body);

function chained(
  head: Head,
  entries: readonly GuideEntry[],
  { unit, device }: { readonly unit: string; readonly device: string },
): readonly Entry[] {
  let last = head;
  return entries.map((written) => {
    const { kind, at, by } = written;
    const version = versionOf(KINDS[kind]);
    const entry = nextEntry(last, { unit, device, kind, version, at, by, body: bodyOf(written) });
    last = headOf(entry);
    return entry;
  });
}

/** Whether an entry that was once handed to the store lies there. */
async function isThere(store: Reader, { device, number, hash }: Entry): Promise<boolean> {
  const [row] = await store.read(number, { device, most: 1 });
  return row?.entry.number === number && row.entry.hash === hash;
}

const exitOf = ({ id }: GuideEntry): string => id.slice(0, id.lastIndexOf('.'));

/** Whether something of an exit was recorded by this device behind a number, and not handed over here. */
async function isElsewhere(
  store: Reader,
  { device, after, exit }: { readonly device: string; readonly after: number; readonly exit: string },
  handed: ReadonlySet<string>,
): Promise<boolean> {
  for (let from = after + 1; ; ) {
    const rows = await store.read(from, { device });
    const last = rows.at(-1);
    if (!last) return false;
    if (rows.some(({ entry: { body, hash } }) => body.exit === exit && !handed.has(hash))) return true;
    from = last.entry.number + 1;
  }
}

export function createExitLog({ store, device, unit, written, elsewhere }: LogParts): ExitLog {
  const stored = new Set<string>();
  /** Hashes of all that this tab has ever handed to the store. */
  const handed = new Set<string>();
  /** By exit: number of this device's last entry that is known here. */
  const known = new Map<string, number>();
  /** As they were last handed to the store, which has not said that it took them. */
  const tried = new Map<string, Entry>();
  let last: Promise<unknown> = Promise.resolve();

  const recall = async (to: Reader, entries: readonly GuideEntry[]): Promise<void> => {
    for (const { id } of entries) {
      const entry = tried.get(id);
      if (entry && (await isThere(to, entry))) stored.add(id);
      tried.delete(id);
    }
  };

  /** Throws where another tab has gone on with one of these exits. What it holds true of is every entry up to the head. */
  const alone = async (to: Reader, exits: ReadonlySet<string>, head: Head): Promise<void> => {
    for (const exit of exits) {
      const after = known.get(exit) ?? head.number;
      if (await isElsewhere(to, { device, after, exit }, handed)) {
        elsewhere(exit);
        throw new Error('Another tab of this browser runs this exit now.');
      }
      known.set(exit, head.number);
    }
  };

  const writeOnce = async (to: Pick<Store, 'append' | 'read'>, entries: readonly GuideEntry[]) => {
    await recall(to, entries);
    const fresh = entries.filter(({ id }) => !stored.has(id));
    if (fresh.length === 0) return;
    const [first] = await to.read(1, { most: 1 });
    const head = await headBy(to, device);
    await alone(to, new Set(fresh.map(exitOf)), head);
    const made = chained(head, fresh, { unit: first?.entry.unit ?? unit(), device });
    fresh.forEach(({ id }, index) => tried.set(id, made[index]!));
    for (const { hash } of made) handed.add(hash);
    await to.append(made);
    for (const { id } of fresh) {
      stored.add(id);
      tried.delete(id);
    }
  };

  const write = async (entries: readonly GuideEntry[]): Promise<void> => {
    const to = await store();
    for (let turn = 1; ; turn += 1) {
      try {
        await writeOnce(to, entries);
        written();
        return;
      } catch (error) {
        if (!wasQuicker(error) || turn >= TRIES) throw error;
      }
    }
  };

  return {
    mark: async (exit) => {
      known.set(exit, (await headBy(await store(), device)).number);
    },
    append: async (entries) => {
      const result = last.then(
        async () => write(entries),
        async () => write(entries),
      );
      last = result.catch(() => undefined);
      return result;
    },
  };
}
