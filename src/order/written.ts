// From the moves found to a procedure that people can read: hygiene named after what it follows, acceptances kept that still
// have their step, and whatever hygiene, look or call changes nothing left out again.
import { cutName, numberedName } from '../domain/lengths.ts';
import { analyse } from '../check/analysis.ts';
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import { scoreBase, scoreTrial } from '../check/mends.ts';
import type { Performed } from '../contacts/interpret.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import type { Arc } from './nodes.ts';
import type { Setting } from './setting.ts';

/** The steps of one move, with the hygiene that follows it. */
export interface Block {
  readonly arc: Arc;
  readonly steps: readonly Step[];
}

/** What an order does by this move: its own steps, and the hygiene that it leaves to the next. */
const performedBy = (arcs: readonly Arc[], at: number): readonly Performed[] => {
  const [arc, next] = [arcs[at], arcs[at + 1]];
  return [...(arc?.performed.slice(arc.owed) ?? []), ...(next?.performed.slice(0, next.owed) ?? [])];
};

function hygieneName({ subjects }: Setting, { draft }: Arc, who: string): string {
  const whose = who === subjects[0]?.id ? '' : `${who}-`;
  if (draft.kind === 'begin') return `rub-${whose}first`;
  return `rub-${whose}after-${draft.name}`;
}

/** The moves with their steps under their lasting names. */
export function blocksOf(setting: Setting, arcs: readonly Arc[]): readonly Block[] {
  const pinned = new Set(setting.pinned);
  const taken = new Set(setting.pinned.map(({ id }) => id));
  const unused = (base: string): string => {
    let id = cutName(base);
    for (let n = 2; taken.has(id); n += 1) id = numberedName(base, n);
    taken.add(id);
    return id;
  };
  return arcs.map((arc, at) => ({
    arc,
    steps: performedBy(arcs, at).map(({ step }) => {
      if (pinned.has(step)) return step;
      const base = step.action === 'sanitise' ? hygieneName(setting, arc, step.who) : step.id;
      return { ...step, id: unused(base) };
    }),
  }));
}

/** The procedure with these steps; acceptances whose step is gone go with it. */
export function withSteps(procedure: Procedure, steps: readonly Step[]): Procedure {
  const ids = new Set(steps.map(({ id }) => id));
  return {
    ...procedure,
    steps,
    accepted: procedure.accepted.filter(({ step }) => step === undefined || ids.has(step)),
  };
}

export const measureOf = (procedure: Procedure, agent: Agent): Measure =>
  scoreBase(analyse(procedure, agent)).measure;

const MAY_GO: readonly Step['action'][] = ['sanitise', 'inspect', 'say'];

/** The first step without which the measure is better. */
function idleStep(procedure: Procedure, agent: Agent, kept: ReadonlySet<Step>): number {
  const analysis = analyse(procedure, agent);
  const { measure } = scoreBase(analysis);
  return procedure.steps.findIndex(
    (step, at) =>
      MAY_GO.includes(step.action) &&
      !kept.has(step) &&
      compareMeasures(scoreTrial(analysis, { do: 'remove', at }).measure, measure) < 0,
  );
}

/** Without the steps that only take time, one after the other, until `stop` says so. */
export function withoutIdle(
  procedure: Procedure,
  agent: Agent,
  pinned: readonly Step[],
  stop: () => boolean,
): Procedure {
  const kept = new Set(pinned);
  const without = (now: Procedure): Procedure => {
    const at = stop() ? -1 : idleStep(now, agent, kept);
    return at < 0 ? now : without(withSteps(now, now.steps.toSpliced(at, 1)));
  };
  return without(procedure);
}
