// docs/mutants.md, made from the run, so that the page cannot say what the check does not do.
import { HARMLESS } from './harmless.ts';
import type { Judged, Way } from './judge.ts';
import { OPERATORS } from './operators.ts';
import { SUBJECTS } from './subjects.ts';

const INTRO = `# Seeded faults

Every published procedure in \`procedures/\`, and the invented unit's present version, is spoilt on purpose, one fault at a
time, and checked again. A fault is **found** when the check says something of the spoilt procedure that it does not say
of the original: a step that cannot be done, a departure from practice, a place left bare or a layer that contradicts the
other half of the pair, fewer barriers before a protected surface, a new combination of slips, or a chance that rose
beyond rounding. A fault that is not found must be **harmless**: the explicit-state reference engine, run for every set
of at most three slips against both agents, reaches no protected surface that the same slips do not reach in the
original. A fault that is neither fails the test.

Harmless means harmless in this model (\`docs/method.md\`), and up to three slips; it does not mean that a step may be left
out. **Worse** counts the faults of which the reference alone shows that at most two slips reach more: each of them must
be found by barriers, combinations or chance, whatever practice says of it.

This page is made by \`npx vitest run test/mutants -u\`.
`;

const row = (...cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly string[]): string =>
  [row(...head), row(...head.map(() => '---')), ...rows].join('\n');

const CONTAMINATION: readonly Way[] = ['barriers', 'combination', 'chance'];

function counts(judged: readonly Judged[]): readonly number[] {
  const by = (...ways: readonly Way[]): number =>
    judged.filter((one) => ways.some((way) => one.ways.has(way))).length;
  const found = judged.filter(({ ways }) => ways.size > 0).length;
  const harmless = judged.filter(({ ways, worse }) => ways.size === 0 && !worse).length;
  return [
    judged.length,
    found,
    by('cannot'),
    by('practice'),
    by('bare'),
    by(...CONTAMINATION),
    judged.filter(({ worse }) => worse).length,
    harmless,
    judged.length - found - harmless,
  ];
}

const HEAD = [
  'faults',
  'found',
  'cannot be done',
  'practice',
  'bare or left',
  'contamination',
  'worse',
  'harmless',
  'neither',
];

export function mutantsPage(judged: readonly Judged[]): string {
  const of = (operator: string) => judged.filter(({ mutant }) => mutant.operator === operator);
  const from = (name: string) => judged.filter(({ mutant }) => mutant.subject.name === name);
  return [
    INTRO,
    '## By fault\n',
    table(
      ['fault', ...HEAD],
      [
        ...OPERATORS.map(({ id, does }) => row(`\`${id}\`: ${does}`, ...counts(of(id)))),
        row('all', ...counts(judged)),
      ],
    ),
    '\n## By procedure\n',
    table(
      ['procedure', ...HEAD],
      SUBJECTS.map(({ name }) => row(`\`${name}\``, ...counts(from(name)))),
    ),
    '\n## Why some are harmless\n',
    table(
      ['fault', 'why'],
      Object.entries(HARMLESS).map(([operator, why]) => row(`\`${operator}\``, why)),
    ),
    '',
  ].join('\n');
}
