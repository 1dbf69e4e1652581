// How far the words of an exit may be trusted, beside them: made by machine until a clinician who speaks the language natively
// has signed off exactly this wording; said in the language and in English.
import { useMemo } from 'react';
import type { Language, Overrides } from '../../../words/index.ts';
import { useBook } from '../../journal/useBook.ts';
import { isWarnedOf, trustIn } from '../../languages/useTrust.ts';

const NONE: Overrides = {};

interface ReviewedProps {
  readonly language: Language;
  /** The unit's own, that the exit began with. */
  readonly wording: Overrides | undefined;
}

export function Reviewed({ language, wording }: ReviewedProps) {
  const { languages, staff } = useBook();
  const trust = useMemo(
    () => trustIn(language, wording ?? NONE, { languages, staff }),
    [language, wording, languages, staff],
  );
  if (!isWarnedOf(language, trust)) return null;
  const [own, english] = trust.note;
  return (
    <span className="g-reviewed">
      {own} {english !== undefined && <span lang="en">{english}</span>}
    </span>
  );
}
