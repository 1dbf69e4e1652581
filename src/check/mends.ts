// Mends: candidate edits, each tried, the ones that help kept with what they change. A mend must take the finding away or
// put more slips between it and its surface, and must not make anything impossible or open a route elsewhere.
import type { Compiled } from '../contacts/interpret.ts';
import { departures } from '../practice/index.ts';
import type { Analysis } from './analysis.ts';
import { candidatesFor } from './candidates.ts';
import { coverage } from './coverage.ts';
import type { Edit } from './edit.ts';
import { isTangled, type Limit, LIMITS, TRIAL_COST, within } from './limits.ts';
import type { Finding, FindingKind, Measure, Mend } from './finding.ts';
import { compareMeasures } from './measure.ts';
import { type Score, scoreOf, type Tables, tablesOf } from './score.ts';
import { tryEdit, type Trial } from './trial.ts';

/** The trial as something that practice can be checked on. */
function asCompiled(analysis: Analysis, trial: Trial): Compiled {
  return {
    ...analysis.compiled,
    procedure: trial.procedure,
    plan: trial.plan,
    performed: trial.performed,
    problems: trial.performed.flatMap((result) => result.problems),
  };
}

/** Places bare and items left on or open that must be mended: a way out that skips a removal is none. */
const uncoveredIn = (compiled: Compiled): ReadonlySet<string> =>
  new Set(
    coverage(compiled)
      .filter(({ severity }) => severity === 'error')
      .map(({ code, surface, params }) => `${code} ${surface ?? `${params.person} ${params.item}`}`),
  );

interface Tried {
  readonly score: Score;
  /** Worked out when first asked for: most edits are no mend by then. */
  readonly uncovered: () => ReadonlySet<string>;
}

/** `tables`: what is known of the analysis' diagram, which must have forgotten nothing since. */
function tryOut(analysis: Analysis, edit: Edit, tables?: Tables): Tried {
  const trial = tryEdit(analysis, edit);
  const compiled = asCompiled(analysis, trial);
  const score = scoreOf({
    procedure: trial.procedure,
    surfaces: trial.plan.surfaces,
    events: trial.plan.events,
    performed: trial.performed,
    departures: departures(compiled),
    diagram: analysis.diagram,
    judged: trial.judged,
    ...(tables ? { tables } : {}),
  });
  let known: ReadonlySet<string> | undefined;
  return { score, uncovered: () => (known ??= uncoveredIn(compiled)) };
}

export const scoreTrial = (analysis: Analysis, edit: Edit): Score => tryOut(analysis, edit).score;

