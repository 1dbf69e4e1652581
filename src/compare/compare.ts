// Two procedures, or two versions of one, side by side: what was checked of each goes in, every difference comes out as
// data. Nothing is judged better or worse here but one thing: whether the second has an error that the first has not.
import type { Analysis } from '../check/analysis.ts';
import type { Finding } from '../check/finding.ts';
import { compile } from '../contacts/interpret.ts';
import type { Procedure } from '../domain/procedure.ts';
import { AGENTS, type Agent } from '../domain/products.ts';
import { alignSteps, type StepRow } from './align.ts';
import { type ClassChange, compareChances, type SurfaceChange } from './chances.ts';
import { compareCosts, type CostChanges } from './costs.ts';
import { compareFindings, type FindingChanges } from './findings.ts';
import { type Gap, gapsOf, matchOf } from './match.ts';

/** What the check made of one procedure (a `Verdict` is one). */
export interface Checked {
  readonly procedure: Procedure;
  readonly agents: readonly Agent[];
  readonly findings: readonly Finding[];
  /** One per agent; none where the procedure could not be worked out exactly. */
  readonly analyses: readonly Analysis[];
}

export interface Comparison {
  readonly agents: readonly Agent[];
  readonly steps: readonly StepRow[];
  readonly findings: FindingChanges;
  readonly surfaces: readonly SurfaceChange[];
  readonly classes: readonly ClassChange[];
  readonly costs: CostChanges;
  /** What only one of them has, and so cannot be compared. */
  readonly gaps: readonly Gap[];
  /** False where one was not worked out exactly: nothing is said of its surfaces. */
  readonly exact: boolean;
}

/** The agents against which both are to be checked: all that either names. */
export const agentsOfBoth = (a: Procedure, b: Procedure): readonly Agent[] =>
  AGENTS.filter((agent) => a.agents.includes(agent) || b.agents.includes(agent));

const compiledOf = ({ analyses, procedure, agents }: Checked) =>
  analyses[0]?.compiled ?? compile(procedure, agents[0] ?? 'enveloped');

/** Both checked against the same agents. */
export function compareChecked(a: Checked, b: Checked): Comparison {
  const match = matchOf(a.procedure, b.procedure);
  const steps = alignSteps(a.procedure, b.procedure, match);
  const chances = a.analyses.flatMap((analysis) => {
    const other = b.analyses.find(({ agent }) => agent === analysis.agent);
    return other ? [compareChances(analysis, other, match)] : [];
  });
  return {
    agents: a.agents.filter((agent) => b.agents.includes(agent)),
    steps,
    findings: compareFindings(a, b, steps, match),
    surfaces: chances.flatMap(({ surfaces }) => surfaces),
    classes: chances.flatMap(({ classes }) => classes),
    costs: compareCosts(compiledOf(a), compiledOf(b)),
    gaps: gapsOf(a.procedure, b.procedure, match),
    exact: a.analyses.length > 0 && b.analyses.length > 0,
  };
}
