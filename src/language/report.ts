// Collects diagnostics while a file is read. Checks name the place by its path in the file; where that is, the
// document knows. What is wrong never stops the reading, but a flood is cut off and counted.
import { CATALOGUE } from './catalogue.ts';
import type { Diagnostic, DiagnosticCode, DiagnosticParams, Span } from './diagnostics.ts';
import { nearest } from './nearest.ts';
import type { Lines, Spot } from './lines.ts';

export type Path = readonly (string | number)[];

/** Where the values and keys of a file stand, by path. */
export interface Spots {
  readonly values: ReadonlyMap<string, Spot>;
  readonly keys: ReadonlyMap<string, Spot>;
}

export interface Report {
  readonly at: (spot: Spot, code: DiagnosticCode, params?: DiagnosticParams) => void;
  /** At the value a path leads to; where nothing is written, at what should hold it. */
  readonly value: (path: Path, code: DiagnosticCode, params?: DiagnosticParams) => void;
  readonly key: (path: Path, code: DiagnosticCode, params?: DiagnosticParams) => void;
  /** A name that must be one of those known: `allowed` and, if near, `nearest` become parameters. */
  readonly name: (
    path: Path,
    code: DiagnosticCode,
    name: string,
    known: readonly string[],
    more?: DiagnosticParams,
  ) => void;
  /** The line of an offset, from 1. */
  readonly line: (offset: number) => number;
  /** The line on which the value at a path begins. */
  readonly lineOf: (path: Path) => number;
  readonly failed: () => boolean;
  readonly diagnostics: () => readonly Diagnostic[];
}

/** More than this many are counted only. */
const MOST = 200;

const pathKey = (path: Path): string => path.join('.');

/** The spot of the value at a path, or of its nearest holder that is written. */
export function valueSpot(spots: Spots, path: Path): Spot {
  for (let length = path.length; length >= 0; length -= 1) {
    const found = spots.values.get(pathKey(path.slice(0, length)));
    if (found) return found;
  }
  return { start: 0, end: 0 };
}

/** Parameters of a name that is not among those known. */
export function nameParams(name: string, known: readonly string[]): DiagnosticParams {
  const near = nearest(name, known);
  return { name: name.slice(0, 80), allowed: known, ...(near === undefined ? {} : { nearest: near }) };
}

const byPlace = (a: Span, b: Span): number => a.line - b.line || a.column - b.column;

export function createReport(file: string, lines: Lines, spots: Spots): Report {
  const found: Diagnostic[] = [];
  let errors = 0;
  let beyond = 0;
  const at: Report['at'] = (spot, code, params = {}) => {
    const { severity } = CATALOGUE[code];
    if (severity === 'error') errors += 1;
    if (found.length >= MOST) beyond += 1;
    else found.push({ code, severity, file, ...lines.firstLine(spot), text: lines.text(spot), params });
  };
  const value: Report['value'] = (path, code, params) => at(valueSpot(spots, path), code, params);
  const line: Report['line'] = (offset) => lines.span({ start: offset, end: offset }).line;
  return {
    at,
    value,
    key: (path, code, params) => at(spots.keys.get(pathKey(path)) ?? valueSpot(spots, path), code, params),
    name: (path, code, name, known, more) => value(path, code, { ...nameParams(name, known), ...more }),
    line,
    lineOf: (path) => line(valueSpot(spots, path).start),
    failed: () => errors > 0,
    diagnostics: () => {
      if (beyond > 0) {
        const count = beyond;
        beyond = 0;
        found.push({
          ...lastOf(found, file),
          code: 'more-problems',
          severity: 'note',
          text: '',
          params: { count },
        });
      }
      return found.sort(byPlace);
    },
  };
}

/** Where the last diagnostic stands: what follows it is said there. */
function lastOf(found: readonly Diagnostic[], file: string): Diagnostic {
  const last = [...found].sort(byPlace).at(-1);
  return (
    last ?? {
      code: 'more-problems',
      severity: 'note',
      file,
      line: 1,
      column: 1,
      endLine: 1,
      endColumn: 1,
      text: '',
      params: {},
    }
  );
}
