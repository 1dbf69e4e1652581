// The figures of a measure in the order of their weight, and the keys of findings that a mend adds or takes away, read
// back into what they are about. The same in every language.
import { FINDING_KINDS, type FindingKind, type Measure, type Mend } from '../check/finding.ts';
import { evidenceIds, type PracticeRuleId } from '../evidence/index.ts';
import type { FigureName } from '../order/index.ts';
import { durations, type Pair } from './numbers.ts';
import type { Setting } from './words.ts';

/** What a route ends in, as a measure counts it. */
export const FIGURE_GROUPS = ['mucosa', 'skin', 'clothes-shoes', 'clean-side'] as const;
export type FigureGroup = (typeof FIGURE_GROUPS)[number];

export type Figure =
  | { readonly is: 'impossible'; readonly value: number }
  | { readonly is: 'departures'; readonly value: number }
  | { readonly is: 'open'; readonly group: FigureGroup; readonly value: number }
  | { readonly is: 'chance'; readonly group: FigureGroup; readonly value: number }
  | { readonly is: 'seconds'; readonly value: number };

/** Every figure of a measure. */
export const figuresOf = (measure: Measure): readonly Figure[] => [
  { is: 'impossible', value: measure.impossible },
  ...FIGURE_GROUPS.map((group, at): Figure => ({ is: 'open', group, value: measure.open[at] ?? 0 })),
  ...FIGURE_GROUPS.map((group, at): Figure => ({ is: 'chance', group, value: measure.chance[at] ?? 0 })),
  { is: 'departures', value: measure.departures },
  { is: 'seconds', value: measure.seconds },
];

/** A figure by the name that the order search gives it. */
export function figureNamed(name: FigureName, value: number): Figure {
  const [is, group] = name.split('.') as [Figure['is'], FigureGroup | undefined];
  if (group !== undefined && (is === 'open' || is === 'chance')) return { is, group, value };
  if (is === 'departures' || is === 'seconds') return { is, value };
  return { is: 'impossible', value };
}

/** Two values of one figure, written with no more digits than they bear. */
export type PairWriter = (figure: Figure, to: number) => Pair;

export const pairWriter =
  (percents: (from: number, to: number) => Pair): PairWriter =>
  ({ is, value }, to) => {
    if (is === 'chance') return percents(value, to);
    return is === 'seconds' ? durations(value, to) : [String(value), String(to)];
  };

/** Whether a figure rests on the chances or times, so that it must say on what. */
export const isEstimate = ({ is }: Figure): boolean => is === 'chance' || is === 'seconds';

/** A finding's key, `code where`, read: a kind or a rule, at a step, a surface or something else. */
export interface KeyRead {
  readonly code: string;
  readonly kind?: FindingKind;
  readonly rule?: PracticeRuleId;
  readonly where: string;
  /** Index of the step, -1 where the key names none. */
  readonly step: number;
  readonly isSurface: boolean;
}

const isRule = (id: string): id is PracticeRuleId =>
  id.startsWith('practice.') && (evidenceIds as readonly string[]).includes(id);

/** The practice rule of a finding's code, if it is one. */
export const ruleOf = (code: string): PracticeRuleId | undefined => (isRule(code) ? code : undefined);

const whereIn = (key: string): string => key.slice(key.indexOf(' ') + 1);

export function readKey(setting: Setting, key: string): KeyRead {
  const [code = '', where = ''] = key.split(' ');
  const kind = FINDING_KINDS.find((candidate) => candidate === code.split('.')[0]);
  const rule = ruleOf(code);
  return {
    code,
    ...(kind ? { kind } : {}),
    ...(rule ? { rule } : {}),
    where,
    step: setting.steps.findIndex((step) => step.id === where),
    isSurface: where.includes('.'),
  };
}

/** New findings; an open route that becomes one slip away is no new trouble, and stands apart. */
export function addedBy({ gone, added }: Mend): {
  readonly noLongerOpen: readonly string[];
  readonly fresh: readonly string[];
} {
  const wasOpen = new Set(gone.filter((key) => key.startsWith('open.')).map(whereIn));
  const noLongerOpen = added.filter((key) => key.startsWith('one-slip.') && wasOpen.has(whereIn(key)));
  return { noLongerOpen, fresh: added.filter((key) => !noLongerOpen.includes(key)) };
}

/** Surfaces of the slips that alone reach one only now, worst first as the check lists them. */
export const newlyReached = ({ newSlips = [] }: Mend): readonly string[] => newSlips.map(whereIn);
