// Comparing in a worker of its own: two checks and the draws of every difference.
import { expose } from 'comlink';
import { compareChecked } from '../../compare/compare.ts';
import { AGENTS } from '../../domain/products.ts';
import { type Verified, verify } from '../../verify.ts';
import type { Question } from '../check/result.ts';
import type { Answer, Comparer } from './result.ts';

const checked = ({ text, fileName, donning }: Question, complete: boolean): Verified =>
  verify(text, {
    fileName,
    agents: AGENTS,
    mends: false,
    variants: complete,
    ...(donning === undefined ? {} : { donning }),
  });

function answerOf(a: Question, b: Question, complete: boolean): Answer {
  const [first, second] = [checked(a, complete).verdict, checked(b, complete).verdict];
  if (!first || !second)
    return { broken: [...(first ? [] : (['a'] as const)), ...(second ? [] : (['b'] as const))] };
  return {
    compared: {
      complete,
      a: first.procedure,
      b: second.procedure,
      comparison: compareChecked(first, second),
    },
  };
}

const comparer: Comparer = {
  async compare(a, b, answer) {
    const first = answerOf(a, b, false);
    await Promise.resolve(answer(first));
    if ('compared' in first) await Promise.resolve(answer(answerOf(a, b, true)));
  },
};

expose(comparer);
