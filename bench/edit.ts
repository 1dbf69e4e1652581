// How long the worker takes for the first verdict on an edited draft of 100 steps: contacts, conditions, findings with their
// routes, practice, measure and the board that the picture and the ledger are drawn from. No chances of surfaces, mends or
// variants, which follow after a pause. The edits are those that the page makes, another one each time.
import { quickCheck } from '../src/app/compose/check/quick.ts';
import { duplicateSteps, moveSteps, removeSteps, shiftSteps } from '../src/app/compose/model/steps.ts';
import type { Agent } from '../src/domain/products.ts';
import type { Procedure } from '../src/domain/procedure.ts';
import { hundred } from './hundred.ts';
import { type Case, report, timed } from './harness.ts';

/** One edit after the other, each from the unedited draft, walking through its steps. */
function edits(draft: Procedure): () => Procedure {
  let turn = 0;
  const makers = [
    (id: string) => shiftSteps(draft, new Set([id]), 1),
    (id: string) => removeSteps(draft, new Set([id])),
    (id: string) => duplicateSteps(draft, new Set([id])).procedure,
    (id: string) => moveSteps(draft, new Set([id]), draft.steps[0]?.id ?? '', 'before'),
  ];
  return () => {
    turn += 1;
    const step = draft.steps[(turn * 37) % draft.steps.length];
    return makers[turn % makers.length]?.(step?.id ?? '') ?? draft;
  };
}

function caseFor(agents: readonly Agent[]): Case {
  const next = edits({ ...hundred(), agents });
  return {
    name: `100 steps, ${agents.join(' and ')}: an edit to its verdict`,
    work: () => quickCheck(next()),
    goal: 'under one frame, 16.7 ms',
    processor: true,
  };
}

const answer = quickCheck({ ...hundred(), agents: ['enveloped'] });
const crossing: Case = {
  name: '100 steps, enveloped: the answer copied as it goes to the page',
  work: () => structuredClone(answer),
};

report(
  timed([caseFor(['enveloped']), caseFor(['enveloped', 'non-enveloped']), crossing], { warm: 30, runs: 60 }),
);
