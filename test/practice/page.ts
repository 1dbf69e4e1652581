// docs/practice.md, made from the tables, so that the page cannot say what the code does not do.
import {
  evidence,
  evidenceIds,
  evidenceText,
  type PracticeRuleId,
  source,
} from '../../src/evidence/index.ts';
import { techniquesThatBreak } from '../../src/practice/declared.ts';
import { RULES } from '../../src/practice/index.ts';
import { UNCHECKED } from '../../src/practice/unchecked.ts';
import { CONTRASTS } from './contrasts.ts';

const INTRO = `# Published practice

The check compares a procedure with what published sources ask for, rule by rule, and reports each departure with the
step where to look. Text, source and standing of a rule are its record in \`evidence/practice.json\`; a rule marked
_memory_ was recalled and not read again, one marked _common practice_ is taught widely but no sentence was found.

A departure is not yet a fault. Published sequences contradict one another (see below), and a unit may accept one in
writing, with a reason, a name and a date for review. No departure does not mean that a procedure is safe: what the steps
cannot show is listed last, and how a step is carried out is seen only in the room.

This page is made from the tables in \`src/practice\` by \`npx vitest run test/practice -u\`.
`;

const row = (...cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const table = (head: readonly string[], rows: readonly string[]): string =>
  [row(...head), row(...head.map(() => '---')), ...rows].join('\n');

function publishedIn(id: PracticeRuleId): string {
  const { source: from, where, status } = evidence(id);
  const { title, year } = source(from.id);
  const named = `${title}${year === null ? '' : ` (${year})`}: ${where}`;
  return status === 'published' ? named : `${named} _(${status})_`;
}

function howChecked(id: PracticeRuleId): string {
  const techniques = techniquesThatBreak(id);
  const rule = RULES.find((candidate) => candidate.id === id);
  const named = techniques.map((technique) => `\`${technique}\``).join(', ');
  return [
    ...(rule ? [rule.looksAt] : []),
    ...(techniques.length > 0 ? [`A step done by the technique ${named}.`] : []),
  ].join(' ');
}

const short = (id: PracticeRuleId): string => `\`${id.replace('practice.', '')}\``;

const practiceIds = evidenceIds.filter((id): id is PracticeRuleId => id.startsWith('practice.'));

const checkedRows = practiceIds
  .filter((id) => howChecked(id) !== '')
  .map((id) => row(short(id), evidenceText(id), publishedIn(id), howChecked(id)));

const contrastRows = CONTRASTS.map(({ rule, procedures, because }) =>
  row(short(rule), procedures.map((name) => `\`${name}\``).join(', '), because),
);

const uncheckedRows = UNCHECKED.map(({ id, because }) =>
  row(short(id), evidenceText(id), publishedIn(id), because),
);

export const practicePage = (): string =>
  [
    INTRO,
    '## Checked\n',
    table(['Rule', 'Asks', 'Published in', 'Reported when'], checkedRows),
    '\n## Where published sequences disagree\n',
    'The files in `procedures/` that hold a published sequence depart from a rule of another source here, and only here.\n',
    table(['Rule', 'Departs', 'Because'], contrastRows),
    '\n## Not checked\n',
    table(['Rule', 'Asks', 'Published in', 'Not checked, because'], uncheckedRows),
    '',
  ].join('\n');
