// How far the language that is spoken may be trusted today: what its wording is, and what the journal says of it.
import { useMemo } from 'react';
import { type SignedState, signedState } from '../../versions/languages.ts';
import { memberText } from '../../versions/staff.ts';
import type { Language, Overrides } from '../../words/index.ts';
import { reviewNote } from '../../words/review.ts';
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
  /** What must stand wherever the language is shown. */
  readonly note: readonly string[];
}

export function useTrust(language: Language): Trust {
  const { overrides } = useSpoken();
  const { languages, staff } = useBook();
  return useMemo(() => {
    const wording = wordingOf(language, overrides);
    const state = signedState(languages, language, wording);
    const review =
      state.is === 'signed'
        ? { signedBy: memberText(staff, state.signed.by), date: state.signed.on }
        : 'machine-made';
    return { wording, state, note: reviewNote(language, review) };
  }, [language, overrides, languages, staff]);
}
