// Numbers in English, each with what it rests on. Two significant digits: the chances behind them hold no more.
import type { EvidenceStatus } from '../../evidence/index.ts';

export const STATUS_WORDS: Readonly<Record<EvidenceStatus, string>> = {
  published: 'published',
  'common practice': 'common practice',
  memory: 'from memory',
  judgement: 'judgement',
};

const digits = new Intl.NumberFormat('en', { maximumSignificantDigits: 2, useGrouping: false });
const SMALLEST = 0.000_1;

/** '0.8 %', '< 0.0001 %', '100 %'. */
export function percent(chance: number): string {
  const value = chance * 100;
  if (value === 0) return '0 %';
  if (value < SMALLEST) return '< 0.0001 %';
  return value > 99.5 && value < 100 ? '> 99 %' : `${digits.format(value)} %`;
}

export const chanceWords = (chance: number, status: EvidenceStatus): string =>
  `${percent(chance)} (${STATUS_WORDS[status]})`;

/** '0' is an open route, `null` nothing at all. */
export const barrierWords = (barriers: number | null): string =>
  barriers === null ? 'no route found' : barriers === 0 ? '0 (open)' : String(barriers);

/** '12 min 05 s' */
export function duration(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes === 0 ? `${whole} s` : `${minutes} min ${String(whole % 60).padStart(2, '0')} s`;
}

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