export function scoreBase(analysis: Analysis): Score {
  const { compiled } = analysis;
  const judged = new Int32Array(compiled.plan.surfaces.length);
  analysis.protectedSurfaces.forEach((surface, at) => {
    judged[surface] = analysis.judged[at] ?? 0;
  });
  return scoreOf({
    procedure: compiled.procedure,
    surfaces: compiled.plan.surfaces,
    events: compiled.plan.events,
    performed: compiled.performed,
    departures: departures(compiled),
    diagram: analysis.diagram,
    judged,
  });
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Whether the finding's own trouble is less: its key gone, or its surface further from the outside. */
function helps(finding: Finding, before: Score, after: Score, stepId: string): boolean {
  if (finding.kind === 'impossible' || finding.kind === 'practice') {
    return before.keys.has(`${finding.code} ${stepId}`) && !after.keys.has(`${finding.code} ${stepId}`);
  }
  const surface = finding.surface ?? '';
  if (finding.kind === 'one-slip') return !after.reaches(surface, finding.events);
  const freed = (id: string): boolean =>
    (after.barriers.get(id) ?? Infinity) > (before.barriers.get(id) ?? Infinity);
  return finding.surfaces.every(freed);
}

/** New faults of the grade that must be mended rule an edit out; a new way to slip is shown with it. */
const FAULT = /^(?:impossible|open|practice)\./;

const harms = (before: Score, after: Score): boolean =>
  compareFaults(before.measure, after.measure) ||
  [...after.keys].some((key) => FAULT.test(key) && !before.keys.has(key));

/** What goes in beside the steps there are takes nothing off; only a walk could show somebody bare. */
const canUncover = (edit: Edit): boolean =>
  edit.do !== 'insert' || edit.steps.some(({ action }) => action === 'move');

const uncovers = (before: ReadonlySet<string>, edit: Edit, { uncovered }: Tried): boolean =>
  canUncover(edit) && [...uncovered()].some((key) => !before.has(key));

const compareFaults = (before: Measure, after: Measure): boolean =>
  after.impossible > before.impossible || sum(after.open) > sum(before.open);

const difference = (a: ReadonlySet<string>, b: ReadonlySet<string>): readonly string[] =>
  [...a].filter((key) => !b.has(key));

/** A surface that stood open before needs no slip then, so what reaches it now is not new. */
function newSlips(before: Score, after: Score): readonly string[] {
  const known = before.alone();
  return [...after.alone()].filter(
    (key) => !known.has(key) && before.barriers.get(key.split(' ')[1] ?? '') !== 0,
  );
}

function mendOf(finding: Finding, edit: Edit, before: Score, after: Score): Mend {
  const surface = finding.surface;
  const opened = newSlips(before, after);
  return {
    edit,
    before: before.measure,
    after: after.measure,
    gone: difference(before.keys, after.keys),
    added: difference(after.keys, before.keys),
    ...(opened.length > 0 ? { newSlips: opened } : {}),
    ...(surface !== undefined && before.barriers.has(surface)
      ? {
          barriers: {
            before: before.barriers.get(surface) ?? null,
            after: after.barriers.get(surface) ?? null,
          },
        }
      : {}),
  };
}

const MOST_MENDS = 3;
const MENDABLE: ReadonlySet<FindingKind> = new Set(['open', 'one-slip', 'practice', 'impossible']);

/** What was open and is now one slip away is a gain, not a new route. */
const newRoutes = ({ gone, added }: Mend): number =>
  added.filter((key) => !gone.includes(key.replace('one-slip.', 'open.'))).length;

const slipCount = (mend: Mend): number => mend.newSlips?.length ?? 0;

/** Fewer new ways to slip first, then fewer places with one, then the better measure. */
function byWorth(a: Mend, b: Mend): number {
  return slipCount(a) - slipCount(b) || newRoutes(a) - newRoutes(b) || compareMeasures(a.after, b.after);
}

export interface Mended {
  readonly findings: readonly Finding[];
  readonly limits: readonly Limit[];
}

/** What one trial costs beside the pairs it needs: every step is asked about practice, every surface judged. */
function charge({ compiled, diagram }: Analysis): void {
  const { steps, surfaces } = compiled.plan;
  diagram.spend(steps.length * TRIAL_COST.step + surfaces.length * TRIAL_COST.surface);
}

/** Tries edits once each, while work is allowed. */
function trier(analysis: Analysis): {
  readonly scoreFor: (edit: Edit) => Tried | undefined;
  readonly spent: () => boolean;
} {
  const scores = new Map<string, Tried>();
  const tables = tablesOf(analysis.diagram);
  let spent = false;
  const attempt = (edit: Edit): Tried | undefined => {
    try {
      charge(analysis);
      return tryOut(analysis, edit, tables);
    } catch (error) {
      if (!isTangled(error)) throw error;
      spent = true;
      return undefined;
    }
  };
  return {
    spent: () => spent,
    scoreFor: (edit) => {
      const key = JSON.stringify(edit);
      const known = scores.get(key);
      if (known || spent) return known;
      const score = attempt(edit);
      if (score) scores.set(key, score);
      return score;
    },
  };
}

/** Tries mends for every finding of a kind that can be mended. Edits shared by findings are worked out once. */
export function withMends(analysis: Analysis, findings: readonly Finding[]): Mended {
  const { diagram } = analysis;
  const mark = diagram.count;
  const mended = within(diagram, LIMITS.mendWork, () => tryMends(analysis, findings));
  diagram.rollback(mark);
  return mended;
}

function tryMends(analysis: Analysis, findings: readonly Finding[]): Mended {
  const before = scoreBase(analysis);
  const uncovered = uncoveredIn(analysis.compiled);
  const { scoreFor, spent } = trier(analysis);
  const { procedure, performed } = analysis.compiled;
  const mend = (finding: Finding): Finding => {
    const stepId = procedure.steps[finding.steps[0] ?? 0]?.id ?? '';
    const tried = candidatesFor({ procedure, agent: analysis.agent, performed }, finding).flatMap((edit) => {
      const attempt = scoreFor(edit);
      return attempt ? [{ edit, attempt, after: attempt.score }] : [];
    });
    const mends = tried
      .filter(({ after }) => helps(finding, before, after, stepId) && !harms(before, after))
      .filter(({ edit, attempt }) => !uncovers(uncovered, edit, attempt))
      .map(({ edit, after }) => mendOf(finding, edit, before, after))
      .sort(byWorth)
      .slice(0, MOST_MENDS);
    return { ...finding, mends, tried: tried.length };
  };
  const mended = findings.map((finding) => (MENDABLE.has(finding.kind) ? mend(finding) : finding));
  return { findings: mended, limits: spent() ? [{ code: 'mends', params: {} }] : [] };
}
