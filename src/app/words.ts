// The language of the page: one place to choose it. Every sentence about the procedure comes from words/; the page's own
// labels are English and stand where they are used. `words` is a live binding: whoever speaks reads it at that moment, and
// the page is drawn anew when it changes (`useSpoken` is the key of its root), so nothing said before stays behind.
import { useSyncExternalStore } from 'react';
import { type Language, languageOf, type Overrides, type Words, wordsFor } from '../words/index.ts';

const KEPT = 'doffline-language';

interface Spoken {
  readonly language: Language;
  /** The unit's own sentences. */
  readonly overrides: Overrides;
  /** Changes with every change of the words. */
  readonly key: number;
}

function kept(): Language {
  try {
    return languageOf(localStorage.getItem(KEPT) ?? '') ?? 'en';
  } catch {
    return 'en';
  }
}

let spoken: Spoken = { language: kept(), overrides: {}, key: 0 };
const listeners = new Set<() => void>();

export let words: Words = wordsFor(spoken.language);

function speak(change: Partial<Spoken>): void {
  spoken = { ...spoken, ...change, key: spoken.key + 1 };
  words = wordsFor(spoken.language, spoken.overrides);
  for (const listener of listeners) listener();
}

/** Speaks another language from now on, and after a reload. */
export function speakIn(language: Language): void {
  try {
    localStorage.setItem(KEPT, language);
  } catch {
    // Not allowed: the language holds as long as the page.
  }
  speak({ language });
}

/** Puts the unit's own sentences in place; who signed a language off is the journal's to say, not theirs. */
export const speakWith = (overrides: Overrides): void => speak({ overrides });

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useSpoken = (): Spoken => useSyncExternalStore(subscribe, () => spoken);
