// Two versions of a procedure as a committee reads them: whole sentences, in groups, what is worse first. Built on the
// comparison; its words are the language's.
import { happenedTo, type Happening, type StepRow } from '../compare/align.ts';
import { type AroundChange, aroundChanges } from '../compare/around.ts';
import type { Comparison } from '../compare/compare.ts';
import { matchOf } from '../compare/match.ts';
import type { Finding } from '../check/finding.ts';
import type { Procedure } from '../domain/procedure.ts';
import type { Words } from '../words/words.ts';

export const DIFF_GROUPS = [
  'new-errors',
  'new-findings',
  'gone-findings',
  'new-steps',
  'gone-steps',
  'moved-steps',
  'changed-steps',
  'people',
  'room',
  'rules',
  'accepted',
  'not-compared',
] as const;
export type DiffGroup = (typeof DIFF_GROUPS)[number];

export interface DiffPart {
  readonly group: DiffGroup;
  readonly sentences: readonly string[];
}

const STEP_GROUPS: Readonly<Record<Exclude<Happening, 'same'>, DiffGroup>> = {
  new: 'new-steps',
  gone: 'gone-steps',
  moved: 'moved-steps',
  'moved-and-changed': 'moved-steps',
  changed: 'changed-steps',
};

const AROUND_GROUPS: Readonly<Record<AroundChange['what'], DiffGroup>> = {
  rewritten: 'rules',
  invented: 'rules',
  agent: 'rules',
  person: 'people',
  worn: 'people',
  layers: 'people',
  starts: 'people',
  hand: 'people',
  bare: 'people',
  zone: 'room',
  fixture: 'room',
  'fixture-field': 'room',
  product: 'room',
  start: 'room',
  spraying: 'rules',
  observer: 'rules',
  accepted: 'accepted',
};

type Line = readonly [group: DiffGroup, sentence: string];

const happened = (row: StepRow): DiffGroup | undefined => {
  const what = happenedTo(row);
  return what === 'same' ? undefined : STEP_GROUPS[what];
};

/** A finding's heading with the step where to look. Words for the place are the language's own. */
function findingLine(words: Words, procedure: Procedure, finding: Finding): string {
  const { title } = words.finding(procedure, finding);
  const step = procedure.steps[finding.steps[0] ?? -1];
  const number = (finding.steps[0] ?? -1) + 1;
  return step ? `${number}. ${words.stepLabel(procedure, step)}: ${title}` : title;
}

/** The same fault against two agents is one sentence. */
const once = (sentences: readonly string[]): readonly string[] => [...new Set(sentences)];

/** Every difference from the first to the second, in groups; a group without a sentence is left out. */
export function diffParts(
  words: Words,
  a: Procedure,
  b: Procedure,
  comparison: Pick<Comparison, 'steps' | 'findings' | 'gaps'>,
): readonly DiffPart[] {
  const { steps, findings, gaps } = comparison;
  const errors = new Set(findings.newErrors);
  const lines: readonly Line[] = [
    ...findings.newErrors.map((one): Line => ['new-errors', findingLine(words, b, one)]),
    ...findings.gained
      .filter((one) => !errors.has(one))
      .map((one): Line => ['new-findings', findingLine(words, b, one)]),
    ...findings.gone.map((one): Line => ['gone-findings', findingLine(words, a, one)]),
    ...steps.flatMap((row): readonly Line[] => {
      const group = happened(row);
      return group ? [[group, words.compare.step(a, b, row)]] : [];
    }),
    ...aroundChanges(a, b, matchOf(a, b)).map(
      (one): Line => [AROUND_GROUPS[one.what], words.compare.around(a, b, one)],
    ),
    ...gaps.map((gap): Line => ['not-compared', words.compare.gap(a, b, gap)]),
  ];
  return DIFF_GROUPS.flatMap((group) => {
    const sentences = once(lines.flatMap(([of, sentence]) => (of === group ? [sentence] : [])));
    return sentences.length > 0 ? [{ group, sentences }] : [];
  });
}
