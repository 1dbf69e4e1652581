// How far the language that is spoken may be trusted today: what its wording is, and what the journal says of it.
import { useMemo } from 'react';
import { type SignedState, signedState } from '../../versions/languages.ts';
import { memberText } from '../../versions/staff.ts';
import type { Language, Overrides } from '../../words/index.ts';
import { reviewNote, type SignOff } from '../../words/review.ts';
import type { BookState } from '../journal/book.ts';
import { useBook } from '../journal/useBook.ts';
import { useSpoken } from '../words.ts';
import { hashOf, rowsOf } from './rows.ts';

const known = new Map<Overrides, Map<Language, string>>();

/** The hash of everything a language says; worked out once for each wording. */
function wordingOf(language: Language, overrides: Overrides): string {
  const hashes = known.get(overrides) ?? new Map<Language, string>();
  known.set(overrides, hashes);
  const hash = hashes.get(language) ?? hashOf(rowsOf(language, overrides));
  hashes.set(language, hash);
  return hash;
}

export interface Trust {
  readonly wording: string;
  readonly state: SignedState;
  /** Who signed exactly this wording off, and when. */
  readonly signedOff: SignOff | undefined;
  /** What must stand wherever the language is shown. */
  readonly note: readonly string[];
}

/** Of the language that every other was made from a screen has nothing to warn of; of it too it is told who signed it off. */
export const isWarnedOf = (language: Language, { state }: Pick<Trust, 'state'>): boolean =>
  language !== 'en' || state.is !== 'machine-made';

/** The same outside of a page's drawing. */
export function trustIn(
  language: Language,
  overrides: Overrides,
  { languages, staff }: Pick<BookState, 'languages' | 'staff'>,
): Trust {
  const wording = wordingOf(language, overrides);
  const state = signedState(languages, language, wording);
  const signedOff =
    state.is === 'signed'
      ? { signedBy: memberText(staff, state.signed.by), date: state.signed.on }
      : undefined;
  return { wording, state, signedOff, note: reviewNote(language, signedOff ?? 'machine-made') };
}

export function useTrust(language: Language): Trust {
  const { overrides } = useSpoken();
  const { languages, staff } = useBook();
  return useMemo(
    () => trustIn(language, overrides, { languages, staff }),
    [language, overrides, languages, staff],
  );
}
