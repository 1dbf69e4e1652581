// What each answer makes of where the device stands. A request whose answer was lost may have been carried out: the next
// one finds that out, because the server acknowledges again what it has.
import type { ApiProblem, Todo } from '../api/problems.ts';
import { pauseAfter, REFUSED_MS } from './backoff.ts';
import { type Refused, type SyncState, USUAL_BATCH } from './state.ts';

export interface Moment {
  /** This device's clock, in milliseconds. */
  readonly now: number;
  /** From 0 to below 1. */
  readonly chance: number;
}

/** What the server refused with, as far as it matters here. */
export type Refusal = Pick<ApiProblem, 'code' | 'todo'> &
  Partial<Pick<ApiProblem, 'index' | 'expected' | 'after'>>;

/** No answer, or none of ours. */
export function lost(state: SyncState, { now, chance }: Moment): SyncState {
  const failures = state.failures + 1;
  return { ...state, met: false, failures, asked: false, until: now + pauseAfter(failures, chance) };
}

/** Somebody pressed, came back to the page, or the network is there again: nothing waits that need not. */
export const hurried = (state: SyncState, now: number): SyncState =>
  state.asked
    ? { ...state, more: true }
    : { ...state, more: true, until: Math.min(state.until, now), sendAfter: Math.min(state.sendAfter, now) };

const answered = (state: SyncState, { now }: Moment, offset: number | null): SyncState => ({
  ...state,
  failures: 0,
  asked: false,
  offset: offset ?? state.offset,
  answeredAt: now,
});

/** It told where this device's chain stands there: it may be shorter than it was (a backup restored), or longer. */
export function met(state: SyncState, head: number, offset: number | null, moment: Moment): SyncState {
  const refused = state.refused?.stops === 'all' ? undefined : state.refused;
  return { ...answered(state, moment, offset), met: true, more: true, acknowledged: head, refused };
}

export const sent = (state: SyncState, head: number, offset: number | null, moment: Moment): SyncState => ({
  ...answered(state, moment, offset),
  acknowledged: head,
  more: true,
  most: USUAL_BATCH,
  sendAfter: 0,
  refused: undefined,
});

/** Whoever must do something first: until then neither sending nor reading makes sense. */
const STOPS_ALL: ReadonlySet<Todo> = new Set(['pair-again', 'sign-in', 'change-password']);

function stopped(state: SyncState, refused: Refused, { now }: Moment): SyncState {
  const later = now + REFUSED_MS;
  const wait = refused.stops === 'all' ? { met: false, until: later } : { sendAfter: later };
  return { ...state, failures: 0, asked: false, most: USUAL_BATCH, refused, ...wait };
}

/** The server's journal is not the one that was read: a backup was restored. Ask and read from the beginning. */
export const anew = (state: SyncState): SyncState => ({
  ...state,
  met: false,
  next: 1,
  runs: [],
  more: true,
});

/** Something here contradicts what the server has: nothing is sent over it, and nothing read into it. */
export const contradicted = (state: SyncState, number: number | undefined, moment: Moment): SyncState =>
  stopped(state, { code: 'fork', todo: 'keep-and-tell-lead', number, stops: 'all' }, moment);

/** Any request. `from` is the number of its first entry where it sent some. */
export function refused(
  state: SyncState,
  { code, todo, index, expected, after }: Refusal,
  moment: Moment,
  from?: number,
): SyncState {
  const number = from === undefined || index === undefined ? undefined : from + index;
  if (todo === 'read-from-start') return anew(state);
  if (todo === 'send-from-expected') {
    const acknowledged = Number(expected) - 1;
    // The server asks for what it was sent: something is wrong that only time can mend.
    if (!Number.isSafeInteger(acknowledged) || acknowledged === state.acknowledged)
      return lost(state, moment);
    return { ...state, acknowledged, most: USUAL_BATCH };
  }
  if (todo === 'retry-later' || todo === 'tell-administrator') {
    const waiting = lost(state, moment);
    const problem = todo === 'retry-later' ? undefined : ({ code, todo, number, stops: 'all' } as const);
    const longer = after === undefined ? {} : { until: moment.now + after * 1000, asked: true };
    return { ...waiting, refused: problem ?? state.refused, ...longer };
  }
  // What stands before the refused entry can go.
  if (from !== undefined && index !== undefined && index > 0) return { ...state, most: index };
  if (code === 'too-large' && state.most > 1) return { ...state, most: Math.ceil(state.most / 2) };
  const stops = STOPS_ALL.has(todo) || code === 'device-revoked' || from === undefined ? 'all' : 'sending';
  return stopped(state, { code, todo, number, stops }, moment);
}
