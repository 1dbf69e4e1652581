// From a comparison to the object that `compare --json` prints.
import type { Finding } from '../check/finding.ts';
import { happenedTo, type StepRow } from '../compare/align.ts';
import type { ClassChange, Difference, Figure, SurfaceChange } from '../compare/chances.ts';
import type { Comparison } from '../compare/compare.ts';
import type { SupplyChange } from '../compare/costs.ts';
import { weakestOf } from '../costing/grounds.ts';
import { supplyKey } from '../costing/supply.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Verdict } from '../verify.ts';
import { CAUTIONS, CHANCE_STATUS, type Words } from '../words/index.ts';
import { COMPARE_FORMAT, type CompareReport } from './compareSchema.ts';
import { quantityReport, spellReport } from './costReport.ts';
import type { Subject } from './subject.ts';
import { VERSION } from './version.ts';

export interface Compared {
  readonly a: Verdict;
  readonly b: Verdict;
  readonly comparison: Comparison;
}

const numbered = (index: number | null): number | null => (index === null ? null : index + 1);

const stepReport = (words: Words, { a, b }: Compared, row: StepRow): CompareReport['steps'][number] => ({
  what: happenedTo(row),
  a: numbered(row.a),
  b: numbered(row.b),
  by: row.by,
  changed: [...row.changed],
  sentence: words.compare.step(a.procedure, b.procedure, row),
});

function findingReport(words: Words, procedure: Procedure, finding: Finding, noLongerOpen = false) {
  return {
    code: finding.code,
    severity: finding.severity,
    kind: finding.kind,
    title: words.finding(procedure, finding).title,
    step: (finding.steps[0] ?? -1) + 1,
    surface: finding.surface ?? null,
    agent: finding.agent ?? null,
    noLongerOpen,
  };
}

const figureReport = (figure: Figure | undefined): CompareReport['classes'][number]['chanceA'] =>
  figure ? { chance: figure.chance, interval: [figure.interval.low, figure.interval.high] } : null;

function differenceReport(
  words: Words,
  difference: Difference | undefined,
): CompareReport['classes'][number]['difference'] {
  if (!difference) return null;
  const { chance, interval, excludesZero } = difference;
  return {
    chance,
    interval: [interval.low, interval.high],
    excludesZero,
    sentence: words.compare.chance({ value: chance, interval, excludesZero, status: CHANCE_STATUS }),
  };
}

const surfaceReport = (
  words: Words,
  { a, b }: Compared,
  change: SurfaceChange,
): CompareReport['surfaces'][number] => ({
  a: change.a ?? null,
  b: change.b ?? null,
  name:
    change.b === undefined
      ? words.surface(a.procedure, change.a ?? '')
      : words.surface(b.procedure, change.b),
  class: change.class,
  agent: change.agent,
  barriersA: change.barriersA ?? null,
  barriersB: change.barriersB ?? null,
  chanceA: figureReport(change.figureA),
  chanceB: figureReport(change.figureB),
  difference: differenceReport(words, change.difference),
  status: CHANCE_STATUS,
});

const classReport = (words: Words, change: ClassChange): CompareReport['classes'][number] => ({
  classes: [...change.classes],
  agent: change.agent,
  chanceA: figureReport(change.figureA),
  chanceB: figureReport(change.figureB),
  difference: differenceReport(words, change.difference),
  status: CHANCE_STATUS,
});

function timeReport(words: Words, { costs }: Comparison): CompareReport['time'] {
  const status = weakestOf([...costs.a.evidence.times, ...costs.b.evidence.times]);
  const { seconds, interval, excludesZero } = costs.time;
  return {
    a: spellReport(costs.a.run, status),
    b: spellReport(costs.b.run, status),
    difference: {
      seconds,
      interval: [interval.low, interval.high],
      excludesZero,
      sentence: words.compare.time({ value: seconds, interval, excludesZero, status }),
    },
  };
}

const supplyReport = (words: Words, change: SupplyChange): CompareReport['supplies'][number] => ({
  name: words.compare.supply(change.supply),
  key: supplyKey(change.supply),
  a: quantityReport(change.a),
  b: quantityReport(change.b),
  millilitresA: change.millilitresA ?? null,
  millilitresB: change.millilitresB ?? null,
});

function sideReport({ file }: Subject, { procedure, hash }: Verdict): NonNullable<CompareReport['a']> {
  const { title, kind, version, invented, steps } = procedure;
  return { file, title, kind, version, invented, hash, steps: steps.length };
}

/** What is said when one of the two cannot be read. */
export const unreadComparison = (subjects: readonly Subject[]): CompareReport => ({
  format: COMPARE_FORMAT,
  version: VERSION,
  status: 2,
  a: null,
  b: null,
  agents: [],
  steps: [],
  findings: { gone: [], new: [], newErrors: [], kept: 0 },
  surfaces: [],
  classes: [],
  time: null,
  supplies: [],
  incomparable: [],
  exact: false,
  diagnostics: subjects.flatMap(({ complaints }) => complaints),
  cautions: [...CAUTIONS],
});

export function compareReportOf(
  words: Words,
  subjects: readonly [Subject, Subject],
  compared: Compared,
  status: 0 | 1 | 2,
): CompareReport {
  const { a, b, comparison } = compared;
  const { gone, gained, newErrors, kept, noLongerOpen } = comparison.findings;
  const inB = (one: Finding) => findingReport(words, b.procedure, one, noLongerOpen.includes(one));
  return {
    ...unreadComparison(subjects),
    status,
    a: sideReport(subjects[0], a),
    b: sideReport(subjects[1], b),
    agents: [...comparison.agents],
    steps: comparison.steps.map((row) => stepReport(words, compared, row)),
    findings: {
      gone: gone.map((one) => findingReport(words, a.procedure, one)),
      new: gained.map(inB),
      newErrors: newErrors.map(inB),
      kept: kept.length,
    },
    surfaces: comparison.surfaces.map((change) => surfaceReport(words, compared, change)),
    classes: comparison.classes.map((change) => classReport(words, change)),
    time: timeReport(words, comparison),
    supplies: comparison.costs.supplies.map((change) => supplyReport(words, change)),
    incomparable: comparison.gaps.map((gap) => words.compare.gap(a.procedure, b.procedure, gap)),
    exact: comparison.exact,
  };
}
