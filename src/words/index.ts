// The door to the words: the languages there are, and what a caller needs beside them.
import { ENGLISH } from './en/index.ts';
import { SPANISH } from './es/index.ts';
import { FRENCH } from './fr/index.ts';
import { type Language, languageOf } from './languages.ts';
import { PORTUGUESE } from './pt/index.ts';
import type { Words } from './words.ts';

export { CAUTIONS } from './en/cautions.ts';
export { CHANCE_STATUS, readEvent } from './events.ts';
export { type Language, languageOf, LANGUAGES } from './languages.ts';
export { duration } from './numbers.ts';
export type * from './compare.ts';
export type * from './words.ts';

const SPOKEN: Readonly<Record<Language, Words>> = { en: ENGLISH, fr: FRENCH, es: SPANISH, pt: PORTUGUESE };

/** The words of a language by its BCP 47 tag, English where it is not spoken yet. */
export function wordsFor(tag: string): Words {
  return SPOKEN[languageOf(tag) ?? 'en'];
}
