// The door to the words: the languages there are, and what a caller needs beside them.
import { ENGLISH } from './en/index.ts';
import type { Words } from './words.ts';

export { CAUTIONS } from './en/cautions.ts';
export { CHANCE_STATUS, readEvent } from './events.ts';
export { duration } from './numbers.ts';
export type * from './compare.ts';
export type * from './words.ts';

const LANGUAGES: readonly Words[] = [ENGLISH];

/** The words of a language by its BCP 47 tag, English where it is not spoken yet. */
export function wordsFor(tag: string): Words {
  const [wanted = ''] = tag.toLowerCase().split('-');
  return LANGUAGES.find(({ language }) => language === wanted) ?? ENGLISH;
}
