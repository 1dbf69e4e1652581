// Seeded random numbers: sfc32 (Doty-Humphrey, PractRand), one stream per seed and name, so that a prior draws the
// same values whatever else is drawn: two plans compared on the same seed differ by their plans alone.

import type { Distribution } from './distributions.ts';
import { sigmaOf } from './distributions.ts';
import { normalQuantile } from './special.ts';

/** Next value, above 0 and below 1. */
export type Random = () => number;

/** The stream of a seed and a name. */
export function randomOf(seed: number, name: string): Random {
  let [a, b, c, d] = [hashed(seed, name), seed | 0, 0x9e3779b9 | 0, 1];
  const next = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return ((t >>> 0) + 0.5) / 2 ** 32;
  };
  for (let i = 0; i < 16; i++) next();
  return next;
}

/** FNV-1a over the name, begun with the seed. */
function hashed(seed: number, name: string): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const letter of name) hash = Math.imul(hash ^ letter.codePointAt(0)!, 0x01000193);
  return hash;
}

/** This many draws from a distribution. */
export function sample(distribution: Distribution, random: Random, count: number): Float64Array {
  const column = new Float64Array(count);
  if (distribution.kind === 'fixed') return column.fill(distribution.value);
  if (distribution.kind === 'beta') {
    return column.map(() => betaDraw(distribution.alpha, distribution.beta, random));
  }
  const spread = sigmaOf(distribution.errorFactor);
  const mu = Math.log(distribution.median);
  return column.map(() => Math.min(1, Math.exp(mu + spread * normalQuantile(random()))));
}

/** Two gammas; on the log scale, for shapes far below 1 would end in 0 / 0. */
function betaDraw(alpha: number, beta: number, random: Random): number {
  const difference = logGammaDraw(beta, random) - logGammaDraw(alpha, random);
  return 1 / (1 + Math.exp(difference));
}

/** Logarithm of a gamma of this shape (Marsaglia and Tsang 2000, ACM Trans Math Softw 26:363). */
function logGammaDraw(shape: number, random: Random): number {
  if (shape < 1) return logGammaDraw(shape + 1, random) + Math.log(random()) / shape;
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalQuantile(random());
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(random()) < (x * x) / 2 + d * (1 - v + Math.log(v))) return Math.log(d * v);
  }
}
