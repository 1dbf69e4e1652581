// The interval of every chance, from the uncertainty of the slips' chances: posterior draws through the diagram. Slips
// that share an evidence record share its draw, so what we do not know is not averaged away.
import type { Diagram, Node } from '../engine/diagram.ts';
import { type Draws, drawChances } from '../engine/draws.ts';
import { reachable } from '../engine/walk.ts';
import type { Analysis } from './analysis.ts';
import { catchSetting, distributionOf } from './chances.ts';
import type { Interval } from './finding.ts';
import { LIMITS } from './limits.ts';

/** Draws behind every interval shown. */
export const DRAWS = 10_000;
const FEWEST_DRAWS = 1000;
/** Fixed, so that the same procedure shows the same interval, and two procedures are compared on the same draws. */
export const SEED = 20_261_125;

/** As many draws as usual, fewer for conditions of a hundred thousand nodes and more. */
function drawsFor(diagram: Diagram, roots: readonly Node[]): number {
  const nodes = Math.max(1, reachable(diagram, roots).length);
  return Math.min(DRAWS, Math.max(FEWEST_DRAWS, Math.floor(LIMITS.blends / nodes)));
}

/** 90 % interval per protected surface, in the analysis' order. */
export function drawnIntervals(analysis: Analysis): readonly Interval[] {
  const { compiled, diagram, judged } = analysis;
  const draws: Draws = drawChances({
    diagram,
    roots: judged,
    events: compiled.plan.events,
    distributionOf,
    setting: catchSetting(compiled.procedure.policy),
    draws: drawsFor(diagram, judged),
    seed: SEED,
  });
  return draws.map(({ low, high }) => ({ low, high }));
}
