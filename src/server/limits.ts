// How often: tries of passwords and codes, and requests as a whole. Counts live in memory, by address or by what was tried;
// a server that starts again starts with none, which a guesser cannot bring about.
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import { Refusal } from './refusal.ts';

interface Limiter {
  /** Counts one, and refuses when it was one too many. */
  readonly count: (key: string) => Promise<void>;
  /** Takes one back: it was no guess. */
  readonly forgive: (key: string) => Promise<void>;
}

function limiter(points: number, seconds: number): Limiter {
  const memory = new RateLimiterMemory({ points, duration: seconds });
  return {
    count: async (key) => {
      try {
        await memory.consume(key);
      } catch (error) {
        if (!(error instanceof RateLimiterRes)) throw error;
        throw new Refusal('too-many', { after: Math.max(1, Math.ceil(error.msBeforeNext / 1000)) });
      }
    },
    forgive: async (key) => void (await memory.reward(key)),
  };
}

interface Gate {
  /** Lets one in, or refuses where so many are in already. What it gives back lets it out. */
  readonly enter: (key: string) => () => void;
}

function gate(most: number): Gate {
  const inside = new Map<string, number>();
  return {
    enter: (key) => {
      const count = (inside.get(key) ?? 0) + 1;
      if (count > most) throw new Refusal('too-many', { after: 2 });
      inside.set(key, count);
      return () => {
        const left = inside.get(key)! - 1;
        if (left > 0) inside.set(key, left);
        else inside.delete(key);
      };
    },
  };
}

export interface Limits {
  /** Tries of a password for one name from one address, and for one name from anywhere. */
  readonly nameHere: Limiter;
  readonly name: Limiter;
  /** Tries of passwords and codes from one address. */
  readonly address: Limiter;
  /** Tries of codes from anywhere. */
  readonly code: Limiter;
  /** Requests of somebody unknown, by address: a ward's tablets may share one. */
  readonly unknown: Limiter;
  /** Requests of one person or device. */
  readonly known: Limiter;
  /** Batches of one device under way at once: it sends one after the other, and some may hang in the network. */
  readonly batches: Gate;
  /** Papers of one person or device. */
  readonly papers: Limiter;
}

const QUARTER = 15 * 60;

/** New counts. The numbers are the house's own: wide for people who mistype, narrow for programs that guess. */
export const newLimits = (): Limits => ({
  nameHere: limiter(10, QUARTER),
  name: limiter(100, QUARTER),
  address: limiter(30, QUARTER),
  code: limiter(100, QUARTER),
  unknown: limiter(600, 60),
  known: limiter(1200, 60),
  batches: gate(4),
  papers: limiter(30, 60),
});

/** Counts a try with every limiter before it is made; what it gives back takes the try back, when it was right. */
export async function counted(tries: readonly (readonly [Limiter, string])[]): Promise<() => Promise<void>> {
  for (const [one, key] of tries) await one.count(key);
  return async () => {
    for (const [one, key] of tries) await one.forgive(key);
  };
}
