// The exits that run in this window, by id: begun here, or found again in the journal after a reload or a crash. Two rooms at
// once are two of them, each in a window of its own or one after the other.
import {
  begin,
  type Effect,
  type Occasion,
  next,
  type People,
  replay,
  type State,
} from '../../../guide/index.ts';
import type { BarId } from '../../../domain/guiding.ts';
import { show } from '../../../journal/fold.ts';
import { book, DEVICE, newPersonId, unitNamed } from '../../journal/useBook.ts';
import { type Begun, begunOf, keepBegun } from '../log/begun.ts';
import { createExitLog } from '../log/exitLog.ts';
import { entriesOf, type ExitHead, exitsView, type ExitsState, type Recorded } from '../log/exits.ts';
import { keeperIn } from '../log/kept.ts';
import { keepAwake } from './awake.ts';
import { type Hold, type HoldMessage, holdOf } from './hold.ts';
import { linkOf } from './link.ts';
import { searchWay, warmUp } from './search.ts';
import { createRun, type Run, type RunnerParts } from './runner.ts';
import { scriptFrom } from './scripts.ts';
import { signalsOf } from './signals.ts';
import { browserVoice } from './voice.ts';

export const keeper = keeperIn(() => window.localStorage);

const written = (): void => {
  book.refresh().catch(() => undefined);
};
const log = createExitLog({
  store: book.store,
  device: DEVICE,
  unit: () => unitNamed(book.state())?.id ?? 'unit',
  written,
  elsewhere: (exit) => holdFor(exit).leave(),
});

const wakers = new Set<() => void>();
export const awake = keepAwake(window, () => {
  for (const waker of wakers) waker();
});
export function onAwake(waker: () => void): () => void {
  wakers.add(waker);
  return () => wakers.delete(waker);
}

const MOST_WAIT = 2 ** 31 - 1;

const PARTS: RunnerParts = {
  log,
  voice: browserVoice(window),
  now: () => Date.now(),
  wait: (milliseconds, then) => {
    const timer = setTimeout(then, Math.min(milliseconds, MOST_WAIT));
    return () => clearTimeout(timer);
  },
  keepAwake: awake.want,
  signal: signalsOf(window),
  search: searchWay,
};

const runs = new Map<string, Run>();

function keepRun(begun: readonly [State, readonly Effect[]]): Run {
  const run = createRun(begun, PARTS);
  warmUp(run.state().core.script.setup.procedure);
  runs.set(run.exit, run);
  return run;
}

const gone = new Set<(exit: string) => void>();
/** Told of every exit that another tab has taken over. */
export function onGone(hear: (exit: string) => void): () => void {
  gone.add(hear);
  return () => gone.delete(hear);
}

function drop(exit: string): void {
  runs.get(exit)?.close();
  runs.delete(exit);
  for (const hear of gone) hear(exit);
}

/** This tab among others, until it is loaded anew. */
const TAB = newPersonId();
const holds = new Map<string, Hold>();

function holdFor(exit: string): Hold {
  const known = holds.get(exit);
  if (known) return known;
  const made = holdOf(exit, {
    tab: TAB,
    link: linkOf<HoldMessage>(`${exit}-hold`),
    locks: (navigator as Partial<Pick<Navigator, 'locks'>>).locks,
    wait: async (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    letGo: async () => (await runs.get(exit)?.settle()) ?? true,
    lost: () => drop(exit),
  });
  holds.set(exit, made);
  return made;
}

document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'visible') for (const run of runs.values()) run.wake();
});

export interface Start extends Begun {
  readonly people: People;
  readonly room: string;
  readonly inSuit?: number;
  readonly knowingly?: NonNullable<Occasion['knowingly']>;
}

export type Started =
  | { readonly exit: string }
  | { readonly bar: BarId }
  | { readonly wrong: 'text' | 'not-kept' };

let last = 0;
/** Later ones sort later; a second device of the unit makes others. */
function freshExit(): string {
  last = Math.max(Date.now(), last + 1);
  return `x-${last.toString(36)}-${DEVICE.replace(/^d-/, '').slice(0, 4)}`;
}

/** Begins an exit or a drill; what it is made from is kept before anything is recorded. */
export async function startExit({ people, room, inSuit, knowingly, ...begun }: Start): Promise<Started> {
  const script = scriptFrom(begun.text, begun.fileName, begun.unit);
  if (!script) return { wrong: 'text' };
  const exit = freshExit();
  const { visit } = begun;
  const at = Date.now();
  const occasion = {
    exit,
    room,
    at,
    by: people.observer,
    ...(visit === undefined ? {} : { visit }),
    ...(inSuit === undefined ? {} : { inSuit }),
    ...(knowingly === undefined ? {} : { knowingly }),
  };
  const first = begin(script, people, begun.mode, occasion);
  if (!first.ok) return { bar: first.bar };
  if (!(await keepBegun(exit, begun))) return { wrong: 'not-kept' };
  // Nobody else knows of it yet.
  holdFor(exit)
    .claim()
    .catch(() => undefined);
  keepRun([first.state, first.effects]);
  return { exit };
}

export async function exitsNow(): Promise<ExitsState> {
  const store = await book.store();
  return (await show(exitsView, { journal: store, snapshots: store.snapshots })).state;
}

export async function headOfExit(exit: string): Promise<ExitHead | undefined> {
  const exits = await exitsNow();
  return Object.hasOwn(exits, exit) ? exits[exit] : undefined;
}

export const recordedOf = async (head: ExitHead): Promise<readonly Recorded[]> =>
  entriesOf(await book.store(), head, (await begunOf(head.exit))?.visit);

/** Why an exit of the journal cannot go on here. */
export type Unopened = 'unknown' | 'not-begun-here' | 'other-lines';

/** An exit as its entries leave it; needs what it was made from, which only the browser has that began it. */
export async function replayed(exit: string): Promise<State | Unopened> {
  const head = await headOfExit(exit);
  if (!head) return 'unknown';
  const begun = await begunOf(exit);
  const script = begun && scriptFrom(begun.text, begun.fileName, begun.unit);
  if (!begun || !script) return 'not-begun-here';
  const { mode } = begun;
  try {
    const approved = mode.approval !== undefined && mode.approval.content === head.content;
    return replay(script, await recordedOf(head), approved);
  } catch {
    return 'other-lines';
  }
}

/** Another tab of this browser runs it. */
export type Opened = Run | Unopened | 'elsewhere';

const opening = new Map<string, Promise<Opened>>();

async function reopened(exit: string): Promise<Opened> {
  if (!(await holdFor(exit).claim())) return 'elsewhere';
  await log.mark(exit);
  const state = await replayed(exit);
  if (typeof state === 'string') return state;
  return runs.get(exit) ?? keepRun(next(state, { is: 'woke', at: Date.now(), by: null }));
}

/** Somebody said that this tab runs it from now on. */
export async function takeExit(exit: string): Promise<Opened | 'unsaved-elsewhere'> {
  return (await holdFor(exit).take()) === 'unsaved' ? 'unsaved-elsewhere' : openExit(exit);
}

/** The run of this window, or the exit found again in the journal. */
export async function openExit(exit: string): Promise<Opened> {
  const here = runs.get(exit);
  if (here) return here;
  const known = opening.get(exit);
  if (known) return known;
  const found = reopened(exit);
  opening.set(exit, found);
  return found.finally(() => opening.delete(exit));
}
