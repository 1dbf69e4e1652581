// Which language was signed off, by whom, and on what wording. A sign-off is of sentences, by their hash: as soon as the
// program would say anything else, the language is to be reviewed again.
import type { View } from '../journal/fold.ts';
import { hashOfText } from '../journal/hash.ts';
import { canonical } from '../journal/canonical.ts';

export type LanguageSigned = {
  readonly wording: string;
  readonly on: string;
  readonly by: string | null;
  readonly unitNumber: number;
};

/** The latest sign-off of each language. */
export type LanguagesState = Readonly<Record<string, LanguageSigned>>;

export const languagesView: View<LanguagesState> = {
  name: 'languages',
  version: 1,
  start: {},
  next: (state, { kind, body, by, unitNumber }) => {
    if (kind !== 'language.signed-off') return state;
    const { language, wording, on } = body;
    return { ...state, [language]: { wording, on, by, unitNumber } };
  },
};

/** Hash of everything a language says, in order: the program's sentences, then the unit's own. */
export const wordingHash = (
  rows: readonly { readonly group: string; readonly key: string; readonly text: string }[],
): string => hashOfText(canonical(rows.map(({ group, key, text }) => [group, key, text])));

export type SignedState =
  | { readonly is: 'machine-made' }
  | { readonly is: 'changed'; readonly signed: LanguageSigned }
  | { readonly is: 'signed'; readonly signed: LanguageSigned };

/** How far a language may be trusted today. */
export function signedState(state: LanguagesState, language: string, wording: string): SignedState {
  const signed = Object.hasOwn(state, language) ? state[language] : undefined;
  if (!signed) return { is: 'machine-made' };
  return { is: signed.wording === wording ? 'signed' : 'changed', signed };
}
