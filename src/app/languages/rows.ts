// The rows that are read for a sign-off: every pattern of the language beside English, and the unit's own sentences beside
// the program's. The hash of the language's side is what is signed.
import { wordingHash } from '../../versions/languages.ts';
import { type Language, type Overrides, wordsFor } from '../../words/index.ts';
import { type PatternGroup, patternsOf } from '../../words/patterns.ts';

export interface Row {
  readonly group: PatternGroup | 'own';
  readonly key: string;
  readonly english: string;
  readonly text: string;
}

export const GROUP_TITLES: Readonly<Record<Row['group'], string>> = {
  own: 'The unit’s own sentences, in place of the program’s',
  steps: 'Steps, as they are read aloud',
  findings: 'Findings',
  impossible: 'What cannot be done, and how to mend it',
  practice: 'Rules of published practice, and what departs from them',
  slips: 'Slips and circumstances',
  changes: 'What changed between two versions',
  guide: 'What the guide says during an exit',
  cautions: 'Cautions',
  items: 'Equipment',
  techniques: 'Techniques',
  products: 'Products',
  'other-names': 'Other names and figures',
};

/** The unit's own, keyed by what they stand for. */
function ownRows(language: Language, overrides: Overrides): readonly Row[] {
  const wording = overrides[language];
  if (!wording) return [];
  return [
    ...[...wording.steps].map(
      ([id, { insteadOf, say }]): Row => ({
        group: 'own',
        key: `step ${id}`,
        english: insteadOf,
        text: say,
      }),
    ),
    ...[...wording.sentences].map(([key, say]): Row => ({ group: 'own', key, english: key, text: say })),
  ];
}

/** In both languages side by side. `wordsFor` without the unit's wording: its sentences are rows of their own. */
export function rowsOf(language: Language, overrides: Overrides): readonly Row[] {
  const english = patternsOf(wordsFor('en'));
  const said = patternsOf(wordsFor(language));
  const rows = said.map(
    ({ group, key, text }, at): Row => ({
      group,
      key,
      english: english[at]?.text ?? '',
      text,
    }),
  );
  return [...ownRows(language, overrides), ...rows];
}

export const hashOf = (rows: readonly Row[]): string => wordingHash(rows);
