// What the check left undone on a procedure of unusual size, and what that means for its reader.
import type { Limit } from '../../check/limits.ts';

const SENTENCES: Readonly<Record<Limit['code'], (params: Limit['params']) => string>> = {
  exact: () =>
    'Slips were not looked at: the procedure has too many of them, or they are too tangled, to be worked out exactly. Split it.',
  mends: () => 'Not every mend was tried: the procedure has too many findings. Mend some and check again.',
  variants: ({ tried, all }) =>
    `Of ${all ?? 'all'} ways to leave out or move one step, ${tried ?? 'some'} were tried: first every step left out, then moves.`,
};

export const limitSentence = ({ code, params }: Limit): string => SENTENCES[code](params);
