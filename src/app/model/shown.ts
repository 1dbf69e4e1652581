// Text of a file that the language has not accepted, as it may be shown: marks that steer a terminal or turn the direction of
// text stand as a sign, so that a title reads as it is written.

const STEERING = /[\p{Cc}\p{Bidi_Control}]/gu;

/** The same text with a sign in the place of each such mark; a tab stays. */
export const shownText = (text: string): string =>
  text.replaceAll(STEERING, (mark) => (mark === '\t' ? mark : '\u{FFFD}'));
