// What a person is told of the exchange with the server: everything is there, so many entries wait and since when, or
// something was refused. An entry counts as sent when the server has said that it is stored durably, not before.
import type { Refused, SyncState } from './state.ts';

export type Status =
  | { readonly is: 'sent'; readonly answeredAt: number | undefined; readonly reached: boolean }
  | { readonly is: 'waiting'; readonly count: number; readonly reached: boolean }
  | { readonly is: 'refused'; readonly count: number; readonly refused: Refused };

/** Entries that do not get through; 0 where all are there or on their way. */
export const heldBack = (status: Status): number =>
  status.is === 'refused' || (status.is === 'waiting' && !status.reached) ? status.count : 0;

/** `written`: number of the last entry of this device's own chain here. */
export function statusOf(state: SyncState, written: number): Status {
  const count = Math.max(0, written - state.acknowledged);
  const { refused, failures, answeredAt } = state;
  if (refused) return { is: 'refused', count, refused };
  const reached = failures === 0 && answeredAt !== undefined;
  return count > 0 || answeredAt === undefined
    ? { is: 'waiting', count, reached }
    : { is: 'sent', answeredAt, reached };
}
