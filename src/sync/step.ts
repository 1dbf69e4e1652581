// What to do next, from where the device stands alone: ask the server how it stands, send, read, or wait. The device's own
// entries go first: they exist nowhere else.
import type { SyncState } from './state.ts';

export type Step =
  | { readonly do: 'ask' }
  | { readonly do: 'send'; readonly from: number; readonly most: number }
  | { readonly do: 'read'; readonly from: number }
  | { readonly do: 'wait'; readonly until: number };

/** So often the server is asked for what other devices sent. The house's own choice. */
const LOOK_EVERY_MS = 30_000;

/** `written`: number of the last entry of this device's own chain here. */
export function nextStep(state: SyncState, written: number, now: number): Step {
  if (now < state.until) return { do: 'wait', until: state.until };
  if (!state.met) return { do: 'ask' };
  // The last place is read again, to see that it is still the same journal.
  const read = { do: 'read', from: Math.max(1, state.next - 1) } as const;
  // The server has entries of this device that are not here: it lost them, and gets them back before it sends.
  if (state.acknowledged > written && state.more) return read;
  const unsent = state.acknowledged < written;
  if (unsent && now >= state.sendAfter) return { do: 'send', from: state.acknowledged + 1, most: state.most };
  if (state.more) return read;
  const look = (state.answeredAt ?? now) + LOOK_EVERY_MS;
  const until = unsent ? Math.min(look, state.sendAfter) : look;
  return until > now ? { do: 'wait', until } : read;
}
