// What a procedure file can have wrong: one catalogue, code -> severity, what is wrong and how to mend it. A
// diagnostic itself is data (code, place, parameters); these sentences are its English, and a sentence
// whose `{parameter}` is missing is left out, so that 'did you mean' appears only when there is a nearest name.
import { CATALOGUE, type DiagnosticWords, type Severity } from './catalogue.ts';

export type { Severity } from './catalogue.ts';

export type DiagnosticCode = keyof typeof CATALOGUE;
export type DiagnosticParams = Readonly<Record<string, string | number | readonly string[]>>;

/** A stretch of the file. Lines and columns from 1, columns in UTF-16 units, the end is exclusive. */
export interface Span {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface Diagnostic extends Span {
  readonly code: DiagnosticCode;
  readonly severity: Severity;
  readonly file: string;
  /** The offending text, its first line only and at most 80 characters. */
  readonly text: string;
  readonly params: DiagnosticParams;
}

const HOLE = /\{([a-z]+)\}/g;

/** Longer lists are cut off in sentences; the parameters keep them whole. */
const LONGEST_LIST = 12;

function shortened(list: readonly string[]): string {
  const more = list.length - LONGEST_LIST;
  return more > 1 ? `${list.slice(0, LONGEST_LIST).join(', ')} and ${more} more` : list.join(', ');
}

function fill(sentence: string, params: DiagnosticParams): string | undefined {
  let whole = true;
  const filled = sentence.replace(HOLE, (_, name: string) => {
    const value = Object.hasOwn(params, name) ? params[name] : undefined;
    if (value === undefined || value === '' || (Array.isArray(value) && value.length === 0)) whole = false;
    return typeof value === 'object' ? shortened(value) : String(value);
  });
  return whole ? filled : undefined;
}

/** The English of a diagnostic: what is wrong in one sentence, and how to mend it in a few. */
export function describeDiagnostic(diagnostic: Diagnostic): {
  readonly wrong: string;
  readonly mend: string;
} {
  const words: DiagnosticWords = CATALOGUE[diagnostic.code];
  const params = { text: diagnostic.text, ...diagnostic.params };
  return {
    wrong: fill(words.wrong, params) ?? words.wrong,
    mend: words.mend
      .map((sentence) => fill(sentence, params))
      .filter((sentence) => sentence !== undefined)
      .join(' '),
  };
}

/** One line for a terminal: `file:line:column: error code: what is wrong. How to mend it.` */
export function printDiagnostic(diagnostic: Diagnostic): string {
  const { file, line, column, severity, code } = diagnostic;
  const { wrong, mend } = describeDiagnostic(diagnostic);
  return `${file}:${line}:${column}: ${severity} ${code}: ${mend ? `${wrong} ${mend}` : wrong}`;
}
