// A small file of plain values beside a procedure, read with the same strictness and the same words for what is wrong.
import type { Diagnostic, Span } from './diagnostics.ts';
import { createLines } from './lines.ts';
import { createReport, valueSpot } from './report.ts';
import { textFault, withoutMark } from './text.ts';
import { readYaml, type WritableSpots } from './yaml.ts';

export interface PlainFile {
  /** Undefined where the text is not well-formed. */
  readonly value: unknown;
  readonly diagnostics: readonly Diagnostic[];
  /** Where the value at a path stands, or what should hold it. */
  readonly spanOf: (path: readonly string[]) => Span;
}

/** Reads YAML or JSON into plain values: maps, lists, texts, true, false and null. Never throws. */
export function readPlain(written: string, file: string): PlainFile {
  const text = withoutMark(written);
  const lines = createLines(text);
  const spots: WritableSpots = { values: new Map(), keys: new Map() };
  const report = createReport(file, lines, spots);
  const fault = textFault(text);
  if (fault) report.at(fault.spot, fault.code, fault.params);
  const value = fault ? undefined : readYaml(text, report, spots);
  return {
    value: report.failed() ? undefined : value,
    diagnostics: report.diagnostics(),
    spanOf: (path) => lines.span(valueSpot(spots, path)),
  };
}
