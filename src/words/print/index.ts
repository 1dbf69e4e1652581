// The door to the papers' words, by language.
import { PRINT_EN } from './en.ts';
import { PRINT_ES } from './es.ts';
import { PRINT_FR } from './fr.ts';
import type { PrintWords } from './printWords.ts';
import { PRINT_PT } from './pt.ts';

export * from './printWords.ts';

const BY_LANGUAGE: Readonly<Record<string, PrintWords>> = {
  en: PRINT_EN,
  fr: PRINT_FR,
  es: PRINT_ES,
  pt: PRINT_PT,
};

/** The papers' words in the language of these words ('fr'), English where it is not spoken. */
export const printWordsFor = (language: string): PrintWords => BY_LANGUAGE[language] ?? PRINT_EN;
