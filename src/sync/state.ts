// Where a device stands with its unit's server. All of it can be found out again by asking: what is kept between two starts
// (src/sync/exchange.ts) saves time, never truth. A device has its own chain and the server only adds, so nothing can conflict.
import type { ProblemCode, Todo } from '../api/problems.ts';
import type { Runs } from './places.ts';

/** Something that the server, or the journal here, would not take. */
export interface Refused {
  readonly code: ProblemCode;
  readonly todo: Todo;
  /** Number of the entry in this device's chain, where it is about one. */
  readonly number: number | undefined;
  /** Nothing goes either way, or only nothing out. */
  readonly stops: 'all' | 'sending';
}

export interface SyncState {
  /** The server has this device's entries up to this number. */
  readonly acknowledged: number;
  /** Which entry of which device stands at each of the server's places. */
  readonly runs: Runs;
  /** The server's place to read on from. */
  readonly next: number;
  /** Whether the server has answered since the start or the last failure. */
  readonly met: boolean;
  /** Whether there may be something to read. */
  readonly more: boolean;
  /** Entries in one request, at most; fewer after one was refused, so that those before it arrive. */
  readonly most: number;
  readonly failures: number;
  /** Nothing is tried before, in milliseconds of this device's clock. */
  readonly until: number;
  /** Whether the server asked to wait so long: then nothing hurries it. */
  readonly asked: boolean;
  /** Nothing is sent before. */
  readonly sendAfter: number;
  readonly refused: Refused | undefined;
  /** This device's clock minus the server's when it last answered, in milliseconds. */
  readonly offset: number | null;
  /** When the server last answered, by this device's clock. */
  readonly answeredAt: number | undefined;
}

/** Entries in one request; the server takes more (src/api/shapes/entries.ts). The house's own choice. */
export const USUAL_BATCH = 100;

export const START_STATE: SyncState = {
  acknowledged: 0,
  runs: [],
  next: 1,
  met: false,
  more: true,
  most: USUAL_BATCH,
  failures: 0,
  until: 0,
  asked: false,
  sendAfter: 0,
  refused: undefined,
  offset: null,
  answeredAt: undefined,
};
