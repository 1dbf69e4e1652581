// The YAML library's error codes in a nurse's words. The library's own sentences speak of its inner terms.
import type { ErrorCode } from 'yaml';
import type { DiagnosticCode, DiagnosticParams } from './diagnostics.ts';

interface Fault {
  readonly code: DiagnosticCode;
  readonly params: DiagnosticParams;
}

const syntax = (reason: string, advice: string): Fault => ({ code: 'syntax', params: { reason, advice } });
const ALIASES: Fault = { code: 'aliases-not-allowed', params: {} };
const TAGS: Fault = { code: 'tags-not-allowed', params: {} };
const KEY_LINE = syntax(
  'a key and its colon do not stand on one line',
  'Write "key: value" on one line, or check the indentation here.',
);
const QUOTES = syntax(
  'this sign cannot stand here without quotes',
  'Put the whole text in "double quotes", or check for a missing line break.',
);

const FAULTS: Readonly<Record<ErrorCode, Fault>> = {
  ALIAS_PROPS: ALIASES,
  BAD_ALIAS: ALIASES,
  MULTIPLE_ANCHORS: ALIASES,
  BAD_DIRECTIVE: TAGS,
  MULTIPLE_TAGS: TAGS,
  TAG_RESOLVE_FAILED: TAGS,
  BAD_PROP_ORDER: TAGS,
  TAB_AS_INDENT: { code: 'tab', params: {} },
  MULTIPLE_DOCS: { code: 'several-documents', params: {} },
  BAD_INDENT: syntax(
    'the indentation does not fit the lines above',
    'Give entries of one list the same number of spaces.',
  ),
  BAD_DQ_ESCAPE: syntax(
    'a backslash in double quotes starts nothing known',
    'Write \\\\ for a backslash, or use single quotes.',
  ),
  BAD_SCALAR_START: QUOTES,
  UNEXPECTED_TOKEN: QUOTES,
  BLOCK_AS_IMPLICIT_KEY: syntax(
    'there are two colons in one line, or a line is indented too far',
    'Put text that holds a colon in "double quotes".',
  ),
  BLOCK_IN_FLOW: syntax(
    'a list by lines stands inside brackets',
    'Close the brackets first, or write the list in one line.',
  ),
  IMPOSSIBLE: QUOTES,
  KEY_OVER_1024_CHARS: KEY_LINE,
  MULTILINE_IMPLICIT_KEY: KEY_LINE,
  MISSING_CHAR: syntax(
    'a sign is missing: a colon, a comma, a quote or a closing bracket',
    'Look at this line and the one before.',
  ),
  NON_STRING_KEY: KEY_LINE,
  DUPLICATE_KEY: KEY_LINE,
  BAD_COLLECTION_TYPE: TAGS,
  RESOURCE_EXHAUSTION: { code: 'too-deep', params: {} },
};

/** What one of the library's errors means to the one who writes the file. */
export const syntaxFault = (code: ErrorCode): Fault => FAULTS[code];
