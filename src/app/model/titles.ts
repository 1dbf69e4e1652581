// A procedure by its title wherever the journal has only its id and its text's hash: the text is the unit's own, or came with the
// program.
import { LIBRARY } from '../library.ts';
import { headOf } from './head.ts';

interface Named {
  readonly procedure: string;
  readonly content: string;
}

/** Its id where neither is known here. */
export function procedureTitle(
  { procedure, content }: Named,
  texts: Readonly<Record<string, string>>,
): string {
  const text = Object.hasOwn(texts, content) ? texts[content] : undefined;
  if (text !== undefined) return headOf(text).title;
  return LIBRARY.find(({ id }) => id === procedure)?.title ?? procedure;
}
