// The search in a worker of its own: it is ended from outside when nobody waits for it any more.
import { expose } from 'comlink';
import { coverage } from '../../check/coverage.ts';
import { compile } from '../../contacts/interpret.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Agent } from '../../domain/products.ts';
import { searchOrder } from '../../order/index.ts';
import { substitute, type Substitution } from '../../order/substitute.ts';
import { measureOf } from '../../order/written.ts';
import type { Aside, Limits, Searcher } from './result.ts';

const asidesOf = (before: Procedure, after: Procedure, searched: Agent): readonly Aside[] =>
  before.agents
    .filter((agent) => agent !== searched)
    .map((agent) => ({ agent, before: measureOf(before, agent), after: measureOf(after, agent) }));

const leavesOn = (procedure: Procedure, agent: Agent): boolean =>
  coverage(compile(procedure, agent)).some(({ code }) => code === 'coverage.left-on');

function swapped(
  procedure: Procedure,
  from: string,
  to: string,
  { agent, milliseconds }: Limits,
): Substitution | undefined {
  try {
    return substitute(procedure, from, to, { agent, milliseconds });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const searcher: Searcher = {
  order: (procedure, limits) => {
    const result = searchOrder(procedure, limits);
    return Promise.resolve({
      result,
      asides: asidesOf(procedure, result.procedure, limits.agent),
      incomplete: leavesOn(procedure, limits.agent),
    });
  },
  swap: (procedure, from, to, limits) => {
    const done = swapped(procedure, from, to, limits);
    return Promise.resolve(done && { done, asides: asidesOf(procedure, done.procedure, limits.agent) });
  },
};

expose(searcher);
