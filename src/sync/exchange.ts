// Carries out one step over two ports: the journal here and the wire to the server. What is read goes into the journal first
// and is noted as read after that, so that a crash between the two reads it once more, and no entry is missed.
import type { Entry } from '../journal/entry.ts';
import { type Journal, LAST, type Snapshots } from '../journal/port.ts';
import { isRefusal, JournalError } from '../journal/problems.ts';
import { anew, contradicted, lost, met, type Moment, type Refusal, refused, sent } from './answers.ts';
import { countOf, lastOf, lastOfDevice, placed, type Run } from './places.ts';
import { START_STATE, type SyncState } from './state.ts';
import type { Step } from './step.ts';

/** `lost`: no answer, or one that is not the server's. */
export type Answer<Body> =
  | { readonly is: 'answer'; readonly body: Body }
  | { readonly is: 'refused'; readonly problem: Refusal }
  | { readonly is: 'lost' };

interface Time {
  readonly offset: number | null;
}

export interface Wire {
  readonly ask: () => Promise<
    Answer<{ readonly head: { readonly number: number; readonly hash: string }; readonly time: Time }>
  >;
  readonly send: (
    entries: readonly Entry[],
  ) => Promise<Answer<{ readonly head: { readonly number: number }; readonly time: Time }>>;
  readonly read: (from: number) => Promise<
    Answer<{
      readonly entries: readonly { readonly at: number; readonly entry: unknown }[];
      readonly next: number;
      readonly more: boolean;
      readonly time: Time;
    }>
  >;
}

export interface Ends {
  readonly store: Pick<Journal, 'append' | 'read'> & { readonly snapshots: Snapshots };
  readonly wire: Wire;
  readonly device: string;
}

/** Characters of entries in one request: well below what the server takes. */
const MOST_TEXT = 1024 * 1024;

/** The name under which what was read is noted in the journal's store. */
const NOTED = 'sync';
const NOTED_VERSION = 2;

/** What is noted: how far the server has this device's own entries, and what stands at its places. */
interface Noted {
  readonly acknowledged: number;
  readonly runs: readonly Run[];
}

/** Number of the device's last entry here. */
export async function writtenBy(store: Pick<Journal, 'read'>, device: string): Promise<number> {
  const [last] = await store.read(LAST, { device, backwards: true, most: 1 });
  return last?.entry.number ?? 0;
}

async function entryAt(store: Pick<Journal, 'read'>, device: string, number: number) {
  const [found] = await store.read(number, { device, most: 1 });
  return found?.entry.number === number ? found.entry : undefined;
}

/** As many as fit into one request, and one at least. */
function fitting(entries: readonly Entry[]): readonly Entry[] {
  let room = MOST_TEXT;
  const end = entries.findIndex((entry, index) => {
    room -= JSON.stringify(entry).length;
    return room < 0 && index > 0;
  });
  return end === -1 ? entries : entries.slice(0, end);
}

/** What was noted at the last start; the beginning where nothing was, or it does not hold together. */
export async function restored({ store }: Pick<Ends, 'store'>): Promise<SyncState> {
  const noted = await store.snapshots.load(NOTED);
  if (noted?.version !== NOTED_VERSION) return START_STATE;
  const { acknowledged, runs } = noted.state as unknown as Noted;
  return { ...START_STATE, acknowledged, runs, next: countOf(runs) + 1 };
}

/** Whoever starts while the server is away is told what waits by this note: nobody else could say what arrived. */
async function note({ store }: Ends, { acknowledged, runs, next }: SyncState): Promise<void> {
  const state = { acknowledged, runs: runs.map((run) => [...run]) };
  await store.snapshots.save({
    view: NOTED,
    version: NOTED_VERSION,
    unitNumber: next - 1,
    unitHash: '',
    state,
  });
}

/** The state after an answer, noted where the server told something new of this device's own entries. */
async function noted(ends: Ends, before: SyncState, after: SyncState): Promise<SyncState> {
  // Where there is no room for the note, what arrived has arrived all the same.
  if (after.acknowledged !== before.acknowledged) await note(ends, after).catch(() => undefined);
  return after;
}

async function ask(ends: Ends, state: SyncState, moment: Moment): Promise<SyncState> {
  const { store, wire, device } = ends;
  const answer = await wire.ask();
  if (answer.is === 'lost') return lost(state, moment);
  if (answer.is === 'refused') return refused(state, answer.problem, moment);
  const { head, time } = answer.body;
  const own = head.number === 0 ? undefined : await entryAt(store, device, head.number);
  if (own && own.hash !== head.hash) return contradicted(state, head.number, moment);
  return noted(ends, state, met(state, head.number, time.offset, moment));
}

async function send(ends: Ends, state: SyncState, step: Step & { do: 'send' }, moment: Moment) {
  const { store, wire, device } = ends;
  const found = await store.read(step.from, { device, most: step.most });
  const answer = await wire.send(fitting(found.map(({ entry }) => entry)));
  if (answer.is === 'lost') return lost(state, moment);
  if (answer.is === 'refused') return refused(state, answer.problem, moment, step.from);
  return noted(ends, state, sent(state, answer.body.head.number, answer.body.time.offset, moment));
}

/** Whether the entry at the last place is still the one that was read there. */
async function isSame({ store }: Ends, { runs }: SyncState, first: Entry | undefined): Promise<boolean> {
  const last = lastOf(runs);
  if (!last) return true;
  const here = await entryAt(store, last.device, last.number);
  return here !== undefined && here.hash === first?.hash;
}

async function read(ends: Ends, state: SyncState, from: number, moment: Moment): Promise<SyncState> {
  const answer = await ends.wire.read(from);
  if (answer.is === 'lost') return lost(state, moment);
  if (answer.is === 'refused') return refused(state, answer.problem, moment);
  const entries = answer.body.entries.map(({ entry }) => entry as Entry);
  if (!(await isSame(ends, state, entries[0]))) return anew(state);
  const fresh = entries.slice(state.next - from);
  try {
    if (fresh.length > 0) await ends.store.append(fresh, { received: true });
  } catch (error) {
    if (!(error instanceof JournalError) || !isRefusal(error.problem)) throw error;
    return contradicted(state, undefined, moment);
  }
  const runs = fresh.reduce(placed, state.runs);
  const { next, more, time } = answer.body;
  const after = { ...state, runs, next, more, offset: time.offset ?? state.offset, answeredAt: moment.now };
  if (fresh.length > 0) await note(ends, after);
  // All was read, and something that the server had acknowledged was not there: it was restored in between.
  const isShort = !more && lastOfDevice(runs, ends.device) < state.acknowledged;
  return isShort ? lost(after, moment) : after;
}

/** Where the device stands after a step. Throws a JournalError where the journal here failed: nothing is lost, try again. */
export async function take(ends: Ends, state: SyncState, step: Step, moment: Moment): Promise<SyncState> {
  if (step.do === 'ask') return ask(ends, state, moment);
  if (step.do === 'send') return send(ends, state, step, moment);
  return step.do === 'read' ? read(ends, state, step.from, moment) : state;
}
