// Time for a search, handed out in shares, so that each part of it ends in time for the next. Without a limit nothing ever
// stops by the clock, and the answer is the same on every machine.

export interface Clock {
  /** Asks whether a share (0 to 1) of the time that is left now has passed. */
  part(share: number): () => boolean;
  /** Asks whether all of it has. */
  readonly over: () => boolean;
}

/** A clock for so many milliseconds from now, `Infinity` for no limit. */
export function clockFor(milliseconds: number): Clock {
  const end = Date.now() + milliseconds;
  const over = (): boolean => Date.now() > end;
  return {
    over,
    part(share) {
      const now = Date.now();
      const until = Math.min(end, now + share * Math.max(0, end - now));
      return () => Date.now() > until;
    },
  };
}
