// Numbers in English, each with what it rests on.
import type { EvidenceStatus } from '../../evidence/index.ts';
import { percentIn } from '../numbers.ts';

export const STATUS_WORDS: Readonly<Record<EvidenceStatus, string>> = {
  published: 'published',
  'common practice': 'common practice',
  memory: 'from memory',
  judgement: 'judgement',
};

/** '0.8 %', '< 0.0001 %', '100 %'. */
export const percent = percentIn('en', ' ');

export const chanceWords = (chance: number, status: EvidenceStatus): string =>
  `${percent(chance)} (${STATUS_WORDS[status]})`;

/** '0' is an open route, `null` nothing at all. */
export const barrierWords = (barriers: number | null): string =>
  barriers === null ? 'no route found' : barriers === 0 ? '0 (open)' : String(barriers);

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
