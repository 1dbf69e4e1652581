// The command line's own words by the language of the words beside them.
import { type Language, languageOf, type Words } from '../../words/index.ts';
import { EN } from './en.ts';
import { ES } from './es.ts';
import { FR } from './fr.ts';
import type { CliLabels } from './labels.ts';
import { PT } from './pt.ts';

export type { CliLabels } from './labels.ts';

export const CLI_LABELS: Readonly<Record<Language, CliLabels>> = { en: EN, fr: FR, es: ES, pt: PT };

export const labelsFor = ({ language }: Pick<Words, 'language'>): CliLabels =>
  CLI_LABELS[languageOf(language) ?? 'en'];
