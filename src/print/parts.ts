// A long reading cut into parts that an observer can hold in the head: five to nine steps each, cut where the wearer
// changes zone or posture wherever that can be, otherwise after hands were cleaned. Seven plus or minus two is the old
// rule of thumb for what short memory holds; here it is our judgement of what fits one breath of an exit.
import type { Procedure } from '../domain/procedure.ts';
import type { StepMoment } from './moments.ts';

export const LEAST = 5;
export const MOST = 9;

export interface Part {
  /** Index of the first step, and of the one after the last. */
  readonly from: number;
  readonly to: number;
  /** Where the wearer is, and on what they sit, in the order of the steps; each once while it lasts. */
  readonly stands: readonly Stand[];
}

export interface Stand {
  readonly zone: string;
  readonly seated?: string;
}

function standAt(procedure: Procedure, moment: StepMoment | undefined): Stand {
  const wearer = procedure.people.find(({ role }) => role === 'wearer') ?? procedure.people[0];
  const [before, after] = wearer ? [moment?.before.bodies[wearer.id], moment?.after.bodies[wearer.id]] : [];
  // Who sits down belongs to the sitting, who goes somewhere to the place they leave.
  const seated = before?.seated ?? after?.seated;
  return { zone: before?.zone ?? wearer?.starts ?? '', ...(seated === undefined ? {} : { seated }) };
}

/** How little it suits to begin a part with this step. */
function costOfCut(procedure: Procedure, stands: readonly Stand[], at: number): number {
  const [before, now] = [stands[at - 1], stands[at]];
  if (!before || !now || before.zone !== now.zone) return 0;
  if (before.seated !== now.seated) return 1;
  return procedure.steps[at - 1]?.action === 'sanitise' ? 2 : 4;
}

/** Zone changes that do not begin a part. */
const missed = (stands: readonly Stand[], from: number, to: number): number =>
  stands.slice(from + 1, to).filter((stand, index) => stand.zone !== stands[from + index]?.zone).length * 3;

interface Best {
  readonly cost: number;
  readonly cuts: readonly number[];
}

/** The cheapest cuts: each entry the best way to cut the first `n` steps. */
function cutsOf(procedure: Procedure, stands: readonly Stand[]): readonly number[] {
  const { length } = stands;
  if (length <= MOST) return [0];
  const best: (Best | undefined)[] = [{ cost: 0, cuts: [] }];
  for (let to = 1; to <= length; to += 1) {
    for (let size = LEAST; size <= MOST && size <= to; size += 1) {
      const from = to - size;
      const earlier = best[from];
      if (!earlier) continue;
      const cost = earlier.cost + costOfCut(procedure, stands, from) + missed(stands, from, to);
      const known = best[to];
      if (!known || cost < known.cost) best[to] = { cost, cuts: [...earlier.cuts, from] };
    }
  }
  return best[length]?.cuts ?? [0];
}

const isSame = (one: Stand, other: Stand | undefined): boolean =>
  one.zone === other?.zone && one.seated === other.seated;

/** The parts of a procedure, in order. */
export function partsOf(procedure: Procedure, moments: readonly StepMoment[]): readonly Part[] {
  const stands = procedure.steps.map((_, step) => standAt(procedure, moments[step]));
  if (stands.length === 0) return [];
  const cuts = cutsOf(procedure, stands);
  return cuts.map((from, index) => {
    const to = cuts[index + 1] ?? stands.length;
    const within = stands.slice(from, to);
    return { from, to, stands: within.filter((stand, at) => !isSame(stand, within[at - 1])) };
  });
}
