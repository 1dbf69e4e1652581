// Texts of one meaning in several languages, turned together: as many screens of each.
import { type Screenful, screensOf } from './rows.ts';

/** The screens of several texts of one meaning, as many of each: what is done earlier shows its last one longer. */
export function level(texts: readonly string[], characters: number): readonly (readonly Screenful[])[] {
  const screens = texts.map((text) => screensOf(text, characters));
  const most = Math.max(0, ...screens.map((one) => one.length));
  return screens.map((one) =>
    Array.from({ length: most }, (_, index) => one[Math.min(index, one.length - 1)] ?? []),
  );
}
