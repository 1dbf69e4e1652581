// Offsets in a text to lines and columns: the only place that counts them.
import { LineCounter } from 'yaml';
import type { Span } from './diagnostics.ts';

/** Offsets in UTF-16 units, the end exclusive. */
export interface Spot {
  readonly start: number;
  readonly end: number;
}

export interface Lines {
  /** The whole spot. */
  readonly span: (spot: Spot) => Span;
  /** The spot as far as its first line goes: a long mapping is pointed at by its beginning. */
  readonly firstLine: (spot: Spot) => Span;
  /** The text of the first line of the spot, at most 80 characters. */
  readonly text: (spot: Spot) => string;
}

const LONGEST = 80;

function firstLineEnd(text: string, { start, end }: Spot): number {
  const line = text.indexOf('\n', start);
  let last = line === -1 ? end : Math.max(start, Math.min(end, line));
  while (last > start && (text[last - 1] === '\r' || text[last - 1] === ' ')) last -= 1;
  return last;
}

function startsOfLines(text: string): LineCounter {
  const counter = new LineCounter();
  counter.addNewLine(0);
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) counter.addNewLine(at + 1);
  return counter;
}

export function createLines(text: string): Lines {
  const counter = startsOfLines(text);
  const span = (spot: Spot): Span => {
    const start = Math.min(Math.max(spot.start, 0), text.length);
    const first = counter.linePos(start);
    const last = counter.linePos(Math.min(Math.max(spot.end, start), text.length));
    return { line: first.line, column: first.col, endLine: last.line, endColumn: last.col };
  };
  return {
    span,
    firstLine: (spot) => span({ start: spot.start, end: firstLineEnd(text, spot) }),
    text: (spot) => {
      const shown = text.slice(spot.start, firstLineEnd(text, spot));
      return shown.length > LONGEST ? `${shown.slice(0, LONGEST - 1)}…` : shown;
    },
  };
}
