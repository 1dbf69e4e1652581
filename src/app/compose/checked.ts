// The answer of the check as the writing page shows it: the board against the draft's agents, findings by step.
import { useMemo } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import type { Judged } from '../check/result.ts';
import { type Board, worstOf } from '../model/board.ts';
import { type AgentChoice, type Shown, shownFor } from '../model/findings.ts';
import { type EditCheck, useEditCheck } from './check/useEditCheck.ts';

export interface Checked extends EditCheck {
  /** Whether the answer is about the draft as it stands. */
  readonly current: boolean;
  readonly choice: AgentChoice;
  readonly board: Board | undefined;
  readonly shown: readonly Shown[];
  readonly byStep: ReadonlyMap<string, readonly Shown[]>;
  /** Findings about no step. */
  readonly general: readonly Shown[];
}

const choiceOf = ({ agents }: Pick<Procedure, 'agents'>): AgentChoice =>
  agents.length === 1 && agents[0] ? agents[0] : 'all';

function grouped(judged: Judged | undefined, shown: readonly Shown[]) {
  const byStep = new Map<string, Shown[]>();
  for (const one of shown) {
    const at = one.finding.steps[0];
    const id = at === undefined ? undefined : judged?.procedure.steps[at]?.id;
    if (id !== undefined) byStep.set(id, [...(byStep.get(id) ?? []), one]);
  }
  const beside = new Set([...byStep.values()].flat());
  return { byStep, general: shown.filter((one) => !beside.has(one)) };
}

export function useChecked(id: string, draft: Procedure): Checked {
  const check = useEditCheck(id, draft);
  const { judged } = check;
  return useMemo(() => {
    const choice = choiceOf(draft);
    const boards = judged?.boards.filter((one) => choice === 'all' || one.agents.includes(choice)) ?? [];
    const shown = shownFor(judged?.findings ?? [], choice);
    return {
      ...check,
      current: check.of === draft,
      choice,
      board: worstOf(boards),
      shown,
      ...grouped(judged, shown),
    };
  }, [check, judged, draft]);
}
