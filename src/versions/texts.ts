// The procedure files that versions stand for: from the hash of a file to its text. An entry may name a content without
// carrying it; what another device has is then not here.
import type { View } from '../journal/fold.ts';

export type TextsState = Readonly<Record<string, string>>;

export const textsView: View<TextsState> = {
  name: 'texts',
  version: 1,
  start: {},
  next: (state, entry) => {
    if (entry.kind !== 'procedure.drafted') return state;
    const { content, text } = entry.body;
    return text === null ? state : { ...state, [content]: text };
  },
};
