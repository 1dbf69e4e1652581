// The door to the words: the languages there are, and what a caller needs beside them.
import { ENGLISH } from './en/index.ts';
import { SPANISH } from './es/index.ts';
import { FRENCH } from './fr/index.ts';
import { type Language, languageOf } from './languages.ts';
import { type Overrides, withWording } from './overrides.ts';
import { PORTUGUESE } from './pt/index.ts';
import type { Words } from './words.ts';

export { CAUTIONS } from './en/cautions.ts';
export { CHANCE_STATUS, readEvent } from './events.ts';
export { type Language, languageOf, LANGUAGES } from './languages.ts';
export { duration } from './numbers.ts';
export { checkOverrides, describeOverrideFault, type Overrides, unusedWording } from './overrides.ts';
export type * from './compare.ts';
export type * from './order.ts';
export type * from './words.ts';

const SPOKEN: Readonly<Record<Language, Words>> = {
  en: ENGLISH,
  fr: FRENCH,
  es: SPANISH,
  pt: PORTUGUESE,
};

/** The words of a language by its BCP 47 tag (English where it is not spoken), with a unit's own wording in place. */
export function wordsFor(tag: string, overrides: Overrides = {}): Words {
  const language = languageOf(tag) ?? 'en';
  return withWording(SPOKEN[language], overrides[language]);
}
