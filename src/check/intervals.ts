// The interval of every chance, from the uncertainty of the slips' chances: posterior draws through the diagram. Slips
// that share an evidence record share its draw, so what we do not know is not averaged away.
import { type Draws, drawChances } from '../engine/draws.ts';
import type { Analysis } from './analysis.ts';
import { catchSetting, distributionOf } from './chances.ts';
import type { Interval } from './finding.ts';

/** Draws behind every interval shown. */
export const DRAWS = 10_000;
/** Fixed, so that the same procedure shows the same interval, and two procedures are compared on the same draws. */
export const SEED = 20_261_125;

/** 90 % interval per protected surface, in the analysis' order. */
export function drawnIntervals(analysis: Analysis): readonly Interval[] {
  const { compiled, diagram, judged } = analysis;
  const draws: Draws = drawChances({
    diagram,
    roots: judged,
    events: compiled.plan.events,
    distributionOf,
    setting: catchSetting(compiled.procedure.policy),
    draws: DRAWS,
    seed: SEED,
  });
  return draws.map(({ low, high }) => ({ low, high }));
}
