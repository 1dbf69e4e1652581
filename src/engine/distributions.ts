// What is known of a chance: a fixed value, a beta, or a lognormal given as handbooks of human reliability give
// it, by median and error factor (95th percentile / median). A lognormal passes 1; it is CAPPED there, min(p, 1), so
// its median and percentiles stay what the source says and the error is to the side of caution. All
// numbers come from the caller's evidence records.

import { betaQuantile, normalCdf, normalQuantile } from './special.ts';

export type Distribution =
  | { readonly kind: 'fixed'; readonly value: number }
  | { readonly kind: 'beta'; readonly alpha: number; readonly beta: number }
  | { readonly kind: 'lognormal'; readonly median: number; readonly errorFactor: number };

/** 95th percentile of the standard normal, exact to a double; handbooks round it to 1.645. */
export const Z95 = normalQuantile(0.95);

/** Spread of a lognormal on the log scale. */
export const sigmaOf = (errorFactor: number): number => Math.log(errorFactor) / Z95;

/** Mean of the lognormal as it stands, not capped: the handbooks' formula. */
export const uncappedMean = (median: number, errorFactor: number): number =>
  median * Math.exp(sigmaOf(errorFactor) ** 2 / 2);

/** Mean chance, 0 to 1. */
export function mean(distribution: Distribution): number {
  if (distribution.kind === 'fixed') return distribution.value;
  if (distribution.kind === 'lognormal') return cappedMean(distribution.median, distribution.errorFactor);
  return distribution.alpha / (distribution.alpha + distribution.beta);
}

/** The chance below which it lies with probability p. */
export function quantile(distribution: Distribution, p: number): number {
  if (distribution.kind === 'fixed') return distribution.value;
  if (distribution.kind === 'beta') return betaQuantile(p, distribution.alpha, distribution.beta);
  const spread = sigmaOf(distribution.errorFactor);
  return Math.min(1, distribution.median * Math.exp(spread * normalQuantile(p)));
}

/** A beta after `failures` in `trials` more opportunities. */
export function updated(
  prior: Extract<Distribution, { kind: 'beta' }>,
  failures: number,
  trials: number,
): Extract<Distribution, { kind: 'beta' }> {
  if (failures < 0 || failures > trials) throw new RangeError(`${failures} of ${trials}`);
  return { kind: 'beta', alpha: prior.alpha + failures, beta: prior.beta + trials - failures };
}

/** E[min(X, 1)]: what lies below 1 as it is, what lies above as 1. */
function cappedMean(median: number, errorFactor: number): number {
  const spread = sigmaOf(errorFactor);
  const mu = Math.log(median);
  if (spread === 0) return Math.min(1, median);
  const below = uncappedMean(median, errorFactor) * normalCdf(-mu / spread - spread);
  return below + normalCdf(mu / spread);
}
