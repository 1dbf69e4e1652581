// Names of surfaces where it is plain whose they are: beside a figure, in a person's part of the ledger.
import type { Procedure } from '../../domain/procedure.ts';
import type { Words } from '../../words/words.ts';

export const bare = (text: string): string => text.replace(/^the /, '');

/** A naming of surfaces that leaves the owner out where it is this person. */
export function namesBeside(
  procedure: Procedure,
  person: string | undefined,
  words: Pick<Words, 'person' | 'surface'>,
): (surface: string) => string {
  const full = (surface: string): string => words.surface(procedure, surface);
  if (person === undefined) return (surface) => bare(full(surface));
  const owner = bare(words.person(procedure, person));
  const owned = new RegExp(`(the )?${owner.replaceAll(/[^\w ]/g, '.')}['’]s `);
  return (surface) => bare(full(surface).replace(owned, 'the '));
}
