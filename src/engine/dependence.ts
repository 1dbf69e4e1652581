// Dependence between two people's failures, in the five levels of THERP (Swain and Guttmann 1983,
// NUREG/CR-1278, equations 10-14 to 10-18). Used for one thing: how likely a slip goes uncaught. The observer is
// never credited by default: whoever asks for a chance says what the observer may catch, and on what ground.

import type { BasicEvent } from '../contacts/plan.ts';
import { evidenceField } from '../evidence/index.ts';

export const DEPENDENCE_LEVELS = ['zero', 'low', 'moderate', 'high', 'complete'] as const;
export type DependenceLevel = (typeof DEPENDENCE_LEVELS)[number];

interface Coefficients {
  readonly constant: number;
  readonly weight: number;
  readonly divisor: number;
}

const coefficients = (level: DependenceLevel): Coefficients => ({
  constant: evidenceField(`dependence.${level}`, 'constant'),
  weight: evidenceField(`dependence.${level}`, 'weight'),
  divisor: evidenceField(`dependence.${level}`, 'divisor'),
});

const BY_LEVEL: Readonly<Record<DependenceLevel, Coefficients>> = {
  zero: coefficients('zero'),
  low: coefficients('low'),
  moderate: coefficients('moderate'),
  high: coefficients('high'),
  complete: coefficients('complete'),
};

/** How the observer's catch is credited; the two chances come from evidence, the level is a judgement. */
export interface CatchSetting {
  /** Chance that the observer misses a visible slip, taken alone. */
  readonly miss: number;
  readonly level: DependenceLevel;
}

/** Chance that the second fails given that the first failed; `own` is its chance taken alone. */
export function givenFailure(level: DependenceLevel, own: number): number {
  const { constant, weight, divisor } = BY_LEVEL[level];
  return (constant + weight * own) / divisor;
}

/** Chance that the second succeeds given that the first did; the same formula over successes. */
export const givenSuccess = (level: DependenceLevel, own: number): number => givenFailure(level, own);

/**
 * Chance that a slip happens and goes uncaught: p * P(observer misses | slip). Only for what the observer
 * can see, and only with a setting; otherwise the slip's own chance.
 */
export function effectiveChance(
  event: Pick<BasicEvent, 'visible'>,
  chance: number,
  setting: CatchSetting | null,
): number {
  return setting === null || !event.visible ? chance : chance * givenFailure(setting.level, setting.miss);
}
