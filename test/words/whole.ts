// What no sentence may contain: a hole where a word was missing, or a verdict that nobody can give.

/** Whether a text reads as one: something there, no hole, no double blank. */
export const whole = (text: string): boolean =>
  text.trim() !== '' && !/undefined|null|NaN|\[object|\{|\}| {2}|\.\./.test(text);

/** 'is clean', 'are safe': the program never says so. */
export const VERDICT = /\b(is|are|stays?|remains?|becomes?) (now |then )?(clean|safe)\b/;
