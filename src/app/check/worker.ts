// The check in a worker of its own, so that the page never waits for it.
import { expose } from 'comlink';
import { costOfProcedure } from '../../costing/cost.ts';
import { AGENTS } from '../../domain/products.ts';
import { verify, type VerifyOptions } from '../../verify.ts';
import { boardOf } from '../model/board.ts';
import type { Checker, Question, Result } from './result.ts';

function resultOf({ text, fileName, donning }: Question, complete: boolean): Result {
  const options: VerifyOptions = {
    fileName,
    agents: AGENTS,
    mends: complete,
    variants: complete,
    ...(donning === undefined ? {} : { donning }),
  };
  const { read, verdict } = verify(text, options);
  const { diagnostics, positions } = read;
  const base = { complete, diagnostics, steps: positions.steps };
  if (!verdict) return { ...base, complete: true };
  const { procedure, hash, findings, surfaces, measures, analyses, limits } = verdict;
  const boards = analyses.map(({ compiled, conditions }) => boardOf(compiled, conditions));
  // What could not be worked out the first time is not tried a second time.
  const undone = limits.some(({ code }) => code === 'exact');
  return {
    ...base,
    complete: complete || undone,
    judged: {
      procedure,
      hash,
      boards,
      findings,
      surfaces,
      measures,
      limits,
      cost: costOfProcedure(procedure),
    },
  };
}

const checker: Checker = {
  async check(question, answer) {
    const first = resultOf(question, false);
    await Promise.resolve(answer(first));
    if (!first.complete) await Promise.resolve(answer(resultOf(question, true)));
  },
};

expose(checker);
