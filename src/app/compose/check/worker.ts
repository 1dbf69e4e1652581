// The quick check of drafts in a worker that stays, so that its code is warm when the next edit comes.
import { expose } from 'comlink';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Judged } from '../../check/result.ts';
import { quickCheck } from './quick.ts';

export interface QuickChecker {
  check(draft: Procedure, donning?: string): Promise<Judged>;
}

const checker: QuickChecker = {
  check: (draft, donning) => Promise.resolve(quickCheck(draft, donning)),
};

expose(checker);
