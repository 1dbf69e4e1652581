// Why each move of an order stands where and as it does: the alternative is made and checked. The next move first, another
// technique, with or without help, without the hygiene: each with the figure that it changes, or what makes it
// impossible.
import { analyse, type Analysis } from '../check/analysis.ts';
import type { Edit } from '../check/edit.ts';
import type { Measure } from '../check/finding.ts';
import { compareMeasures } from '../check/measure.ts';
import { scoreBase, scoreTrial } from '../check/mends.ts';
import { tryEdit } from '../check/trial.ts';
import { compile } from '../contacts/interpret.ts';
import type { Problem } from '../contacts/problem.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { techniquesFor, type TechniqueId } from '../domain/techniques/index.ts';
import { Tangled } from '../engine/nodeTable.ts';
import { departures } from '../practice/index.ts';
import { type Difference, firstDifference } from './figures.ts';
import type { Setting } from './setting.ts';
import { type Block, withSteps } from './written.ts';

export const CHOICE_KINDS = ['order', 'technique', 'helper', 'hygiene'] as const;
export type ChoiceKind = (typeof CHOICE_KINDS)[number];

/** What the alternative comes to. */
export const OUTCOMES = ['worse', 'impossible', 'departs', 'same', 'better'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export interface Choice {
  readonly kind: ChoiceKind;
  /** Id of the step it is about, in the order found. */
  readonly step: string;
  /** The alternative: id of the step that would go first, a technique, a person or `nobody`; empty for hygiene left out. */
  readonly instead: string;
  readonly outcome: Outcome;
  /** The weightiest figure that it changes. */
  readonly difference?: Difference;
  /** What the alternative cannot do. */
  readonly problem?: Problem;
  /** The practice rule that it would depart from and the order found does not. */
  readonly rule?: string;
}

interface Judged {
  readonly measure: Measure;
  readonly problem?: Problem;
  readonly rules: readonly string[];
}

interface Base {
  readonly setting: Setting;
  readonly analysis: Analysis;
  readonly measure: Measure;
  readonly rules: readonly string[];
  stop(): boolean;
}

const procedureOf = ({ analysis }: Base): Procedure => analysis.compiled.procedure;

function tried(base: Base, edit: Edit): Judged {
  const trial = tryEdit(base.analysis, edit);
  const problem = trial.performed.flatMap(({ problems }) => problems)[0];
  const compiled = { ...base.analysis.compiled, ...trial, problems: [] };
  return {
    measure: scoreTrial(base.analysis, edit).measure,
    ...(problem ? { problem } : {}),
    rules: departures(compiled).map(({ rule }) => rule),
  };
}

function whole(base: Base, steps: readonly Step[]): Judged {
  const procedure = withSteps(procedureOf(base), steps);
  const compiled = compile(procedure, base.setting.agent);
  const [problem] = compiled.problems;
  if (problem) return { measure: base.measure, problem, rules: [] };
  return {
    measure: scoreBase(analyse(procedure, base.setting.agent)).measure,
    rules: departures(compiled).map(({ rule }) => rule),
  };
}

const count = (rules: readonly string[], rule: string): number => rules.filter((one) => one === rule).length;

function judged(
  base: Base,
  about: Pick<Choice, 'kind' | 'step' | 'instead'>,
  { measure, problem, rules }: Judged,
): Choice {
  if (problem) return { ...about, outcome: 'impossible', problem };
  const order = compareMeasures(base.measure, measure);
  const difference = firstDifference(base.measure, measure);
  const shown = difference ? { difference } : {};
  if (order < 0) return { ...about, outcome: 'worse', ...shown };
  const { allowed } = base.setting;
  const rule = rules.find((one) => allowed?.has(one) === false && count(rules, one) > count(base.rules, one));
  if (rule !== undefined) return { ...about, outcome: 'departs', rule, ...shown };
  return { ...about, outcome: order === 0 ? 'same' : 'better', ...shown };
}

const MOVES: ReadonlySet<string> = new Set(['off', 'open', 'change', 'wipe', 'walk']);

/** The step that gives a move its name: not the seat, not the hygiene. */
const mainOf = ({ steps }: Block): Step | undefined =>
  steps.find(({ action }) => ['remove', 'unfasten', 'wipe', 'move'].includes(action));

/** The next move first. */
function orders(base: Base, blocks: readonly Block[]): readonly Choice[] {
  return blocks.flatMap((block, at) => {
    if (base.stop()) return [];
    const next = blocks[at + 1];
    const [step, other] = [mainOf(block), next && mainOf(next)];
    if (!next || !step || !other || !MOVES.has(block.arc.draft.kind) || !MOVES.has(next.arc.draft.kind))
      return [];
    const swapped = [...blocks.slice(0, at), next, block, ...blocks.slice(at + 2)];
    const steps = swapped.flatMap((one) => one.steps);
    return [judged(base, { kind: 'order', step: step.id, instead: other.id }, whole(base, steps))];
  });
}

function techniques(base: Base, step: Step, at: number): readonly Choice[] {
  return techniquesFor(step.action, step.items)
    .filter(({ id }) => id !== step.technique && id !== 'peel-one')
    .filter(() => !base.stop())
    .map(({ id }) => {
      const edit: Edit = { do: 'replace', at, step: { ...step, technique: id as TechniqueId } };
      return judged(base, { kind: 'technique', step: step.id, instead: id }, tried(base, edit));
    });
}

function helping(base: Base, step: Step, at: number): readonly Choice[] {
  const { helper, ...alone } = step;
  const others = helper === undefined ? [] : [{ instead: 'nobody', step: alone }];
  return others.map(({ instead, step: other }) =>
    judged(base, { kind: 'helper', step: step.id, instead }, tried(base, { do: 'replace', at, step: other })),
  );
}

function perStep(base: Base, step: Step, at: number): readonly Choice[] {
  if (base.stop()) return [];
  if (step.action === 'remove' || step.action === 'unfasten')
    return [...techniques(base, step, at), ...helping(base, step, at)];
  if (step.action !== 'sanitise') return [];
  return [judged(base, { kind: 'hygiene', step: step.id, instead: '' }, tried(base, { do: 'remove', at }))];
}

/** Only the steps that the procedure still has. */
const present = (blocks: readonly Block[], { steps }: Procedure): readonly Block[] =>
  blocks.map(({ arc, steps: own }) => ({
    arc,
    steps: steps.filter((step) => own.some(({ id }) => id === step.id)),
  }));

/** The reasons of an order, in the order of its steps, until `stop` says so. */
export function choicesOf(
  setting: Setting,
  procedure: Procedure,
  blocks: readonly Block[],
  stop: () => boolean,
): readonly Choice[] {
  try {
    const analysis = analyse(procedure, setting.agent);
    const rules = departures(analysis.compiled).map(({ rule }) => rule);
    const base: Base = { setting, analysis, measure: scoreBase(analysis).measure, rules, stop };
    const found = [
      ...orders(base, present(blocks, procedure)),
      ...procedure.steps.flatMap((step, at) => perStep(base, step, at)),
    ];
    const place = new Map(procedure.steps.map(({ id }, at) => [id, at]));
    return found.toSorted((a, b) => (place.get(a.step) ?? 0) - (place.get(b.step) ?? 0));
  } catch (error) {
    if (error instanceof Tangled) return [];
    throw error;
  }
}
