// The edge of the command line: streams, colour, standard input. Commands get it as a value, so that tests run them in
// their own process and read what they say.
import { styleText } from 'node:util';

export type Style = 'bold' | 'dim' | 'red' | 'yellow' | 'cyan';

export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Everything on standard input. */
  readonly stdin: () => AsyncIterable<Uint8Array>;
  /** Whether standard output is a terminal that wants colour. */
  readonly colour: boolean;
}

/** https://no-color.org: any value but the empty one switches colour off. */
export function wantsColour(terminal: boolean, env: Readonly<Record<string, string | undefined>>): boolean {
  return terminal && !env.NO_COLOR && env.TERM !== 'dumb';
}

export function nodeIo(): Io {
  return {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    stdin: () => process.stdin,
    colour: wantsColour(process.stdout.isTTY, process.env),
  };
}

export type Paint = (style: Style, text: string) => string;

export const painter =
  ({ colour }: Pick<Io, 'colour'>): Paint =>
  (style, text) =>
    colour ? styleText(style, text, { validateStream: false }) : text;

/** Names of files are the world's, not ours: nothing in them that steers a terminal or turns its text around reaches it. */
export const printable = (name: string): string => name.replaceAll(/[\p{Cc}\p{Bidi_Control}]/gu, '?');

/** What was asked for, as it is said back: the beginning of it. */
export const saidBack = (asked: string): string =>
  printable(asked.length > 80 ? `${asked.slice(0, 80)}…` : asked);

/** Lines indented by `by`, and broken at blanks (never before %) so that a terminal of usual width shows them whole. */
export function wrapped(text: string, by = 0, width = 100): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ (?!%)/)) {
    if (line !== '' && by + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((one) => ' '.repeat(by) + one).join('\n');
}
