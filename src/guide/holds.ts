// After which steps reading holds: those whose slips carry most of the chance that anything protected is reached, by the
// check's own importance (Fussell-Vesely over all protected surfaces together). How many get one is judgement
// (`guide.holds`): risk is concentrated in few steps, and a hold after every step would be heeded after none.
import { analyse } from '../check/analysis.ts';
import { eventChances } from '../check/chances.ts';
import { isTangled } from '../check/limits.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Agent } from '../domain/products.ts';
import { contributionsOf } from '../engine/chance.ts';
import { TRUE } from '../engine/diagram.ts';
import { union } from '../engine/walk.ts';
import { evidenceField } from '../evidence/index.ts';

export interface Hold {
  /** Index of the step. */
  readonly step: number;
  /** Place among the steps, 1 for the one that carries most. */
  readonly rank: number;
  /** Share of the importance of all slips that is this step's, 0 to 1; against the agent where it is greater. */
  readonly share: number;
}

/** Per step, the share of its slips in the importance of all. */
function sharesFor(procedure: Procedure, agent: Agent): Float64Array {
  const { compiled, diagram, judged } = analyse(procedure, agent);
  const { events } = compiled.plan;
  const chances = eventChances(events, procedure.policy);
  const shares = new Float64Array(procedure.steps.length);
  // What stands open though nobody slips says nothing of slips.
  const closed = judged.filter((root) => root !== TRUE);
  for (const { event, fussellVesely } of contributionsOf(diagram, union(diagram, closed), chances)) {
    const { kind, step } = events[event] ?? { kind: 'circumstance', step: -1 };
    if (kind === 'slip' && step >= 0) shares[step]! += fussellVesely;
  }
  const all = shares.reduce((sum, share) => sum + share, 0);
  return all > 0 ? shares.map((share) => share / all) : shares;
}

function chosen(shares: readonly number[]): readonly Hold[] {
  const ranked = shares
    .map((share, step) => ({ step, share }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share || a.step - b.step);
  const holds: Hold[] = [];
  let carried = 0;
  for (const { step, share } of ranked) {
    const enough = carried >= evidenceField('guide.holds', 'share');
    if (enough || holds.length >= evidenceField('guide.holds', 'most')) break;
    holds.push({ step, share, rank: holds.length + 1 });
    carried += share;
  }
  return holds.sort((a, b) => a.step - b.step);
}

const HOLDS = new WeakMap<Procedure, readonly Hold[] | undefined>();

function worked(procedure: Procedure): readonly Hold[] | undefined {
  try {
    const each = procedure.agents.map((agent) => sharesFor(procedure, agent));
    return chosen(procedure.steps.map((_, step) => Math.max(0, ...each.map((shares) => shares[step] ?? 0))));
  } catch (error) {
    if (isTangled(error)) return undefined;
    throw error;
  }
}

/** In the order of the steps; undefined where the procedure is too tangled for an exact answer. */
export function holdsOf(procedure: Procedure): readonly Hold[] | undefined {
  if (!HOLDS.has(procedure)) HOLDS.set(procedure, worked(procedure));
  return HOLDS.get(procedure);
}
