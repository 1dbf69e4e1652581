// The measure of a procedure: first that it can be done, then no open route, then the chance of reaching mucosa, skin,
// clothes and the clean side, then departures from practice, then time (design: the order search uses the same).
import type { Technique } from '../domain/techniques/index.ts';
import { evidenceNumber } from '../evidence/index.ts';
import type { Measure } from './finding.ts';

export function secondsOf(techniques: readonly Technique[]): number {
  return techniques.reduce((sum, technique) => sum + evidenceNumber(technique.time), 0);
}

/** Chances closer than this are the same: their last digits come from the order of adding up. */
const SAME = 1e-9;

function compareRows(a: readonly number[], b: readonly number[], same: number): number {
  for (const [index, value] of a.entries()) {
    const difference = value - (b[index] ?? 0);
    if (Math.abs(difference) > same) return difference;
  }
  return 0;
}

/** Negative when `a` is better. */
export function compareMeasures(a: Measure, b: Measure): number {
  return (
    a.impossible - b.impossible ||
    compareRows(a.open, b.open, 0) ||
    compareRows(a.chance, b.chance, SAME) ||
    a.departures - b.departures ||
    a.seconds - b.seconds
  );
}
