// Is this text at all? Checked before the YAML library sees it: size, binary files, files read in the wrong encoding,
// invisible characters that would make a printed step read differently from what the file says.
import type { DiagnosticParams, DiagnosticCode } from './diagnostics.ts';
import type { Spot } from './lines.ts';

/** A procedure of 10,000 steps takes about a third of this. In UTF-16 units. */
export const LONGEST_TEXT = 2 * 1024 * 1024;

const BYTE_ORDER_MARK = '\uFEFF';

/** Control characters save tab and line break, a byte-order mark inside, direction overrides, half characters. */
const INVISIBLE = new RegExp(
  [
    '[\\u0000-\\u0008\\u000B\\u000C\\u000E-\\u001F\\u007F-\\u0084\\u0086-\\u009F\\u202A-\\u202E\\u2066-\\u2069\\uFEFF\\uFFFE\\uFFFF]',
    '\\r(?!\\n)',
    '[\\uD800-\\uDBFF](?![\\uDC00-\\uDFFF])',
    '(?<![\\uD800-\\uDBFF])[\\uDC00-\\uDFFF]',
  ].join('|'),
);
/** The sign of a binary file. */
const ZERO = new RegExp(String.fromCodePoint(0));
/** What a decoder leaves where bytes were not UTF-8. */
const REPLACEMENT = /\uFFFD/;

export interface TextFault {
  readonly code: DiagnosticCode;
  readonly spot: Spot;
  readonly params: DiagnosticParams;
}

const named = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

const megabytes = (units: number): string => `${(units / 1024 / 1024).toFixed(1)} MB`;

/** Without the byte-order mark that some editors write first: columns then count from what one sees. */
export const withoutMark = (text: string): string =>
  text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;

/** The first control character of a string, by name; undefined when there is none. */
export function invisibleIn(text: string): string | undefined {
  const found = INVISIBLE.exec(text);
  return found ? named(found[0]) : undefined;
}

function faultOf(text: string, pattern: RegExp, code: DiagnosticCode): TextFault | undefined {
  const found = pattern.exec(text);
  if (!found) return undefined;
  const spot = { start: found.index, end: found.index + 1 };
  return {
    code,
    spot,
    params: { character: found[0] === '\uFFFD' ? 'byte that is not UTF-8' : named(found[0]) },
  };
}

/** Why a text cannot be read as a file at all, its first fault only; undefined when it can. */
export function textFault(text: string): TextFault | undefined {
  const start = { start: 0, end: 0 };
  if (text.length > LONGEST_TEXT) {
    const params = { size: megabytes(text.length), limit: megabytes(LONGEST_TEXT) };
    return { code: 'too-large', spot: start, params };
  }
  return (
    faultOf(text, ZERO, 'not-text') ??
    faultOf(text, REPLACEMENT, 'not-text') ??
    faultOf(text, INVISIBLE, 'control-character')
  );
}
